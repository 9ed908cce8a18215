package rungwise.web.room;

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
import rungwise.clinic.ClinicTime;
import rungwise.clinic.people.Account;
import rungwise.clinic.room.Room;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.titration.Titration;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.page.Typed;
import rungwise.web.titration.CoursePaths;

/** Hands a man who left while it was firm to somebody on call, by name. */
@Controller
final class HandOverController {

  private static final Logger LOG = LoggerFactory.getLogger(HandOverController.class);
  private static final String HAND_OVER = "room/hand-over";
  private static final String NOTICE = "notice";

  private final Titration titration;
  private final Room room;
  private final CourseViews views;

  HandOverController(Titration titration, Room room, CourseViews views) {
    this.titration = titration;
    this.room = room;
    this.views = views;
  }

  @GetMapping("/courses/{id}/hand-over")
  ModelAndView show(@AuthenticationPrincipal Account actor, @PathVariable String id) {
    CourseState state = CoursePaths.find(titration, id);
    Typed now =
        Typed.NOTHING
            .with(ClinicTime.DATE_FIELD, room.time().dateText(state.now()))
            .with(ClinicTime.TIME_FIELD, room.time().timeText(state.now()));
    return Page.of(HAND_OVER, page(actor, state, now, Faults.NONE));
  }

  @PostMapping("/courses/{id}/hand-over")
  ModelAndView handOver(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    CourseState state = CoursePaths.find(titration, id);
    var typed = new Typed(sent);
    Reading<Long> outcome =
        room.handOver().handOver(actor, state.file().id(), HandOverPage.draft(typed));
    if (outcome instanceof Reading.Refused<Long> refused) {
      return Page.refused(HAND_OVER, page(actor, state, typed, Faults.of(refused)));
    }
    LOG.info(
        "Course {}: handed over by {}, entry {}", state.file().id(), actor.id(), outcome.orThrow());
    carried.addFlashAttribute(
        NOTICE, "He is handed over. He stays on Today until somebody has written how it ended.");
    return Page.redirect("/room");
  }

  private HandOverPage page(Account actor, CourseState state, Typed typed, Faults faults) {
    return HandOverPage.of(
        views.of(state), room.handOver().onCall(actor), typed, room.time(), faults);
  }
}
