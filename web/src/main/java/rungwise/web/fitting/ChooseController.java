package rungwise.web.fitting;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.fitting.ChosenCourses;
import rungwise.clinic.fitting.FitDraft;
import rungwise.clinic.fitting.FitRuns;
import rungwise.clinic.fitting.FitState;
import rungwise.clinic.people.Account;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;

/** Chooses the courses of a fit, counts them, and starts it. */
@Controller
final class ChooseController {

  private static final Logger LOG = LoggerFactory.getLogger(ChooseController.class);
  private static final String FORM = "fitting/choose";
  private static final String CHOSEN = "fitting/chosen";

  private final FitRuns runs;

  ChooseController(FitRuns runs) {
    this.runs = runs;
  }

  @GetMapping("/populations/fit")
  ModelAndView begin() {
    return Page.of(FORM, form(ChooseForm.whole(), Faults.NONE));
  }

  private ChooseForm form(FitDraft draft, Faults faults) {
    return ChooseForm.of(
        runs.references(), draft, faults, !(runs.state() instanceof FitState.None));
  }

  @PostMapping("/populations/fit")
  ModelAndView count(
      @AuthenticationPrincipal Account actor, @RequestParam MultiValueMap<String, String> form) {
    FitDraft draft = ChooseForm.draft(form);
    return switch (runs.choose(actor, draft)) {
      case Reading.Read<ChosenCourses> read -> Page.of(CHOSEN, ChosenPage.of(read.value(), draft));
      case Reading.Refused<ChosenCourses> refused ->
          Page.refused(FORM, form(draft, Faults.of(refused)));
    };
  }

  @PostMapping("/populations/fit/run")
  ModelAndView run(
      @AuthenticationPrincipal Account actor, @RequestParam MultiValueMap<String, String> form) {
    FitDraft draft = ChooseForm.draft(form);
    return switch (runs.start(actor, draft)) {
      case Reading.Read<ChosenCourses> read -> {
        LOG.info("A fit to {} courses started by {}", read.value().courses().count(), actor.id());
        yield Page.redirect(RunController.RESULT);
      }
      case Reading.Refused<ChosenCourses> refused ->
          Page.refused(FORM, form(draft, Faults.of(refused)));
    };
  }
}
