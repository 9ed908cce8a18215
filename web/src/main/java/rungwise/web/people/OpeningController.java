package rungwise.web.people;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.People;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.people.OpeningPage.Typed;
import rungwise.web.secrets.KnownDevices;
import rungwise.web.secrets.Refusal;
import rungwise.web.secrets.TryLimiter;
import rungwise.web.session.Endings;

/** Opening an account by a one-time code: the first one of all, or one that was made for you. */
@Controller
final class OpeningController {

  private static final Logger LOG = LoggerFactory.getLogger(OpeningController.class);

  private static final String FIRST_START = "people/first-start";
  private static final String WELCOME = "people/welcome";
  private static final String SIGN_IN = "/sign-in";

  private final People people;
  private final Endings endings;
  private final TryLimiter limiter;
  private final KnownDevices devices;

  OpeningController(People people, Endings endings, TryLimiter limiter, KnownDevices devices) {
    this.people = people;
    this.endings = endings;
    this.limiter = limiter;
    this.devices = devices;
  }

  @GetMapping("/first-start")
  ModelAndView firstStart() {
    return isOpen()
        ? Page.redirect(SIGN_IN)
        : Page.of(FIRST_START, OpeningPage.firstStart(Typed.NOTHING, Faults.NONE));
  }

  @PostMapping("/first-start")
  ModelAndView makeFirst(
      @RequestParam(defaultValue = "") String code,
      @RequestParam(defaultValue = "") String signInName,
      @RequestParam(defaultValue = "") String fullName,
      @RequestParam(defaultValue = "") String password,
      HttpServletRequest request) {
    if (isOpen()) {
      return Page.redirect(SIGN_IN);
    }
    var typed = new Typed(code, normal(signInName), fullName);
    Optional<Refusal> refusal = limiter.tryCode(request.getRemoteAddr(), FIRST_START);
    if (refusal.isPresent()) {
      return Page.of(
          FIRST_START,
          OpeningPage.firstStart(typed, tooOften(refusal.get())),
          HttpStatus.TOO_MANY_REQUESTS);
    }
    Reading<Account> made =
        people.accept(code, typed.signInName(), Optional.of(fullName), password);
    return switch (made) {
      case Reading.Read<Account> read -> opened(read.value());
      case Reading.Refused<Account> refused ->
          Page.refused(FIRST_START, OpeningPage.firstStart(typed, Faults.of(refused)));
    };
  }

  @GetMapping("/welcome")
  ModelAndView welcome() {
    return isOpen()
        ? Page.of(WELCOME, OpeningPage.welcome(Typed.NOTHING, Faults.NONE))
        : Page.redirect("/first-start");
  }

  @PostMapping("/welcome")
  ModelAndView accept(
      @RequestParam(defaultValue = "") String code,
      @RequestParam(defaultValue = "") String signInName,
      @RequestParam(defaultValue = "") String password,
      HttpServletRequest request,
      HttpServletResponse response) {
    if (!isOpen()) {
      return Page.redirect("/first-start");
    }
    var typed = new Typed(code, normal(signInName), "");
    Optional<Refusal> refusal = limiter.tryCode(request.getRemoteAddr(), typed.signInName());
    if (refusal.isPresent()) {
      return Page.of(
          WELCOME,
          OpeningPage.welcome(typed, tooOften(refusal.get())),
          HttpStatus.TOO_MANY_REQUESTS);
    }
    Reading<Account> accepted = people.accept(code, typed.signInName(), Optional.empty(), password);
    return switch (accepted) {
      case Reading.Read<Account> read -> {
        // Whoever had the code is no stranger here, however often strangers try the name.
        devices.remember(request, response, typed.signInName());
        yield opened(read.value());
      }
      case Reading.Refused<Account> refused ->
          Page.refused(WELCOME, OpeningPage.welcome(typed, Faults.of(refused)));
    };
  }

  private boolean isOpen() {
    return !people.list().isEmpty();
  }

  private static String normal(String signInName) {
    return signInName.strip().toLowerCase(Locale.ROOT);
  }

  private ModelAndView opened(Account account) {
    endings.endAllOf(account.id());
    LOG.info("Password set by {}", account.id());
    return Page.redirect(SIGN_IN + "?opened");
  }

  private static Faults tooOften(Refusal refusal) {
    return new Faults(List.of(Fault.ofForm(refusal.words())));
  }
}
