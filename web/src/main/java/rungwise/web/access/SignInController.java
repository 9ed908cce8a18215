package rungwise.web.access;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.People;
import rungwise.quantities.Fault;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.secrets.KnownDevices;
import rungwise.web.secrets.Refusal;
import rungwise.web.secrets.TryLimiter;
import rungwise.web.session.Sessions;
import rungwise.web.session.Shifts;

/** Signing in and out. */
@Controller
final class SignInController {

  private static final Logger LOG = LoggerFactory.getLogger(SignInController.class);

  private static final String TEMPLATE = "access/sign-in";
  private static final String TODAY = "/";
  private static final Faults WRONG =
      new Faults(
          List.of(
              Fault.ofForm(
                  "The sign-in name and the password do not belong together. Check both. If the"
                      + " password is lost, an administrator gives you a code for a new one.")));

  private static final Faults NO_ACCOUNT =
      new Faults(
          List.of(
              Fault.ofForm(
                  "That did not open an account here. Sign in with your name and password, or ask"
                      + " your administrator.")));

  private final People people;
  private final Sessions sessions;
  private final Shifts shifts;
  private final TryLimiter limiter;
  private final KnownDevices devices;
  private final OtherWays otherWays;

  SignInController(
      People people,
      Sessions sessions,
      Shifts shifts,
      TryLimiter limiter,
      KnownDevices devices,
      OtherWays otherWays) {
    this.people = people;
    this.sessions = sessions;
    this.shifts = shifts;
    this.limiter = limiter;
    this.devices = devices;
    this.otherWays = otherWays;
  }

  @GetMapping("/sign-in")
  ModelAndView show(
      @RequestParam(defaultValue = TODAY) String next,
      @RequestParam Optional<String> ended,
      @RequestParam Optional<String> opened,
      @RequestParam Optional<String> refused,
      HttpServletRequest request) {
    if (Sessions.accountNow().isPresent()) {
      return Page.redirect(safe(next));
    }
    if (people.list().isEmpty()) {
      return Page.redirect("/first-start");
    }
    String notice =
        ended.isPresent()
            ? "You were signed out, because nothing was done here for a while or the account was"
                + " changed. Sign in to go on."
            : opened.isPresent() ? "Your password is set. Sign in with it." : "";
    Faults faults = refused.isPresent() ? NO_ACCOUNT : Faults.NONE;
    return Page.of(TEMPLATE, page("", next, notice, faults, request));
  }

  @PostMapping("/sign-in")
  ModelAndView signIn(
      @RequestParam(defaultValue = "") String signInName,
      @RequestParam(defaultValue = "") String password,
      @RequestParam(defaultValue = TODAY) String next,
      HttpServletRequest request,
      HttpServletResponse response) {
    String name = signInName.strip().toLowerCase(Locale.ROOT);
    Optional<String> device = devices.find(request, name);
    Optional<Refusal> refusal = limiter.tryPassword(request.getRemoteAddr(), name, device);
    if (refusal.isPresent()) {
      LOG.info("Sign-in refused: {}", refusal.get().because());
      response.setHeader(HttpHeaders.RETRY_AFTER, refusal.get().seconds());
      Faults faults = new Faults(List.of(Fault.ofForm(refusal.get().words())));
      return Page.of(TEMPLATE, page(name, next, "", faults, request), HttpStatus.TOO_MANY_REQUESTS);
    }
    Optional<Account> account = people.authenticate(name, password);
    if (account.isEmpty()) {
      LOG.info("Sign-in refused");
      return Page.refused(TEMPLATE, page(name, next, "", WRONG, request));
    }
    limiter.prove(request.getRemoteAddr(), name, device);
    devices.remember(request, response, name);
    sessions.open(request, account.get());
    LOG.info("Signed in {}", account.get().id());
    return Page.redirect(safe(next));
  }

  private SignInPage page(
      String name, String next, String notice, Faults faults, HttpServletRequest request) {
    return SignInPage.of(name, safe(next), notice, faults, otherWays.at(request));
  }

  @PostMapping("/sign-out")
  ModelAndView signOut(HttpServletRequest request) {
    sessions.close(request);
    shifts.end(request);
    return Page.redirect("/sign-in");
  }

  /** Where to go after signing in: one of our own pages, or Today. */
  private static String safe(String next) {
    return Routes.isOwnPage(next) ? next : TODAY;
  }
}
