package rungwise.web.takeover;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
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
import rungwise.clinic.course.CourseFact.ElsewhereWritten;
import rungwise.clinic.people.Account;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.takeover.TakingOver;
import rungwise.dosing.history.Before.TakenOver;
import rungwise.dosing.ladder.Ladder;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.page.Typed;
import rungwise.web.start.StartChoices;
import rungwise.web.titration.OpenCourses;

/** What a man injects elsewhere, and at what part of it his schedule begins here. */
@Controller
final class TakeoverController {

  private static final Logger LOG = LoggerFactory.getLogger(TakeoverController.class);
  private static final String PAGE = "takeover/takeover";
  private static final String NOTICE = "notice";

  private final OpenCourses courses;
  private final CourseViews views;
  private final TakingOver taking;
  private final StartChoices choices;

  TakeoverController(
      OpenCourses courses, CourseViews views, TakingOver taking, StartChoices choices) {
    this.courses = courses;
    this.views = views;
    this.taking = taking;
    this.choices = choices;
  }

  @GetMapping("/courses/{id}/transfer")
  ModelAndView show(
      @AuthenticationPrincipal Account actor, @PathVariable String id, Model carried) {
    String notice = Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
    return Page.of(PAGE, page(actor, id, Typed.NOTHING, notice, Faults.NONE));
  }

  @PostMapping("/courses/{id}/transfer")
  ModelAndView tell(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    var typed = new Typed(sent);
    Reading<Long> told = taking.tell(actor, OpenCourses.idOf(id), ToldForm.draft(typed));
    if (told instanceof Reading.Refused<Long> refused) {
      Faults faults = Faults.of(refused).inOrderOf(ToldForm.FIELDS);
      return Page.refused(PAGE, page(actor, id, typed, "", faults));
    }
    LOG.info("Course {}: told from elsewhere by {}, entry {}", id, actor.id(), told.orThrow());
    carried.addFlashAttribute(NOTICE, "It is written down. Nothing of it is ordered or proven.");
    return Page.redirect("/courses/" + id + "/transfer");
  }

  @PostMapping("/courses/{id}/transfer/open")
  ModelAndView open(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "0") long basis,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    var typed = new Typed(sent);
    Reading<Long> opened =
        taking.open(
            actor,
            OpenCourses.idOf(id),
            basis,
            typed.text(TakingOver.UP_TO),
            typed.text(OpenForm.REASON));
    if (opened instanceof Reading.Refused<Long> refused) {
      Faults faults =
          Faults.of(
              refused.placed(),
              field -> field.equals(CourseChanges.REASON) ? OpenForm.REASON : field);
      return Page.refused(PAGE, page(actor, id, typed, "", faults));
    }
    LOG.info("Course {}: schedule opened by {}, entry {}", id, actor.id(), opened.orThrow());
    carried.addFlashAttribute(
        NOTICE, "The schedule begins there. The dose is signed on the course page.");
    return Page.redirect("/courses/" + id + "/transfer");
  }

  private TakeoverPage page(Account actor, String id, Typed typed, String notice, Faults faults) {
    CourseState state = courses.find(id);
    Ladder ladder = state.question().ladder();
    CourseView view = views.of(state);
    List<TakeoverPage.Line> told =
        state.file().inForce(ElsewhereWritten.class).stream()
            .map(written -> view.entry(written.entry().number()))
            .map(entry -> new TakeoverPage.Line(entry, content(state, entry.number())))
            .toList();
    return new TakeoverPage(
        view.man(),
        "/courses/" + id,
        state.file().basis(),
        told,
        By.CLINICIAN.includes(actor),
        ToldForm.of(choices.preparations().get(), choices.barrels().get(), typed, faults),
        taking
            .openable(state)
            .filter(most -> By.PRESCRIBER.includes(actor))
            .map(most -> OpenForm.of(ladder.dose(most), typed, faults)),
        notice,
        faults);
  }

  /** What a told dose holds, by the entry that says so; empty for any other entry. */
  private static String content(CourseState state, long entry) {
    return state.question().history().before().elsewhere().takenOver().stream()
        .map(TakenOver::told)
        .filter(told -> told.entry() == entry)
        .map(
            told ->
                told.drawn()
                    + " of "
                    + told.preparation().composition()
                    + ": "
                    + told.preparation().contentOf(told.drawn()))
        .collect(Collectors.joining());
  }
}
