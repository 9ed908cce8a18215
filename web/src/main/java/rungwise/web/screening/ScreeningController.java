package rungwise.web.screening;

import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.people.Account;
import rungwise.clinic.screening.Screenings;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.CourseState;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.titration.OpenCourses;

/** The screening page and its five forms. */
@Controller
final class ScreeningController {

  private static final Logger LOG = LoggerFactory.getLogger(ScreeningController.class);
  private static final String PAGE = "screening/screening";
  private static final String NOTICE = "notice";

  private final OpenCourses courses;
  private final CourseViews views;
  private final Screenings screenings;
  private final ClinicTime time;

  ScreeningController(
      OpenCourses courses, CourseViews views, Screenings screenings, ClinicTime time) {
    this.courses = courses;
    this.views = views;
    this.screenings = screenings;
    this.time = time;
  }

  @GetMapping("/courses/{id}/screening")
  ModelAndView show(
      @AuthenticationPrincipal Account actor, @PathVariable String id, Model carried) {
    String notice = Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
    return Page.of(PAGE, page(actor, id, ScreeningForms.EMPTY, Faults.NONE).withNotice(notice));
  }

  @PostMapping("/courses/{id}/screening")
  ModelAndView answer(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      RedirectAttributes carried) {
    var forms = new ScreeningForms(typed);
    Reading<Long> outcome = screenings.answer(actor, OpenCourses.idOf(id), forms.answers());
    return done(actor, id, forms, outcome, Faults::of, "The answers are saved.", carried);
  }

  @PostMapping("/courses/{id}/screening/decision")
  ModelAndView decide(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      RedirectAttributes carried) {
    var forms = new ScreeningForms(typed);
    String condition = forms.said(ScreeningForms.CONDITION);
    String reason = forms.said(ScreeningForms.reasonFor(condition));
    Reading<Long> outcome = screenings.decide(actor, OpenCourses.idOf(id), condition, reason);
    return done(
        actor,
        id,
        forms,
        outcome,
        refused -> Faults.of(refused.placed(), field -> ScreeningForms.reasonFor(condition)),
        "The decision is on record.",
        carried);
  }

  @PostMapping("/courses/{id}/screening/wrong")
  ModelAndView overturn(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      RedirectAttributes carried) {
    var forms = new ScreeningForms(typed);
    String condition = forms.said(ScreeningForms.CONDITION);
    Reading<Long> outcome =
        screenings.overturn(
            actor,
            OpenCourses.idOf(id),
            condition,
            forms.said(ScreeningForms.shownByFor(condition)),
            forms.said(ScreeningForms.whyWrong(condition)));
    return done(
        actor,
        id,
        forms,
        outcome,
        refused -> ScreeningForms.wrongs(refused, condition),
        "That the yes was wrong is on record.",
        carried);
  }

  @PostMapping("/courses/{id}/screening/baseline")
  ModelAndView baseline(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      RedirectAttributes carried) {
    var forms = new ScreeningForms(typed);
    Reading<Long> outcome = screenings.baseline(actor, OpenCourses.idOf(id), forms.baseline());
    return done(actor, id, forms, outcome, Faults::of, "The baseline is on record.", carried);
  }

  @PostMapping("/courses/{id}/screening/examination")
  ModelAndView examine(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      RedirectAttributes carried) {
    var forms = new ScreeningForms(typed);
    Reading<Long> outcome =
        screenings.examine(
            actor,
            OpenCourses.idOf(id),
            forms.said(Screenings.DAY),
            forms.said(Screenings.TIME),
            forms.said(Screenings.SCARRING),
            forms.said(Screenings.NOTE));
    return done(actor, id, forms, outcome, Faults::of, "The examination is on record.", carried);
  }

  private ModelAndView done(
      Account actor,
      String id,
      ScreeningForms forms,
      Reading<Long> outcome,
      Function<Reading.Refused<Long>, Faults> placed,
      String notice,
      RedirectAttributes carried) {
    return switch (outcome) {
      case Reading.Read<Long> read -> {
        LOG.info(
            "Course {}: screening by {}, entry {}", OpenCourses.idOf(id), actor.id(), read.value());
        carried.addFlashAttribute(NOTICE, notice);
        yield Page.redirect("/courses/" + OpenCourses.idOf(id) + "/screening");
      }
      case Reading.Refused<Long> refused ->
          Page.refused(PAGE, page(actor, id, forms, placed.apply(refused)));
    };
  }

  private ScreeningPage page(Account actor, String id, ScreeningForms forms, Faults faults) {
    CourseState state = courses.find(id);
    return ScreeningPage.of(state, views.of(state), actor, time, forms, faults);
  }
}
