package rungwise.web.titration;

import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.joining.Joining;
import rungwise.clinic.past.PastHistories.Undone;
import rungwise.clinic.people.Account;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.sheet.CourseViews;
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
import rungwise.web.page.Typed;
import rungwise.web.start.StartChoices;

/** The course page and the short forms on it. */
@Controller
final class CourseController {

  private static final Logger LOG = LoggerFactory.getLogger(CourseController.class);
  private static final String PAGE = "titration/course";
  private static final String NOTICE = "notice";

  private final Titration titration;
  private final Lifting lifting;
  private final Joining joining;
  private final CourseViews views;
  private final StartChoices choices;

  CourseController(
      Titration titration,
      Lifting lifting,
      Joining joining,
      CourseViews views,
      StartChoices choices) {
    this.titration = titration;
    this.lifting = lifting;
    this.joining = joining;
    this.views = views;
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
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    var typed = new Typed(sent);
    Set<GuardRule> rules =
        Arrays.stream(GuardRule.values())
            .filter(rule -> typed.has(SignDraft.OVERRIDDEN, rule.name()))
            .collect(Collectors.toSet());
    SignDraft draft =
        new SignDraft(
                volume,
                place,
                basis,
                typed.text(SignDraft.CHANGED),
                rules,
                typed.text(SignDraft.UNTIL),
                typed.text(SignForm.REASON),
                typed.has(SignDraft.NEXT_STEP, "true"))
            .accepting(typed.text(SignDraft.ACCEPTED));
    CourseId course = courseId(id);
    return done(
        CourseForm.SIGN, actor, course, titration.sign(actor, course, draft), typed, carried);
  }

  @PostMapping("/courses/{id}/review")
  ModelAndView review(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    var typed = new Typed(sent);
    CourseId course = courseId(id);
    Reading<Long> outcome =
        lifting.reviewEmergency(
            actor,
            course,
            typed.text(LiftingForms.SOFT_DATE),
            typed.text(LiftingForms.SOFT_TIME),
            typed.text(LiftingForms.REVIEW_REASON));
    return done(CourseForm.REVIEW, actor, course, outcome, typed, carried);
  }

  @PostMapping("/courses/{id}/confirm")
  ModelAndView confirm(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    var typed = new Typed(sent);
    CourseId course = courseId(id);
    Reading<Long> outcome =
        titration.find(course).stream()
            .flatMap(state -> entries(state))
            .filter(entry -> entry.equals(typed.text(LiftingForms.CORRECTION)))
            .findFirst()
            .map(EntryId::new)
            .map(
                entry ->
                    lifting.confirmCorrection(
                        actor, course, entry, typed.text(LiftingForms.CONFIRM_REASON)))
            .orElseGet(() -> Reading.refused("Choose the correction that you confirm."));
    return done(CourseForm.CONFIRM, actor, course, outcome, typed, carried);
  }

  @PostMapping("/courses/{id}/seen")
  ModelAndView seen(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "0") long basis,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    var typed = new Typed(sent);
    CourseId course = courseId(id);
    Reading<Long> outcome =
        lifting.seeFlags(actor, course, basis, typed.text(LiftingForms.SEEN_WORDS));
    return done(CourseForm.SEEN, actor, course, outcome, typed, carried);
  }

  @PostMapping("/courses/{id}/past")
  ModelAndView past(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    var typed = new Typed(sent);
    CourseId course = courseId(id);
    String reference = typed.text(LiftingForms.REFERENCE);
    Reading<Long> outcome =
        reference.isBlank()
            ? Reading.refused("Choose what he was injected with, or that nobody can tell.")
            : lifting.reviewPast(
                actor,
                course,
                preparation(reference),
                choices.inUse(),
                typed.text(LiftingForms.PAST_REASON));
    return done(CourseForm.PAST, actor, course, outcome, typed, carried);
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

  /** What comes of a form of the page, with what was typed into it. */
  private ModelAndView done(
      CourseForm form,
      Account actor,
      CourseId course,
      Reading<Long> outcome,
      Typed typed,
      RedirectAttributes carried) {
    return switch (outcome) {
      case Reading.Read<Long> read -> {
        LOG.info("Course {}: {} by {}, entry {}", course, form, actor.id(), read.value());
        carried.addFlashAttribute(NOTICE, form.notice());
        yield Page.redirect("/courses/" + course);
      }
      case Reading.Refused<Long> refused ->
          Page.refused(
              PAGE, page(actor, course).refused(typed, Faults.of(refused.placed(), form::fieldOf)));
    };
  }

  private CoursePage page(Account actor, CourseId id) {
    CourseState state = state(id);
    CourseView view = views.of(state);
    return CoursePage.of(view, joining.standing(state.file()), actor, choices);
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
