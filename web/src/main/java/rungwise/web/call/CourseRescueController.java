package rungwise.web.call;

import java.time.InstantSource;
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
import rungwise.clinic.ClinicTime;
import rungwise.clinic.call.RescueDraft;
import rungwise.clinic.call.Rescues;
import rungwise.clinic.people.Account;
import rungwise.clinic.rescuing.RescueView;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.titration.Titration;
import rungwise.dosing.urgent.rescue.LogVerdict;
import rungwise.dosing.urgent.rescue.RescueLimits;
import rungwise.quantities.Reading;
import rungwise.web.page.Assets;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.page.Typed;
import rungwise.web.titration.CoursePaths;

/** The rescue of a man on record: what is given and measured is written down as it happens. */
@Controller
final class CourseRescueController {

  private static final Logger LOG = LoggerFactory.getLogger(CourseRescueController.class);
  private static final String PAGE = "call/course-rescue";
  private static final String NOTICE = "notice";

  private final Titration titration;
  private final Rescues rescues;
  private final CourseViews views;
  private final InstantSource clock;
  private final ClinicTime time;
  private final Assets assets;

  CourseRescueController(
      Titration titration,
      Rescues rescues,
      CourseViews views,
      InstantSource clock,
      ClinicTime time,
      Assets assets) {
    this.titration = titration;
    this.rescues = rescues;
    this.views = views;
    this.clock = clock;
    this.time = time;
    this.assets = assets;
  }

  @GetMapping("/courses/{id}/call/rescue")
  ModelAndView show(
      @AuthenticationPrincipal Account actor, @PathVariable String id, Model carried) {
    String notice = Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
    return Page.of(PAGE, page(actor, id, Optional.empty(), Typed.NOTHING, notice, Faults.NONE));
  }

  @PostMapping("/courses/{id}/call/rescue")
  ModelAndView write(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    CourseState state = CoursePaths.find(titration, id);
    var typed = new Typed(sent);
    RescueDraft draft = CourseRescuePage.draft(typed);
    Reading<Long> outcome = rescues.write(actor, state.file().id(), draft);
    if (outcome instanceof Reading.Refused<Long> refused) {
      Optional<LogVerdict.Hold> held =
          draft.what().equals(Optional.of(RescueDraft.What.PREPARE))
              ? rescues.held(state.file(), draft)
              : Optional.empty();
      return Page.refused(PAGE, page(actor, id, held, typed, "", Faults.of(refused)));
    }
    LOG.info(
        "Course {}: rescue written by {}, entry {}",
        state.file().id(),
        actor.id(),
        outcome.orThrow());
    carried.addFlashAttribute(NOTICE, notice(draft));
    boolean isFromCall = typed.has("back", "call");
    return Page.redirect("/courses/" + id + (isFromCall ? "/call" : "/call/rescue"));
  }

  @GetMapping("/courses/{id}/call/letter")
  ModelAndView letter(@PathVariable String id) {
    CourseState state = CoursePaths.find(titration, id);
    List<String> given =
        views.rescue(state, rescues.limits()).counting().reversed().stream()
            .map(RescueView.Line::words)
            .toList();
    var ticking =
        Ticking.of(clock.instant(), time, assets.callScript(), state.knownNow().isEmpty());
    return Page.of(
        "call/letter",
        CallLetterPage.of(views.call(state), given, rescues.protocol().number(), ticking, time));
  }

  private static String notice(RescueDraft draft) {
    return draft.what().equals(Optional.of(RescueDraft.What.PREPARE))
        ? "It may be prepared, and that is written down. Once it is given, write that down too."
        : "It is written down.";
  }

  private CourseRescuePage page(
      Account actor,
      String id,
      Optional<LogVerdict.Hold> held,
      Typed typed,
      String notice,
      Faults faults) {
    CourseState state = CoursePaths.find(titration, id);
    RescueLimits limits = rescues.limits();
    return CourseRescuePage.of(
        views.call(state),
        views.rescue(state, limits),
        rescues.isSample(),
        By.CLINICIAN.includes(actor),
        held,
        typed,
        notice,
        faults,
        Ticking.of(clock.instant(), time, assets.callScript(), state.knownNow().isEmpty()),
        time);
  }
}
