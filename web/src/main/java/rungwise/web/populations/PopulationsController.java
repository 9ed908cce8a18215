package rungwise.web.populations;

import java.util.List;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.People;
import rungwise.clinic.populations.PopulationReader;
import rungwise.clinic.populations.Populations;
import rungwise.clinic.populations.SignedPopulation;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;

/** The populations of the response model: those that were signed, and those of the program. */
@Controller
final class PopulationsController {

  private static final Logger LOG = LoggerFactory.getLogger(PopulationsController.class);
  private static final String LIST = "populations/populations";
  private static final String LOOK = "populations/look";
  private static final String HOME = "/populations";

  private final Populations populations;
  private final People people;
  private final ClinicTime time;

  PopulationsController(Populations populations, People people, ClinicTime time) {
    this.populations = populations;
    this.people = people;
    this.time = time;
  }

  private PopulationsPage page(Account actor) {
    return PopulationsPage.of(
        populations,
        actor,
        new PopulationsPage.Words(
            time, id -> people.find(id).map(Account::fullName).orElse("the program")));
  }

  @GetMapping("/populations")
  ModelAndView list(@AuthenticationPrincipal Account actor) {
    return Page.of(LIST, page(actor));
  }

  @GetMapping("/populations/shipped/{name}")
  ModelAndView look(@AuthenticationPrincipal Account actor, @PathVariable String name) {
    return Page.of(LOOK, sheet(actor, name));
  }

  private LookPage sheet(Account actor, String name) {
    String document =
        populations.shipped().stream()
            .filter(one -> one.name().equals(name))
            .findFirst()
            .map(PopulationReader.Shipped::document)
            .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
    return LookPage.of(
        name,
        populations.look(document).orThrow(),
        actor,
        "/populations/shipped/" + name + "/sign",
        List.of());
  }

  @PostMapping("/populations/shipped/{name}/sign")
  ModelAndView sign(
      @AuthenticationPrincipal Account actor,
      @PathVariable String name,
      @RequestParam(defaultValue = "") Set<String> preparations) {
    LookPage page = sheet(actor, name);
    return switch (populations.signShipped(actor, name, SignFor.ids(preparations))) {
      case Reading.Read<SignedPopulation> read -> signed(read.value(), actor);
      case Reading.Refused<SignedPopulation> refused ->
          Page.refused(LOOK, page.with(Faults.of(refused), preparations));
    };
  }

  static ModelAndView signed(SignedPopulation population, Account actor) {
    LOG.info("Population {} signed by {}", population.key(), actor.id());
    return Page.redirect(HOME);
  }

  @PostMapping("/populations/{name}/{version}/withdraw")
  ModelAndView withdraw(
      @AuthenticationPrincipal Account actor,
      @PathVariable String name,
      @PathVariable int version,
      @RequestParam(defaultValue = "") String reason) {
    return switch (populations.withdraw(actor, name, version, reason)) {
      case Reading.Read<SignedPopulation> read -> {
        LOG.info("Population {} withdrawn by {}", read.value().key(), actor.id());
        yield Page.redirect(HOME);
      }
      case Reading.Refused<SignedPopulation> refused ->
          Page.refused(LIST, page(actor).refused(name + " version " + version, reason, refused));
    };
  }
}
