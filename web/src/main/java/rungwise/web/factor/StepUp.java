package rungwise.web.factor;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.http.HttpStatus;
import org.springframework.web.servlet.HandlerInterceptor;
import rungwise.clinic.factor.FactorRule;
import rungwise.clinic.factor.FactorRule.Asked;
import rungwise.clinic.factor.FactorStanding;
import rungwise.clinic.factor.SecondFactors;
import rungwise.clinic.people.Account;
import rungwise.web.access.Access;
import rungwise.web.access.Proof;
import rungwise.web.access.PublicAddress;
import rungwise.web.access.Route;
import rungwise.web.access.Routes;
import rungwise.web.page.Assets;
import rungwise.web.page.HeldField;
import rungwise.web.page.Templates;
import rungwise.web.session.Sessions;
import rungwise.web.session.Shifts;

/**
 * Asks for the second factor before a signature, once a shift. The form that was sent is not lost:
 * the question carries all its fields, and answering it sends them on.
 */
final class StepUp implements HandlerInterceptor {

  private static final String TEMPLATE = "factor/step-up";
  private static final String NEXT = "next";
  private static final Set<String> SETTING_UP = Set.of("/account", "/proof");
  private static final Set<String> NOT_HELD = Set.of(Prover.CODE, Prover.PASSKEY);

  private final FactorRule rule;
  private final SecondFactors factors;
  private final Prover prover;
  private final Shifts shifts;
  private final PublicAddress address;
  private final Assets assets;
  private final Templates templates;

  StepUp(
      FactorRule rule,
      SecondFactors factors,
      Prover prover,
      Shifts shifts,
      PublicAddress address,
      Assets assets,
      Templates templates) {
    this.rule = rule;
    this.factors = factors;
    this.prover = prover;
    this.shifts = shifts;
    this.address = address;
    this.assets = assets;
    this.templates = templates;
  }

  @Override
  public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler)
      throws IOException {
    Proof wanted = Routes.of(request).map(this::wanted).orElse(Proof.NONE);
    Optional<Account> actor = Sessions.accountNow();
    if (wanted == Proof.NONE || actor.isEmpty()) {
      return true;
    }
    FactorStanding standing = factors.standing(actor.get().id());
    if (!standing.isSetUp()) {
      return isFreeWithout(wanted) || ask(request, response, standing, Optional.empty());
    }
    if (shifts.isGiven(request, actor.get().id())) {
      return true;
    }
    if (isRead(request)) {
      return ask(request, response, standing, Optional.empty());
    }
    return switch (prover.prove(request, response, actor.get())) {
      case Prover.Outcome.Proven proven -> true;
      case Prover.Outcome.NothingGiven nothing ->
          ask(request, response, standing, Optional.empty());
      case Prover.Outcome.Refused refused -> {
        response.setStatus(statusOf(refused).value());
        yield ask(request, response, standing, Optional.of(refused.fault()));
      }
    };
  }

  /** A clinic may ask it for every page but those on which it is set up and given. */
  private Proof wanted(Route route) {
    boolean isToEnter =
        rule.asked() == Asked.OF_EVERYBODY_WHO_ENTERS
            && !(route.access() instanceof Access.Anyone)
            && SETTING_UP.stream().noneMatch(route.path()::startsWith);
    return isToEnter ? Proof.TO_SIGN : route.proof();
  }

  private boolean isFreeWithout(Proof wanted) {
    return wanted == Proof.IF_SET_UP || rule.asked() == Asked.OF_WHO_HAS_ONE;
  }

  static HttpStatus statusOf(Prover.Outcome.Refused refused) {
    return refused.isTooOften() ? HttpStatus.TOO_MANY_REQUESTS : HttpStatus.FORBIDDEN;
  }

  private boolean ask(
      HttpServletRequest request,
      HttpServletResponse response,
      FactorStanding standing,
      Optional<String> fault)
      throws IOException {
    if (fault.isEmpty()) {
      response.setStatus(HttpStatus.FORBIDDEN.value());
    }
    StepUpPage page =
        isRead(request)
            ? again(request, standing, request.getRequestURI(), fault)
            : page(
                request, standing, fault, request.getRequestURI(), HeldField.of(request, NOT_HELD));
    templates.write(TEMPLATE, Map.of("page", page), request, response);
    return false;
  }

  /** A code is never taken from an address, which browsers keep. */
  private static boolean isRead(HttpServletRequest request) {
    return Routes.isRead(request);
  }

  /** The question again, after a wrong answer to one that no form was waiting for. */
  StepUpPage again(
      HttpServletRequest request, FactorStanding standing, String next, Optional<String> fault) {
    return page(request, standing, fault, "/proof", List.of(new HeldField(NEXT, next)));
  }

  private StepUpPage page(
      HttpServletRequest request,
      FactorStanding standing,
      Optional<String> fault,
      String action,
      List<HeldField> held) {
    boolean hasPasskey = !standing.passkeys().isEmpty() && address.ofPasskeys(request).isPresent();
    return new StepUpPage(
        action,
        held,
        standing.isSetUp(),
        standing.hasAuthenticator() || standing.recoveryCodes() > 0,
        hasPasskey ? Optional.of(assets.passkeyScript()) : Optional.empty(),
        rule.shift().toHours(),
        StepUpPage.code(fault, standing.isSetUp()),
        StepUpPage.faults(fault));
  }
}
