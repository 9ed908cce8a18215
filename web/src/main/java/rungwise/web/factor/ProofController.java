package rungwise.web.factor;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.factor.SecondFactors;
import rungwise.clinic.people.Account;
import rungwise.web.access.Routes;
import rungwise.web.page.Page;

/** The second factor given for a page that asked for it before it was shown. */
@Controller
final class ProofController {

  private static final String ACCOUNT = "/account";

  private final SecondFactors factors;
  private final Prover prover;
  private final StepUp stepUp;

  ProofController(SecondFactors factors, Prover prover, StepUp stepUp) {
    this.factors = factors;
    this.prover = prover;
    this.stepUp = stepUp;
  }

  @PostMapping("/proof")
  ModelAndView prove(
      @AuthenticationPrincipal Account actor,
      @RequestParam(defaultValue = ACCOUNT) String next,
      HttpServletRequest request,
      HttpServletResponse response) {
    String onward = Routes.isOwnPage(next) ? next : ACCOUNT;
    return switch (prover.prove(request, response, actor)) {
      case Prover.Outcome.Proven proven -> Page.redirect(onward);
      case Prover.Outcome.NothingGiven nothing ->
          again(request, actor, onward, Optional.empty(), HttpStatus.FORBIDDEN);
      case Prover.Outcome.Refused refused ->
          again(request, actor, onward, Optional.of(refused.fault()), StepUp.statusOf(refused));
    };
  }

  private ModelAndView again(
      HttpServletRequest request,
      Account actor,
      String next,
      Optional<String> fault,
      HttpStatus status) {
    return Page.of(
        "factor/step-up", stepUp.again(request, factors.standing(actor.id()), next, fault), status);
  }
}
