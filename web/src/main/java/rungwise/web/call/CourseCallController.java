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
import rungwise.clinic.call.Calls;
import rungwise.clinic.callbook.CallBooks;
import rungwise.clinic.people.Account;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.titration.Titration;
import rungwise.quantities.Reading;
import rungwise.web.page.Assets;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.page.Typed;
import rungwise.web.titration.CoursePaths;

/** The call of a man on record: what is said is written down as it is said. */
@Controller
final class CourseCallController {

  private static final Logger LOG = LoggerFactory.getLogger(CourseCallController.class);
  private static final String PAGE = "call/course-call";
  private static final String NOTICE = "notice";

  private final Titration titration;
  private final Calls calls;
  private final CallBooks books;
  private final CourseViews views;
  private final InstantSource clock;
  private final ClinicTime time;
  private final Assets assets;

  CourseCallController(
      Titration titration,
      Calls calls,
      CallBooks books,
      CourseViews views,
      InstantSource clock,
      ClinicTime time,
      Assets assets) {
    this.titration = titration;
    this.calls = calls;
    this.books = books;
    this.views = views;
    this.clock = clock;
    this.time = time;
    this.assets = assets;
  }

  @GetMapping("/courses/{id}/call")
  ModelAndView show(
      @AuthenticationPrincipal Account actor, @PathVariable String id, Model carried) {
    String notice = Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
    return Page.of(PAGE, page(actor, id, Typed.NOTHING, notice, Faults.NONE));
  }

  @PostMapping("/courses/{id}/call")
  ModelAndView write(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    CourseState state = CoursePaths.find(titration, id);
    var typed = new Typed(sent);
    Reading<Long> outcome = calls.write(actor, state.file().id(), CourseCallPage.draft(typed));
    if (outcome instanceof Reading.Refused<Long> refused) {
      return Page.refused(PAGE, page(actor, id, typed, "", Faults.of(refused)));
    }
    LOG.info(
        "Course {}: call written by {}, entry {}",
        state.file().id(),
        actor.id(),
        outcome.orThrow());
    carried.addFlashAttribute(NOTICE, "It is written down.");
    return Page.redirect("/courses/" + id + "/call");
  }

  private CourseCallPage page(Account actor, String id, Typed typed, String notice, Faults faults) {
    CourseState state = CoursePaths.find(titration, id);
    boolean isWrong = state.knownNow().isEmpty();
    return CourseCallPage.of(
        views.call(state),
        By.CLINICIAN.includes(actor) ? calls.others(actor) : List.of(),
        By.CLINICIAN.includes(actor),
        books,
        typed,
        notice,
        faults,
        Ticking.of(clock.instant(), time, assets.callScript(), isWrong),
        time);
  }
}
