package rungwise.web.populations;

import java.util.List;
import java.util.Set;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.people.Account;
import rungwise.clinic.populations.PopulationSheet;
import rungwise.clinic.populations.Populations;
import rungwise.clinic.populations.SignedPopulation;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.HeldField;
import rungwise.web.page.Page;

/** Brings in a population from a file. Nothing is kept before it is signed. */
@Controller
final class BringInController {

  private static final String FORM = "populations/bring-in";
  private static final String LOOK = "populations/look";

  private final Populations populations;

  BringInController(Populations populations) {
    this.populations = populations;
  }

  @GetMapping("/populations/new")
  ModelAndView begin() {
    return Page.of(FORM, BringInPage.of("", "", Faults.NONE));
  }

  @PostMapping("/populations/new")
  ModelAndView check(
      @AuthenticationPrincipal Account actor,
      @RequestParam(defaultValue = "") String name,
      @RequestParam(defaultValue = "") String document) {
    String called = name.strip();
    Reading<PopulationSheet> sheet = populations.lookBroughtIn(document);
    List<Fault> faultsOfName = populations.faultsOfName(called);
    return sheet.found().isPresent() && faultsOfName.isEmpty()
        ? Page.of(LOOK, look(actor, called, document, sheet.orThrow()))
        : Page.refused(
            FORM, BringInPage.of(called, document, BringInPage.faults(faultsOfName, sheet)));
  }

  private static LookPage look(Account actor, String name, String document, PopulationSheet sheet) {
    return LookPage.of(
        name,
        sheet,
        actor,
        "/populations/new/sign",
        List.of(
            new HeldField(Populations.NAME_FIELD, name),
            new HeldField(BringInPage.DOCUMENT, document)));
  }

  @PostMapping("/populations/new/sign")
  ModelAndView sign(
      @AuthenticationPrincipal Account actor,
      @RequestParam(defaultValue = "") String name,
      @RequestParam(defaultValue = "") String document,
      @RequestParam(defaultValue = "") Set<String> preparations) {
    String called = name.strip();
    Reading<SignedPopulation> outcome =
        populations.signBroughtIn(actor, called, document, SignFor.ids(preparations));
    if (outcome.found().isPresent()) {
      return PopulationsController.signed(outcome.orThrow(), actor);
    }
    Reading<PopulationSheet> sheet = populations.lookBroughtIn(document);
    return sheet.found().isPresent() && populations.faultsOfName(called).isEmpty()
        ? Page.refused(
            LOOK,
            look(actor, called, document, sheet.orThrow())
                .with(new Faults(outcome.placed()), preparations))
        : Page.refused(
            FORM,
            BringInPage.of(
                called, document, BringInPage.faults(populations.faultsOfName(called), sheet)));
  }
}
