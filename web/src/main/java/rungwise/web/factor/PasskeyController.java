package rungwise.web.factor;

import com.webauthn4j.data.client.challenge.Challenge;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.factor.Passkey;
import rungwise.clinic.factor.PasskeyUse;
import rungwise.clinic.factor.SecondFactors;
import rungwise.clinic.people.Account;
import rungwise.quantities.Reading;
import rungwise.web.access.ClinicSign;
import rungwise.web.access.PublicAddress;
import rungwise.web.access.Routes;
import rungwise.web.page.Page;
import rungwise.web.secrets.KnownDevices;
import rungwise.web.secrets.Refusal;
import rungwise.web.secrets.TryLimiter;
import rungwise.web.session.Sessions;
import rungwise.web.session.Shifts;

/** Adding and removing passkeys, and signing in with one. */
@Controller
final class PasskeyController {

  private static final Logger LOG = LoggerFactory.getLogger(PasskeyController.class);
  private static final String ACCOUNT = "/account";
  private static final String NOT_ADDED =
      "The passkey was not added: the browser's answer was not right. Try once more.";

  private final SecondFactors factors;
  private final PasskeyUse passkeyUse;
  private final Passkeys passkeys;
  private final Prover prover;
  private final PublicAddress address;
  private final ClinicSign clinic;
  private final Sessions sessions;
  private final Shifts shifts;
  private final TryLimiter limiter;
  private final KnownDevices devices;

  @SuppressWarnings("TooManyParameters") // one for each thing that a passkey touches
  PasskeyController(
      SecondFactors factors,
      PasskeyUse passkeyUse,
      Passkeys passkeys,
      Prover prover,
      PublicAddress address,
      ClinicSign clinic,
      Sessions sessions,
      Shifts shifts,
      TryLimiter limiter,
      KnownDevices devices) {
    this.factors = factors;
    this.passkeyUse = passkeyUse;
    this.passkeys = passkeys;
    this.prover = prover;
    this.address = address;
    this.clinic = clinic;
    this.sessions = sessions;
    this.shifts = shifts;
    this.limiter = limiter;
    this.devices = devices;
  }

  @PostMapping("/account/passkeys/questions")
  void askForNew(
      @AuthenticationPrincipal Account actor,
      HttpServletRequest request,
      HttpServletResponse response)
      throws IOException {
    send(
        request,
        response,
        (here, challenge) ->
            passkeys.askForNew(here, clinic.name(), actor, passkeyUse.of(actor.id()), challenge));
  }

  @PostMapping("/proof/questions")
  void askForOwn(
      @AuthenticationPrincipal Account actor,
      HttpServletRequest request,
      HttpServletResponse response)
      throws IOException {
    List<Passkey> own = passkeyUse.of(actor.id());
    send(request, response, (here, challenge) -> passkeys.askForKnown(here, own, challenge));
  }

  @PostMapping("/sign-in/passkey/questions")
  void askForAny(HttpServletRequest request, HttpServletResponse response) throws IOException {
    send(request, response, (here, challenge) -> passkeys.askForKnown(here, List.of(), challenge));
  }

  private void send(
      HttpServletRequest request,
      HttpServletResponse response,
      BiFunction<URI, Challenge, String> question)
      throws IOException {
    Optional<URI> here = address.ofPasskeys(request);
    if (here.isEmpty()) {
      response.sendError(HttpStatus.NOT_FOUND.value());
      return;
    }
    String json = question.apply(here.get(), Challenges.ask(request));
    response.setContentType("application/json;charset=UTF-8");
    response.getOutputStream().write(json.getBytes(StandardCharsets.UTF_8));
  }

  @PostMapping("/account/passkeys")
  ModelAndView add(
      @AuthenticationPrincipal Account actor,
      @RequestParam(defaultValue = "") String answer,
      @RequestParam(defaultValue = "") String passkeyName,
      HttpServletRequest request,
      HttpServletResponse response,
      RedirectAttributes carried) {
    Optional<Challenge> asked = Challenges.take(request);
    Optional<Passkeys.Registered> registered =
        address
            .ofPasskeys(request)
            .flatMap(here -> asked.flatMap(what -> passkeys.register(here, what, answer)));
    Reading<Passkey> added =
        registered
            .map(
                made ->
                    passkeyUse.add(
                        actor, made.id(), passkeyName, made.publicPart(), made.signCount()))
            .orElseGet(() -> Reading.refused(NOT_ADDED));
    if (added instanceof Reading.Refused<Passkey> refused) {
      carried.addFlashAttribute(AccountController.FAULT, refused.faults().getFirst());
      return Page.redirect(ACCOUNT);
    }
    LOG.info("Passkey added by {}", actor.id());
    shifts.note(request, response, actor.id());
    carried.addFlashAttribute(AccountController.NOTICE, "The passkey is added.");
    if (factors.standing(actor.id()).recoveryCodes() == 0) {
      AccountController.carry(factors.newRecoveryCodes(actor), carried);
    }
    return Page.redirect(ACCOUNT);
  }

  @PostMapping("/account/passkeys/remove")
  ModelAndView remove(
      @AuthenticationPrincipal Account actor,
      @RequestParam(defaultValue = "") String passkey,
      RedirectAttributes carried) {
    passkeyUse.remove(actor, passkey);
    LOG.info("Passkey removed by {}", actor.id());
    carried.addFlashAttribute(AccountController.NOTICE, "The passkey is removed.");
    return Page.redirect(ACCOUNT);
  }

  /** A passkey verifies its holder by itself, and so stands for both proofs. */
  @PostMapping("/sign-in/passkey")
  ModelAndView signIn(
      @RequestParam(defaultValue = "") String passkeyAnswer,
      @RequestParam(defaultValue = "/") String next,
      HttpServletRequest request,
      HttpServletResponse response) {
    Optional<Refusal> refusal = limiter.tryPasskey(request.getRemoteAddr());
    Optional<Account> account =
        refusal.isPresent()
            ? Optional.empty()
            : prover
                .verified(request, passkeyAnswer)
                .flatMap(said -> passkeyUse.signIn(said.id(), said.signCount()));
    if (account.isEmpty()) {
      LOG.info("Sign-in by passkey refused");
      return Page.redirect("/sign-in?refused");
    }
    String name = account.get().signInName().text();
    limiter.provePasskey(request.getRemoteAddr(), name);
    devices.remember(request, response, name);
    sessions.open(request, account.get());
    shifts.note(request, response, account.get().id());
    LOG.info("Signed in by passkey {}", account.get().id());
    return Page.redirect(Routes.isOwnPage(next) ? next : "/");
  }
}
