package rungwise.web.factor;

import com.webauthn4j.data.client.challenge.Challenge;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.net.URI;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpHeaders;
import rungwise.clinic.factor.PasskeyUse;
import rungwise.clinic.factor.SecondFactors;
import rungwise.clinic.people.Account;
import rungwise.web.access.PublicAddress;
import rungwise.web.secrets.CodeLimiter;
import rungwise.web.secrets.Refusal;
import rungwise.web.session.Shifts;

/** Takes the second factor out of a request, whatever else the request is for. */
final class Prover {

  /** The field with a code of the app or a recovery code. */
  static final String CODE = "secondFactorCode";

  /** The field with what a passkey answered. */
  static final String PASSKEY = "passkeyAnswer";

  private static final Logger LOG = LoggerFactory.getLogger(Prover.class);
  private static final String WRONG_CODE =
      "The code is not right, or it was used before: wait for the next code of the app, or use a"
          + " recovery code that you have not used.";
  private static final String WRONG_PASSKEY =
      "The passkey did not prove that it is you: try once more, or use a code.";

  private final SecondFactors factors;
  private final PasskeyUse passkeyUse;
  private final Passkeys passkeys;
  private final PublicAddress address;
  private final Shifts shifts;
  private final CodeLimiter limiter;

  Prover(
      SecondFactors factors,
      PasskeyUse passkeyUse,
      Passkeys passkeys,
      PublicAddress address,
      Shifts shifts,
      CodeLimiter limiter) {
    this.factors = factors;
    this.passkeyUse = passkeyUse;
    this.passkeys = passkeys;
    this.address = address;
    this.shifts = shifts;
    this.limiter = limiter;
  }

  /** What came of it. */
  sealed interface Outcome {

    /** It was given, and counts from now on. */
    record Proven() implements Outcome {}

    /** The request holds none. */
    record NothingGiven() implements Outcome {}

    /** It holds one that is not right, or it came too often. */
    record Refused(String fault, boolean isTooOften) implements Outcome {}
  }

  Outcome prove(HttpServletRequest request, HttpServletResponse response, Account actor) {
    String code = field(request, CODE);
    String answer = field(request, PASSKEY);
    if (code.isBlank() && answer.isBlank()) {
      return new Outcome.NothingGiven();
    }
    Optional<Refusal> refusal = limiter.tryOnce(actor.id().text());
    if (refusal.isPresent()) {
      response.setHeader(HttpHeaders.RETRY_AFTER, refusal.get().seconds());
      return new Outcome.Refused(refusal.get().words(), /* isTooOften= */ true);
    }
    boolean isProven =
        answer.isBlank()
            ? factors.isProvenBy(actor, code.strip())
            : isProvenByPasskey(request, actor, answer);
    if (!isProven) {
      LOG.info("Second factor of {} refused", actor.id());
      return new Outcome.Refused(
          answer.isBlank() ? WRONG_CODE : WRONG_PASSKEY, /* isTooOften= */ false);
    }
    limiter.prove(actor.id().text());
    shifts.note(request, response, actor.id());
    LOG.info("Second factor given by {}", actor.id());
    return new Outcome.Proven();
  }

  private static String field(HttpServletRequest request, String name) {
    return Optional.ofNullable(request.getParameter(name)).orElse("");
  }

  private boolean isProvenByPasskey(HttpServletRequest request, Account actor, String answer) {
    return verified(request, answer)
        .filter(said -> passkeyUse.isProvenBy(actor, said.id(), said.signCount()))
        .isPresent();
  }

  /** The known passkey that has answered what this session was asked. */
  Optional<Passkeys.Answered> verified(HttpServletRequest request, String answer) {
    Optional<URI> here = address.ofPasskeys(request);
    Optional<Challenge> asked = Challenges.take(request);
    if (here.isEmpty() || asked.isEmpty()) {
      return Optional.empty();
    }
    return passkeys
        .claimed(answer)
        .flatMap(passkeyUse::find)
        .flatMap(known -> passkeys.verify(here.get(), asked.get(), known, answer));
  }
}
