package rungwise.web.joining;

import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.beside.JoinLog;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.joining.Joining;
import rungwise.clinic.people.Account;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.sheet.ManLines;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseState;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Page;
import rungwise.web.page.Typed;
import rungwise.web.titration.OpenCourses;

/** Other courses of the same man: found, joined and parted. */
@Controller
final class JoiningController {

  private static final Logger LOG = LoggerFactory.getLogger(JoiningController.class);
  private static final String PAGE = "joining/joining";
  private static final String NOTICE = "notice";
  private static final String OTHER = "other";

  private final OpenCourses courses;
  private final CourseViews views;
  private final Joining joining;

  JoiningController(OpenCourses courses, CourseViews views, Joining joining) {
    this.courses = courses;
    this.views = views;
    this.joining = joining;
  }

  @GetMapping("/courses/{id}/same")
  ModelAndView show(
      @AuthenticationPrincipal Account actor, @PathVariable String id, Model carried) {
    String notice = Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
    return Page.of(PAGE, page(actor, id, Typed.NOTHING, notice, Faults.NONE));
  }

  @PostMapping("/courses/{id}/same/join")
  ModelAndView join(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "0") long basis,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    var typed = new Typed(sent);
    Reading<Long> joined =
        joining.join(
            actor,
            OpenCourses.idOf(id),
            basis,
            OpenCourses.idOf(typed.text(OTHER)),
            typed.text(CourseChanges.REASON));
    return done(
        actor, id, typed, joined, "Joined. What either says against a dose counts.", carried);
  }

  @PostMapping("/courses/{id}/same/part")
  ModelAndView part(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "0") long basis,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    var typed = new Typed(sent);
    Reading<Long> parted =
        joining.part(
            actor,
            OpenCourses.idOf(id),
            basis,
            OpenCourses.idOf(typed.text(OTHER)),
            typed.text(CourseChanges.REASON));
    return done(
        actor, id, typed, parted, "Parted. What was read until now goes on counting.", carried);
  }

  private ModelAndView done(
      Account actor,
      String id,
      Typed typed,
      Reading<Long> outcome,
      String notice,
      RedirectAttributes carried) {
    if (outcome instanceof Reading.Refused<Long> refused) {
      return Page.refused(PAGE, page(actor, id, typed, "", Faults.of(refused)));
    }
    LOG.info("Course {}: joined or parted by {}, entry {}", id, actor.id(), outcome.orThrow());
    carried.addFlashAttribute(NOTICE, notice);
    return Page.redirect("/courses/" + id + "/same");
  }

  private JoiningPage page(Account actor, String id, Typed typed, String notice, Faults faults) {
    CourseState state = courses.find(id);
    CourseFile file = state.file();
    return new JoiningPage(
        views.man(state),
        "/courses/" + id,
        file.basis(),
        JoinLog.of(file).follows(),
        others(joining.joined(file)),
        others(joining.mayBeHis(file)),
        By.PRESCRIBER.includes(actor),
        Field.of(Field.Kind.TEXT, CourseChanges.REASON, "Why, and what shows it")
            .asTyped(typed)
            .withFaults(faults),
        notice,
        faults);
  }

  private static List<JoiningPage.Other> others(List<CourseFile> files) {
    return files.stream()
        .map(one -> new JoiningPage.Other(one.id().text(), ManLines.of(one.patient())))
        .toList();
  }
}
