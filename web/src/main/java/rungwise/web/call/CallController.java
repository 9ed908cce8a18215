package rungwise.web.call;

import java.time.InstantSource;
import java.util.Map;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.callbook.CallBooks;
import rungwise.clinic.clock.ClockBelief;
import rungwise.clinic.clock.ClockCheck;
import rungwise.web.callbook.DepartmentLine;
import rungwise.web.page.Assets;
import rungwise.web.page.Page;

/** The call with nobody's record opened: what was typed stands in the address, and is not kept. */
@Controller
final class CallController {

  private static final String PAGE = "call/call";

  private final InstantSource clock;
  private final ClockCheck check;
  private final ClinicTime time;
  private final Assets assets;
  private final CallBooks books;

  CallController(
      InstantSource clock, ClockCheck check, ClinicTime time, Assets assets, CallBooks books) {
    this.clock = clock;
    this.check = check;
    this.time = time;
    this.assets = assets;
    this.books = books;
  }

  @GetMapping("/call")
  ModelAndView show(@RequestParam Map<String, String> typed) {
    boolean isWrong = check.belief() instanceof ClockBelief.Wrong;
    var ticking = Ticking.of(clock.instant(), time, assets.callScript(), isWrong);
    CallPage page =
        CallPage.of(
            new CallForm(typed),
            ticking,
            new RescueInPage(assets.rescueScript()),
            DepartmentLine.all(books),
            time);
    return page.faults().isEmpty() ? Page.of(PAGE, page) : Page.refused(PAGE, page);
  }
}
