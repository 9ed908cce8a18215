package rungwise.web.room;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.access.CourseAccess;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.clinic.room.Room;
import rungwise.clinic.room.RoomViews;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.sheet.OpenErectionView;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.today.DayList;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;
import rungwise.web.page.Assets;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.page.Refreshing;

/** The board of everybody under observation, and the end of the day. */
@Controller
final class RoomController {

  private static final Logger LOG = LoggerFactory.getLogger(RoomController.class);
  private static final String BOARD = "room/board";
  private static final String NOTICE = "notice";

  private final Room room;
  private final RoomViews views;
  private final CourseViews courses;
  private final DayList list;
  private final Assets assets;

  RoomController(Room room, RoomViews views, CourseViews courses, DayList list, Assets assets) {
    this.room = room;
    this.courses = courses;
    this.views = views;
    this.list = list;
    this.assets = assets;
  }

  @GetMapping("/room")
  ModelAndView board(@AuthenticationPrincipal Account actor, Model carried) {
    String notice = Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
    return Page.of(BOARD, page(actor, notice, Faults.NONE));
  }

  @PostMapping("/room/close")
  ModelAndView close(@AuthenticationPrincipal Account actor, RedirectAttributes carried) {
    return switch (room.closeDay(actor)) {
      case Reading.Read<LocalDate> read -> {
        LOG.info("Room: day closed by {}", actor.id());
        carried.addFlashAttribute(
            NOTICE, "The day is closed: " + ClinicTime.words(read.value()) + ".");
        yield Page.redirect("/room");
      }
      case Reading.Refused<LocalDate> refused -> {
        List<Fault> faults = refused.faults().stream().map(Fault::ofForm).toList();
        yield Page.refused(BOARD, page(actor, "", new Faults(faults)));
      }
    };
  }

  private RoomPage page(Account actor, String notice, Faults faults) {
    String stamp = list.stamp();
    List<OpenErectionView> left =
        room.handOver().left().stream()
            .flatMap(state -> courses.notOver(state).stream())
            .map(
                one ->
                    CourseAccess.isStanding(actor)
                        ? one
                        : one.withoutAbout(actor.may(Role.ON_CALL_CLINICIAN)))
            .toList();
    return new RoomPage(
        views.board(room.board(), room.now(), room.lastClosed()),
        left,
        room.notKnown(),
        notice,
        faults,
        By.CLINICIAN.includes(actor),
        new Refreshing(stamp, assets.refreshScript()));
  }
}
