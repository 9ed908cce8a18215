package rungwise.app.verb;

import java.net.URI;
import java.net.URISyntaxException;
import java.util.Set;
import rungwise.app.server.WrongUse;

/** Addresses that others use: of this server, of a provider. */
final class PublicAddresses {

  private static final Set<String> THIS_MACHINE = Set.of("localhost", "127.0.0.1");

  private PublicAddresses() {}

  /**
   * An address as typed: https, or http on this machine; without a path unless it may have one.
   *
   * @throws WrongUse if it is another
   */
  static URI read(String option, String text, boolean mayHavePath) {
    try {
      var address = new URI(text);
      String host = address.getHost();
      boolean isSafe =
          "https".equals(address.getScheme())
              || ("http".equals(address.getScheme())
                  && host != null
                  && THIS_MACHINE.contains(host));
      boolean isPlain =
          address.getRawQuery() == null
              && address.getRawFragment() == null
              && address.getRawUserInfo() == null;
      boolean hasPath = address.getRawPath() != null && !address.getRawPath().isEmpty();
      if (host != null && isSafe && isPlain && (mayHavePath || !hasPath)) {
        return address;
      }
    } catch (URISyntaxException notAnAddress) {
      throw wrong(option, text, notAnAddress);
    }
    throw wrong(option, text, new IllegalArgumentException("another form"));
  }

  private static WrongUse wrong(String option, String text, Exception cause) {
    return new WrongUse(
        option
            + " "
            + text
            + " cannot be used: give https and the host, such as https://clinic.example; http only"
            + " for localhost.",
        cause);
  }
}
