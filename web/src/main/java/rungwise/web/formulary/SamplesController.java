package rungwise.web.formulary;

import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.formulary.ClinicPreparation;
import rungwise.clinic.formulary.Formulary;
import rungwise.clinic.formulary.SampleDraft;
import rungwise.clinic.people.Account;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;

/** The published compositions, each to be compared with a label before it is kept. */
@Controller
final class SamplesController {

  private static final String ONE = "formulary/sample";

  private final Formulary formulary;

  SamplesController(Formulary formulary) {
    this.formulary = formulary;
  }

  @GetMapping("/preparations/samples")
  ModelAndView list(@AuthenticationPrincipal Account actor) {
    return Page.of("formulary/samples", SamplesPage.of(formulary, actor));
  }

  @GetMapping("/preparations/samples/{id}")
  ModelAndView one(@PathVariable String id) {
    var nothingSaid = new SampleDraft(/* isCompared= */ false, "", "");
    return Page.of(ONE, SamplePage.of(sample(id), nothingSaid, Faults.NONE));
  }

  @PostMapping("/preparations/samples/{id}")
  ModelAndView keep(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "") String compared,
      @RequestParam(defaultValue = "") String inUse,
      @RequestParam(defaultValue = "") String inUseDays,
      RedirectAttributes carried) {
    Preparation sample = sample(id);
    var draft = new SampleDraft(!compared.isEmpty(), inUse, inUseDays);
    return switch (formulary.addSample(actor.id(), sample.id(), draft)) {
      case Reading.Read<ClinicPreparation> read ->
          PreparationsController.kept(actor, read.value(), carried);
      case Reading.Refused<ClinicPreparation> refused ->
          Page.refused(ONE, SamplePage.of(sample, draft, Faults.of(refused)));
    };
  }

  private static Preparation sample(String id) {
    return SamplePreparations.of(id)
        .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
  }
}
