package rungwise.web.formulary;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.formulary.Formulary;
import rungwise.clinic.people.Account;
import rungwise.dosing.syringe.Barrel;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;

/** The types of syringe that the clinic keeps. */
@Controller
final class SyringesController {

  private static final Logger LOG = LoggerFactory.getLogger(SyringesController.class);
  private static final String LIST = "formulary/syringes";

  private final Formulary formulary;

  SyringesController(Formulary formulary) {
    this.formulary = formulary;
  }

  @GetMapping("/syringes")
  ModelAndView list(@AuthenticationPrincipal Account actor, Model carried) {
    String notice = PreparationsController.notice(carried);
    return Page.of(LIST, SyringesPage.of(formulary, actor, notice, Faults.NONE));
  }

  @PostMapping("/syringes/{token}")
  ModelAndView keep(
      @AuthenticationPrincipal Account actor,
      @PathVariable String token,
      @RequestParam(defaultValue = "") String keep,
      RedirectAttributes carried) {
    boolean isKept = keep.equals("yes");
    Reading<Barrel> outcome =
        isKept
            ? formulary.addSyringe(actor.id(), token)
            : formulary.withdrawSyringe(actor.id(), token);
    return switch (outcome) {
      case Reading.Read<Barrel> read -> {
        LOG.info("Syringe {} kept {} by {}", read.value().token(), isKept, actor.id());
        String words = "The " + read.value().words();
        carried.addFlashAttribute(
            PreparationsController.NOTICE,
            isKept ? words + " is kept." : words + " is no longer kept.");
        yield Page.redirect("/syringes");
      }
      case Reading.Refused<Barrel> refused ->
          Page.refused(LIST, SyringesPage.of(formulary, actor, "", Faults.of(refused)));
    };
  }
}
