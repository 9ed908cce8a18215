package rungwise.web.beside;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.Account;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.titration.Lifting;
import rungwise.clinic.titration.Titration;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.page.Typed;
import rungwise.web.start.StartChoices;
import rungwise.web.titration.OpenCourses;

/** The plan of a course, and what a prescriber changes of it. */
@Controller
final class PlanController {

  private static final Logger LOG = LoggerFactory.getLogger(PlanController.class);
  private static final String PAGE = "beside/plan";
  private static final String NOTICE = "notice";

  /**
   * What a form of the page changes: where its reason is typed, and what is said once it is done.
   */
  private enum Change {
    REOPEN(PlanPage.REOPEN_REASON, "The dose is open again."),
    PLAN(
        PlanForm.REASON,
        "The plan is changed. The dose that was signed for the one before has ended.");

    private final String reason;
    private final String notice;

    Change(String reason, String notice) {
      this.reason = reason;
      this.notice = notice;
    }
  }

  private final OpenCourses courses;
  private final Titration titration;
  private final Lifting lifting;
  private final CourseViews views;
  private final StartChoices choices;

  PlanController(
      OpenCourses courses,
      Titration titration,
      Lifting lifting,
      CourseViews views,
      StartChoices choices) {
    this.courses = courses;
    this.titration = titration;
    this.lifting = lifting;
    this.views = views;
    this.choices = choices;
  }

  @GetMapping("/courses/{id}/plan")
  ModelAndView show(@AuthenticationPrincipal Account actor, @PathVariable String id) {
    return Page.of(PAGE, page(actor, id));
  }

  @PostMapping("/courses/{id}/reopen")
  ModelAndView reopen(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "0") long upTo,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    var typed = new Typed(sent);
    CourseId course = OpenCourses.idOf(id);
    Reading<Long> outcome = lifting.reopen(actor, course, upTo, typed.text(PlanPage.REOPEN_REASON));
    return done(Change.REOPEN, actor, id, outcome, typed, carried);
  }

  @PostMapping("/courses/{id}/plan")
  ModelAndView plan(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    var typed = new Typed(sent);
    CourseId course = OpenCourses.idOf(id);
    Reading<Long> outcome =
        choices
            .plan(typed.text("preparation"), typed.text("barrel"), typed.text("protocol"))
            .map(
                plan ->
                    titration.choosePlan(
                        actor, course, plan, choices.inUse(), typed.text(PlanForm.REASON)))
            .orElseGet(
                () ->
                    Reading.refused(
                        "Choose preparation, syringe and protocol from the clinic's lists."));
    return done(Change.PLAN, actor, id, outcome, typed, carried);
  }

  /** Back to the course page; or the same page again, with each fault at its field. */
  private ModelAndView done(
      Change change,
      Account actor,
      String id,
      Reading<Long> outcome,
      Typed typed,
      RedirectAttributes carried) {
    return switch (outcome) {
      case Reading.Read<Long> read -> {
        LOG.info("Course {}: {} by {}, entry {}", id, change, actor.id(), read.value());
        carried.addFlashAttribute(NOTICE, change.notice);
        yield Page.redirect("/courses/" + id);
      }
      case Reading.Refused<Long> refused ->
          Page.refused(
              PAGE,
              page(actor, id)
                  .refused(
                      typed,
                      Faults.of(
                          refused.placed(),
                          field -> field.equals(CourseChanges.REASON) ? change.reason : field)));
    };
  }

  private PlanPage page(Account actor, String id) {
    return PlanPage.of(views.of(courses.find(id)), actor, choices);
  }
}
