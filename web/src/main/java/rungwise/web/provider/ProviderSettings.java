package rungwise.web.provider;

import java.net.URI;

/**
 * The clinic's own identity provider.
 *
 * @param issuer its address, under which its settings are published
 * @param clientId by which it knows this program
 * @param clientSecret with which this program proves itself to it
 * @param claim which of its statements is the sign-in name here
 * @param name as people call it
 */
public record ProviderSettings(
    URI issuer, String clientId, String clientSecret, String claim, String name) {

  /** Without the secret, so that it reaches no log. */
  @Override
  public String toString() {
    return "ProviderSettings[" + issuer + ", " + clientId + "]";
  }
}
