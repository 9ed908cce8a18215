package rungwise.web.access;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Optional;

/** The ways to sign in besides name and password. */
public interface OtherWays {

  /**
   * What the sign-in page offers.
   *
   * @param passkeyScript address of the script that asks for a passkey; empty if none works here
   * @param provider name of the clinic's own identity provider; empty if there is none
   */
  record Offered(Optional<String> passkeyScript, Optional<String> provider) {}

  Offered at(HttpServletRequest request);
}
