package rungwise.web.formulary;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.formulary.ClinicPreparation;
import rungwise.clinic.formulary.Formulary;
import rungwise.clinic.formulary.InUseRule;
import rungwise.clinic.people.Account;
import rungwise.dosing.known.Barrel;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.Reading;
import rungwise.web.page.Page;

/** The preparations and syringes of the clinic. */
@Controller
final class FormularyController {

  private static final Logger LOG = LoggerFactory.getLogger(FormularyController.class);
  private static final String LIST = "formulary/preparations";
  private static final String FORM = "formulary/preparation-form";
  private static final String ONE = "formulary/preparation";
  private static final String SYRINGES = "formulary/syringes";
  private static final String NOTICE = "notice";

  private final Formulary formulary;

  FormularyController(Formulary formulary) {
    this.formulary = formulary;
  }

  @GetMapping("/preparations")
  ModelAndView list(@AuthenticationPrincipal Account actor, Model carried) {
    return Page.of(LIST, PreparationsPage.of(formulary, actor).withNotice(notice(carried)));
  }

  @GetMapping("/preparations/new")
  ModelAndView form() {
    return Page.of(FORM, PreparationFormPage.of(PreparationForm.EMPTY, Optional.empty()));
  }

  @PostMapping("/preparations/new")
  ModelAndView add(
      @AuthenticationPrincipal Account actor,
      @ModelAttribute PreparationForm form,
      RedirectAttributes carried) {
    return save(actor, form, Optional.empty(), carried);
  }

  @PostMapping("/preparations/samples/{id}")
  ModelAndView addSample(
      @AuthenticationPrincipal Account actor, @PathVariable String id, RedirectAttributes carried) {
    Reading<ClinicPreparation> outcome =
        formulary.addSample(actor.id(), new PreparationId(id), new InUseRule.NotStated());
    return switch (outcome) {
      case Reading.Read<ClinicPreparation> read -> kept(actor, read.value(), carried);
      case Reading.Refused<ClinicPreparation> refused ->
          Page.refused(LIST, PreparationsPage.of(formulary, actor).withFaults(refused.faults()));
    };
  }

  @GetMapping("/preparations/{id}")
  ModelAndView one(@AuthenticationPrincipal Account actor, @PathVariable String id) {
    return Page.of(ONE, PreparationPage.of(inUse(id), actor));
  }

  @GetMapping("/preparations/{id}/change")
  ModelAndView changeForm(@PathVariable String id) {
    ClinicPreparation old = inUse(id);
    return Page.of(FORM, PreparationFormPage.of(PreparationForm.of(old), Optional.of(id)));
  }

  @PostMapping("/preparations/{id}/change")
  ModelAndView change(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @ModelAttribute PreparationForm form,
      RedirectAttributes carried) {
    return save(actor, form, Optional.of(id), carried);
  }

  @PostMapping("/preparations/{id}/withdraw")
  ModelAndView withdraw(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "") String reason,
      RedirectAttributes carried) {
    ClinicPreparation old = inUse(id);
    Reading<ClinicPreparation> outcome = formulary.withdraw(actor.id(), old.id(), reason);
    if (outcome instanceof Reading.Refused<ClinicPreparation> refused) {
      return Page.refused(ONE, PreparationPage.of(old, actor).withFaults(refused.faults()));
    }
    LOG.info("Preparation {} withdrawn by {}", id, actor.id());
    carried.addFlashAttribute(NOTICE, old.preparation().name() + " is withdrawn.");
    return Page.redirect("/preparations");
  }

  @GetMapping("/syringes")
  ModelAndView syringes(@AuthenticationPrincipal Account actor, Model carried) {
    return Page.of(SYRINGES, SyringesPage.of(formulary, actor).withNotice(notice(carried)));
  }

  @PostMapping("/syringes/{token}")
  ModelAndView keep(
      @AuthenticationPrincipal Account actor,
      @PathVariable String token,
      @RequestParam(defaultValue = "") String keep,
      RedirectAttributes carried) {
    Reading<Barrel> outcome =
        keep.equals("yes")
            ? formulary.addSyringe(actor.id(), token)
            : formulary.withdrawSyringe(actor.id(), token);
    return switch (outcome) {
      case Reading.Read<Barrel> read -> {
        LOG.info("Syringe {} kept {} by {}", token, keep, actor.id());
        String words = read.value().words();
        carried.addFlashAttribute(
            NOTICE, keep.equals("yes") ? words + " is kept." : words + " is no longer kept.");
        yield Page.redirect("/syringes");
      }
      case Reading.Refused<Barrel> refused ->
          Page.refused(SYRINGES, SyringesPage.of(formulary, actor).withFaults(refused.faults()));
    };
  }

  private ModelAndView save(
      Account actor, PreparationForm form, Optional<String> of, RedirectAttributes carried) {
    PreparationFormPage page = PreparationFormPage.of(form, of);
    List<String> notices = formulary.noticesOn(form.draft());
    if (!notices.isEmpty() && !form.isConfirmed()) {
      return Page.refused(FORM, page.withNotices(notices));
    }
    Reading<ClinicPreparation> outcome =
        of.map(id -> formulary.change(actor.id(), new PreparationId(id), form.draft()))
            .orElseGet(() -> formulary.add(actor.id(), form.draft()));
    return switch (outcome) {
      case Reading.Read<ClinicPreparation> read -> kept(actor, read.value(), carried);
      case Reading.Refused<ClinicPreparation> refused ->
          Page.refused(FORM, page.withFaults(refused.faults()));
    };
  }

  private static ModelAndView kept(
      Account actor, ClinicPreparation kept, RedirectAttributes carried) {
    LOG.info("Preparation {} kept by {}", kept.id(), actor.id());
    carried.addFlashAttribute(NOTICE, kept.preparation().name() + " is kept.");
    return Page.redirect("/preparations");
  }

  private ClinicPreparation inUse(String id) {
    return formulary.list().stream()
        .filter(one -> one.id().value().equals(id))
        .findFirst()
        .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
  }

  static Set<String> keptNames(Formulary formulary) {
    return formulary.list().stream()
        .map(one -> one.preparation().name())
        .collect(Collectors.toSet());
  }

  private static String notice(Model carried) {
    return Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
  }
}
