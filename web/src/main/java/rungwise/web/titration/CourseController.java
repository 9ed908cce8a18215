package rungwise.web.titration;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.forecast.CourseForecasts;
import rungwise.clinic.past.PastHistories.Undone;
import rungwise.clinic.people.Account;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.titration.Lifting;
import rungwise.clinic.titration.SignDraft;
import rungwise.clinic.titration.Titration;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Place;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.start.StartChoices;

/** The course page and the short forms on it. */
@Controller
final class CourseController {

  private static final Logger LOG = LoggerFactory.getLogger(CourseController.class);
  private static final String PAGE = "titration/course";
  private static final String NOTICE = "notice";

  private final Titration titration;
  private final Lifting lifting;
  private final CourseViews views;
  private final CourseForecasts forecasts;
  private final StartChoices choices;

  CourseController(
      Titration titration,
      Lifting lifting,
      CourseViews views,
      CourseForecasts forecasts,
      StartChoices choices) {
    this.titration = titration;
    this.lifting = lifting;
    this.views = views;
    this.forecasts = forecasts;
    this.choices = choices;
  }

  @GetMapping("/courses/{id}")
  ModelAndView show(
      @AuthenticationPrincipal Account actor, @PathVariable String id, Model carried) {
    String notice = Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
    return Page.of(PAGE, page(actor, courseId(id)).withNotice(notice));
  }

  @GetMapping("/courses/{id}/order")
  ModelAndView order(@PathVariable String id) {
    CourseView view = view(courseId(id));
    if (view.signed().isEmpty()) {
      throw new ResponseStatusException(HttpStatus.NOT_FOUND);
    }
    return Page.of("titration/order", OrderPage.of(view));
  }

  @PostMapping("/courses/{id}/sign")
  ModelAndView sign(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "0") long volume,
      @RequestParam(defaultValue = "CLINIC") Place place,
      @RequestParam(defaultValue = "0") long basis,
      @RequestParam(defaultValue = "") String changed,
      @RequestParam(defaultValue = "") Set<String> overridden,
      @RequestParam(defaultValue = "") String until,
      @RequestParam(defaultValue = "") String accepted,
      @RequestParam(defaultValue = "") String signReason,
      @RequestParam(defaultValue = "false") boolean nextStep,
      RedirectAttributes carried) {
    Set<GuardRule> rules =
        Arrays.stream(GuardRule.values())
            .filter(rule -> overridden.contains(rule.name()))
            .collect(Collectors.toSet());
    CourseId course = courseId(id);
    SignDraft draft =
        new SignDraft(volume, place, basis, changed, rules, until, signReason, nextStep)
            .accepting(accepted);
    Reading<Long> outcome = titration.sign(actor, course, draft);
    return done(
        actor,
        course,
        "dose signed",
        outcome,
        "The dose is signed.",
        carried,
        Map.of(CourseChanges.REASON, SignForm.REASON),
        page -> page.withSigning(draft));
  }

  @PostMapping("/courses/{id}/review")
  ModelAndView review(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "") String softDate,
      @RequestParam(defaultValue = "") String softTime,
      @RequestParam(defaultValue = "") String reviewReason,
      RedirectAttributes carried) {
    CourseId course = courseId(id);
    Reading<Long> outcome =
        lifting.reviewEmergency(actor, course, softDate, softTime, reviewReason);
    return done(
        actor,
        course,
        "emergency reviewed",
        outcome,
        "The review is on record. The next dose is a new signature, in the clinic.",
        carried,
        Map.of(
            CourseChanges.REASON,
            "reviewReason",
            ClinicTime.DATE_FIELD,
            "softDate",
            ClinicTime.TIME_FIELD,
            "softTime"),
        page -> page.withLifting(forms -> forms.withReview(softDate, softTime, reviewReason)));
  }

  @PostMapping("/courses/{id}/confirm")
  ModelAndView confirm(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "") String correction,
      @RequestParam(defaultValue = "") String confirmReason,
      RedirectAttributes carried) {
    CourseId course = courseId(id);
    Reading<Long> outcome =
        titration.find(course).stream()
            .flatMap(state -> entries(state))
            .filter(entry -> entry.equals(correction))
            .findFirst()
            .map(EntryId::new)
            .map(entry -> lifting.confirmCorrection(actor, course, entry, confirmReason))
            .orElseGet(() -> Reading.refused("Choose the correction that you confirm."));
    return done(
        actor,
        course,
        "correction confirmed",
        outcome,
        "The correction is confirmed: the report before it counts no more.",
        carried,
        Map.of(CourseChanges.REASON, "confirmReason"),
        page -> page.withLifting(forms -> forms.withConfirmation(correction, confirmReason)));
  }

  @PostMapping("/courses/{id}/seen")
  ModelAndView seen(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "0") long basis,
      @RequestParam(defaultValue = "") String seenWords,
      RedirectAttributes carried) {
    CourseId course = courseId(id);
    return done(
        actor,
        course,
        "flagged reports seen",
        lifting.seeFlags(actor, course, basis, seenWords),
        "The flagged reports are marked as seen by you.",
        carried,
        Map.of(CourseChanges.REASON, "seenWords"),
        page -> page.withLifting(forms -> forms.withSeen(seenWords)));
  }

  @PostMapping("/courses/{id}/past")
  ModelAndView past(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "") String reference,
      @RequestParam(defaultValue = "") String pastReason,
      RedirectAttributes carried) {
    CourseId course = courseId(id);
    Reading<Long> outcome =
        reference.isBlank()
            ? Reading.refused("Choose what he was injected with, or that nobody can tell.")
            : lifting.reviewPast(
                actor, course, preparation(reference), choices.inUse(), pastReason);
    return done(
        actor,
        course,
        "long erections from before reviewed",
        outcome,
        "What he was injected with before this record is written down.",
        carried,
        Map.of(CourseChanges.REASON, "pastReason"),
        page -> page.withLifting(forms -> forms.withPast(reference, pastReason)));
  }

  /** The entries of a course, and those by which what was brought in for it was taken back. */
  private static Stream<String> entries(CourseState state) {
    return Stream.concat(
            state.file().entries().stream().map(CourseEntry::id),
            state.undone().stream().map(Undone::entry))
        .map(EntryId::text);
  }

  private static Optional<PreparationId> preparation(String reference) {
    return reference.equals(LiftingForms.NOBODY_CAN_TELL)
        ? Optional.empty()
        : Optional.of(new PreparationId(reference));
  }

  @PostMapping("/courses/{id}/reopen")
  ModelAndView reopen(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "0") long volume,
      @RequestParam(defaultValue = "") String reopenReason,
      RedirectAttributes carried) {
    CourseId course = courseId(id);
    Reading<Long> outcome = lifting.reopen(actor, course, volume, reopenReason);
    return done(
        actor,
        course,
        "volume reopened",
        outcome,
        "The dose is open again.",
        carried,
        Map.of(CourseChanges.REASON, CoursePage.REOPEN_REASON),
        UnaryOperator.identity());
  }

  @PostMapping("/courses/{id}/plan")
  ModelAndView plan(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "") String preparation,
      @RequestParam(defaultValue = "") String barrel,
      @RequestParam(defaultValue = "") String protocol,
      @RequestParam(defaultValue = "") String planReason,
      RedirectAttributes carried) {
    CourseId course = courseId(id);
    Reading<Long> outcome =
        choices
            .plan(preparation, barrel, protocol)
            .map(plan -> titration.choosePlan(actor, course, plan, choices.inUse(), planReason))
            .orElseGet(
                () ->
                    Reading.refused(
                        "Choose preparation, syringe and protocol from the clinic's lists."));
    return done(
        actor,
        course,
        "plan chosen",
        outcome,
        "The plan is changed. The dose that was signed for the one before has ended.",
        carried,
        Map.of(CourseChanges.REASON, CoursePage.PLAN_REASON),
        UnaryOperator.identity());
  }

  /**
   * What comes of a form of the page.
   *
   * @param names the fields of that form which have another name on the page
   * @param typed the page with what was typed
   */
  private ModelAndView done(
      Account actor,
      CourseId course,
      String what,
      Reading<Long> outcome,
      String notice,
      RedirectAttributes carried,
      Map<String, String> names,
      UnaryOperator<CoursePage> typed) {
    return switch (outcome) {
      case Reading.Read<Long> read -> {
        LOG.info("Course {}: {} by {}, entry {}", course, what, actor.id(), read.value());
        carried.addFlashAttribute(NOTICE, notice);
        yield Page.redirect("/courses/" + course);
      }
      case Reading.Refused<Long> refused ->
          Page.refused(
              PAGE,
              typed
                  .apply(page(actor, course))
                  .withFaults(
                      Faults.of(refused.placed(), field -> names.getOrDefault(field, field))));
    };
  }

  private CoursePage page(Account actor, CourseId id) {
    CourseState state = state(id);
    CourseView view = views.of(state);
    return CoursePage.of(view, ForecastPart.of(forecasts.of(state), view), actor, choices);
  }

  private CourseView view(CourseId id) {
    return views.of(state(id));
  }

  private CourseState state(CourseId id) {
    return titration.find(id).orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
  }

  static CourseId courseId(String text) {
    try {
      return new CourseId(text);
    } catch (IllegalArgumentException notAnId) {
      throw new ResponseStatusException(HttpStatus.NOT_FOUND, "no such course", notAnId);
    }
  }
}
