package rungwise.web.formulary;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.formulary.ClinicPreparation;
import rungwise.clinic.formulary.Formulary;
import rungwise.clinic.people.Account;
import rungwise.clinic.titration.Titration;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;

/** The preparations of the clinic. */
@Controller
final class PreparationsController {

  static final String NOTICE = "notice";

  private static final Logger LOG = LoggerFactory.getLogger(PreparationsController.class);
  private static final String FORM = "formulary/preparation-form";
  private static final String ONE = "formulary/preparation";
  private static final String WITHDRAW = "formulary/withdraw";

  private final Formulary formulary;
  private final Titration titration;

  PreparationsController(Formulary formulary, Titration titration) {
    this.formulary = formulary;
    this.titration = titration;
  }

  @GetMapping("/preparations")
  ModelAndView list(@AuthenticationPrincipal Account actor, Model carried) {
    return Page.of(
        "formulary/preparations", PreparationsPage.of(formulary, actor, notice(carried)));
  }

  @GetMapping("/preparations/new")
  ModelAndView form() {
    return Page.of(FORM, PreparationFormPage.of(PreparationForm.EMPTY, Optional.empty()));
  }

  @PostMapping("/preparations/new")
  ModelAndView add(
      @AuthenticationPrincipal Account actor,
      @RequestParam Map<String, String> typed,
      RedirectAttributes carried) {
    return save(actor, new PreparationForm(typed), Optional.empty(), carried);
  }

  @GetMapping("/preparations/{id}")
  ModelAndView one(@AuthenticationPrincipal Account actor, @PathVariable String id) {
    ClinicPreparation version = version(id);
    return Page.of(ONE, PreparationPage.of(version, formulary.isInUse(version.id()), actor));
  }

  @GetMapping("/preparations/{id}/change")
  ModelAndView changeForm(@PathVariable String id) {
    ClinicPreparation old = version(id);
    return formulary.isInUse(old.id())
        ? Page.of(FORM, PreparationFormPage.of(PreparationForm.of(old), Optional.of(id)))
        : Page.redirect("/preparations/" + old.id());
  }

  @PostMapping("/preparations/{id}/change")
  ModelAndView change(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      RedirectAttributes carried) {
    return save(actor, new PreparationForm(typed), Optional.of(version(id)), carried);
  }

  @GetMapping("/preparations/{id}/withdraw")
  ModelAndView withdrawForm(@PathVariable String id) {
    return Page.of(WITHDRAW, withdrawPage(version(id), "", Faults.NONE));
  }

  @PostMapping("/preparations/{id}/withdraw")
  ModelAndView withdraw(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "") String reason,
      RedirectAttributes carried) {
    ClinicPreparation old = version(id);
    return switch (formulary.withdraw(actor.id(), old.id(), reason)) {
      case Reading.Read<ClinicPreparation> read -> {
        LOG.info("Preparation {} withdrawn by {}", old.id(), actor.id());
        carried.addFlashAttribute(NOTICE, old.preparation().name() + " is withdrawn.");
        yield Page.redirect("/preparations");
      }
      case Reading.Refused<ClinicPreparation> refused ->
          Page.refused(WITHDRAW, withdrawPage(old, reason, Faults.of(refused)));
    };
  }

  private WithdrawPage withdrawPage(ClinicPreparation old, String reason, Faults faults) {
    var reached = titration.reach().ofRecall(formulary.withEarlier(old.id()));
    return WithdrawPage.of(old, reached, reason, faults);
  }

  private ModelAndView save(
      Account actor,
      PreparationForm form,
      Optional<ClinicPreparation> old,
      RedirectAttributes carried) {
    Optional<String> path = old.map(kept -> kept.id().value());
    List<String> notices = formulary.noticesOn(form.draft());
    if (!notices.isEmpty() && !form.confirms(notices)) {
      return Page.refused(FORM, PreparationFormPage.of(form, path, Faults.NONE, notices));
    }
    Reading<ClinicPreparation> outcome =
        old.map(kept -> formulary.change(actor.id(), kept.id(), form.draft()))
            .orElseGet(() -> formulary.add(actor.id(), form.draft()));
    return switch (outcome) {
      case Reading.Read<ClinicPreparation> read -> kept(actor, read.value(), carried);
      case Reading.Refused<ClinicPreparation> refused ->
          Page.refused(
              FORM,
              PreparationFormPage.of(form, path, PreparationFormPage.placed(refused), List.of()));
    };
  }

  static ModelAndView kept(Account actor, ClinicPreparation kept, RedirectAttributes carried) {
    LOG.info("Preparation {} kept by {}", kept.id(), actor.id());
    carried.addFlashAttribute(NOTICE, kept.preparation().name() + " is kept.");
    return Page.redirect("/preparations");
  }

  private ClinicPreparation version(String id) {
    return Optional.of(id)
        .filter(text -> !text.isBlank())
        .map(PreparationId::new)
        .flatMap(formulary::version)
        .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
  }

  static String notice(Model carried) {
    return Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
  }
}
