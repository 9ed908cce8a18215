package rungwise.web.factor;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.factor.FactorSecret;
import rungwise.clinic.factor.SecondFactors;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.OneTimeCode;
import rungwise.quantities.Reading;
import rungwise.web.access.ClinicSign;
import rungwise.web.page.Page;
import rungwise.web.secrets.CodeLimiter;
import rungwise.web.secrets.Refusal;
import rungwise.web.session.Sessions;
import rungwise.web.session.Shifts;

/** One's own account: the second factor and where one is signed in. */
@Controller
final class AccountController {

  static final String NOTICE = "notice";
  static final String FAULT = "fault";

  private static final Logger LOG = LoggerFactory.getLogger(AccountController.class);
  private static final String ACCOUNT = "/account";
  private static final String AUTHENTICATOR = "factor/authenticator";
  private static final String CODES = "recoveryCodes";
  private static final String PENDING = AccountController.class.getName() + ".pending";

  private final SecondFactors factors;
  private final Sessions sessions;
  private final Shifts shifts;
  private final CodeLimiter limiter;
  private final ClinicSign clinic;
  private final OwnPages pages;

  AccountController(
      SecondFactors factors,
      Sessions sessions,
      Shifts shifts,
      CodeLimiter limiter,
      ClinicSign clinic,
      OwnPages pages) {
    this.factors = factors;
    this.sessions = sessions;
    this.shifts = shifts;
    this.limiter = limiter;
    this.clinic = clinic;
    this.pages = pages;
  }

  @GetMapping("/account")
  ModelAndView show(
      @AuthenticationPrincipal Account actor, HttpServletRequest request, Model carried) {
    return Page.of(
        "factor/account",
        pages.account(
            actor, request, text(carried, NOTICE), text(carried, FAULT), codesOf(carried)));
  }

  private static String text(Model carried, String name) {
    return Optional.ofNullable(carried.getAttribute(name)).orElse("").toString();
  }

  private static List<String> codesOf(Model carried) {
    return carried.getAttribute(CODES) instanceof List<?> codes
        ? codes.stream().map(String::valueOf).toList()
        : List.of();
  }

  /** Carries recovery codes over one redirect, so that they are seen once. */
  static void carry(List<OneTimeCode> codes, RedirectAttributes carried) {
    carried.addFlashAttribute(CODES, codes.stream().map(OneTimeCode::text).toList());
  }

  @GetMapping("/account/authenticator")
  ModelAndView offer(@AuthenticationPrincipal Account actor, HttpServletRequest request) {
    return Page.of(AUTHENTICATOR, page(actor, pending(request), Optional.empty()));
  }

  private AuthenticatorPage page(Account actor, FactorSecret secret, Optional<String> fault) {
    return AuthenticatorPage.of(secret, secret.address(clinic.name(), actor.signInName()), fault);
  }

  /** The secret that this session was shown; a reload shows the same. */
  private FactorSecret pending(HttpServletRequest request) {
    HttpSession session = request.getSession(true);
    if (session.getAttribute(PENDING) instanceof FactorSecret shown) {
      return shown;
    }
    FactorSecret secret = factors.newSecret();
    session.setAttribute(PENDING, secret);
    return secret;
  }

  @PostMapping("/account/authenticator")
  ModelAndView setUp(
      @AuthenticationPrincipal Account actor,
      @RequestParam(defaultValue = "") String code,
      HttpServletRequest request,
      HttpServletResponse response,
      RedirectAttributes carried) {
    FactorSecret secret = pending(request);
    Optional<Refusal> refusal = limiter.tryOnce(actor.id().text());
    if (refusal.isPresent()) {
      response.setHeader(HttpHeaders.RETRY_AFTER, refusal.get().seconds());
      return Page.of(
          AUTHENTICATOR,
          page(actor, secret, Optional.of(refusal.get().words())),
          HttpStatus.TOO_MANY_REQUESTS);
    }
    return switch (factors.setUp(actor, secret, code.strip())) {
      case Reading.Read<List<OneTimeCode>> read -> {
        limiter.prove(actor.id().text());
        request.getSession(true).removeAttribute(PENDING);
        shifts.note(request, response, actor.id());
        LOG.info("Authenticator set up by {}", actor.id());
        carried.addFlashAttribute(NOTICE, "The authenticator app is set up.");
        carry(read.value(), carried);
        yield Page.redirect(ACCOUNT);
      }
      case Reading.Refused<List<OneTimeCode>> refused ->
          Page.refused(
              AUTHENTICATOR, page(actor, secret, Optional.of(refused.faults().getFirst())));
    };
  }

  @PostMapping("/account/recovery-codes")
  ModelAndView newCodes(@AuthenticationPrincipal Account actor, RedirectAttributes carried) {
    if (factors.standing(actor.id()).isSetUp()) {
      carry(factors.newRecoveryCodes(actor), carried);
      LOG.info("Recovery codes made by {}", actor.id());
    } else {
      carried.addFlashAttribute(FAULT, "Set up an authenticator app or a passkey first.");
    }
    return Page.redirect(ACCOUNT);
  }

  @PostMapping("/account/sessions/{handle}/end")
  ModelAndView endSession(
      @AuthenticationPrincipal Account actor,
      @PathVariable String handle,
      RedirectAttributes carried) {
    int ended =
        sessions.end(Sessions.isOf(actor.id()).and(session -> session.handle().equals(handle)));
    carried.addFlashAttribute(
        NOTICE, ended == 0 ? "It had ended already." : "That place is signed out.");
    return Page.redirect(ACCOUNT);
  }
}
