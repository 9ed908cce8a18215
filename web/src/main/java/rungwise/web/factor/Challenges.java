package rungwise.web.factor;

import com.webauthn4j.data.client.challenge.Challenge;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpSession;
import java.util.Optional;

/** The one question that a session's browser was asked last; its answer counts once. */
final class Challenges {

  private static final String IN_SESSION = Challenges.class.getName();

  private Challenges() {}

  static Challenge ask(HttpServletRequest request) {
    Challenge challenge = Passkeys.newChallenge();
    request.getSession(true).setAttribute(IN_SESSION, challenge);
    return challenge;
  }

  /** What was asked; from now on nothing is. */
  static Optional<Challenge> take(HttpServletRequest request) {
    HttpSession session = request.getSession(false);
    if (session == null || !(session.getAttribute(IN_SESSION) instanceof Challenge asked)) {
      return Optional.empty();
    }
    session.removeAttribute(IN_SESSION);
    return Optional.of(asked);
  }
}
