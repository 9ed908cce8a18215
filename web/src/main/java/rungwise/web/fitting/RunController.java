package rungwise.web.fitting;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.fitting.FitResult;
import rungwise.clinic.fitting.FitRuns;
import rungwise.clinic.fitting.FitState;
import rungwise.clinic.people.Account;
import rungwise.clinic.populations.SignedPopulation;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.populations.SignFor;

/** The fit that was started last: how far it is, what came out, and its signature. */
@Controller
final class RunController {

  static final String RESULT = "/populations/fit/result";

  private static final Logger LOG = LoggerFactory.getLogger(RunController.class);
  private static final String SHOWN = "fitting/result";
  private static final String RUNNING = "fitting/running";

  /** A page without script asks again by itself after so many seconds. */
  private static final String AGAIN = "3";

  private final FitRuns runs;

  RunController(FitRuns runs) {
    this.runs = runs;
  }

  /** It asks again by itself, unless the reader has stopped it. */
  @GetMapping(RESULT)
  ModelAndView look(@RequestParam(defaultValue = "") String still, HttpServletResponse response) {
    boolean isStill = !still.isEmpty();
    FitState state = runs.state();
    if (state instanceof FitState.Running && !isStill) {
      response.setHeader("Refresh", AGAIN);
    }
    return state instanceof FitState.Done(FitResult result)
        ? Page.of(SHOWN, page(result))
        : Page.of(RUNNING, RunningPage.of(state, isStill));
  }

  private ResultPage page(FitResult result) {
    return ResultPage.of(
        result,
        runs.fingerprint(result),
        new ResultPage.Beside(runs.sheet(result), runs.change(result), runs.moves(result)));
  }

  @PostMapping("/populations/fit/stop")
  ModelAndView stop(@AuthenticationPrincipal Account actor) {
    runs.stop(actor);
    LOG.info("The fit was stopped by {}", actor.id());
    return Page.redirect(RESULT);
  }

  @PostMapping("/populations/fit/sign")
  ModelAndView sign(
      @AuthenticationPrincipal Account actor,
      @RequestParam(defaultValue = "") String fit,
      @RequestParam(defaultValue = "") String name,
      @RequestParam(defaultValue = "") Set<String> preparations) {
    String called = name.strip();
    return switch (runs.sign(actor, fit, called, SignFor.ids(preparations))) {
      case Reading.Read<SignedPopulation> read -> {
        LOG.info("Population {} signed by {}", read.value().key(), actor.id());
        yield Page.redirect("/populations");
      }
      case Reading.Refused<SignedPopulation> refused ->
          refused(called, preparations, Faults.of(refused));
    };
  }

  private ModelAndView refused(String name, Set<String> preparations, Faults faults) {
    FitState state = runs.state();
    return state instanceof FitState.Done(FitResult result)
        ? Page.refused(SHOWN, page(result).with(name, preparations, faults))
        : Page.refused(RUNNING, RunningPage.of(state, /* isStill= */ false));
  }
}
