package rungwise.web.access;

import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import java.util.Optional;

/**
 * The address by which people know this server. Passkeys are bound to it, and an identity provider
 * sends people back to it, so that neither believes what a request says of itself.
 *
 * @param given scheme, host and port, without a path; empty on a machine of one's own
 */
public record PublicAddress(Optional<URI> given) {

  private static final String LOCALHOST = "localhost";

  /** The address for a request, if passkeys work where it was sent. */
  public Optional<URI> ofPasskeys(HttpServletRequest request) {
    return given.isPresent()
        ? given.filter(uri -> request.getServerName().equalsIgnoreCase(uri.getHost()))
        : local(request);
  }

  private static Optional<URI> local(HttpServletRequest request) {
    return request.getServerName().equals(LOCALHOST)
        ? Optional.of(
            URI.create(request.getScheme() + "://" + LOCALHOST + ":" + request.getServerPort()))
        : Optional.empty();
  }

  /** It, or that of the request where none was given. */
  public URI orOf(HttpServletRequest request) {
    return given.orElseGet(
        () ->
            URI.create(
                request.getScheme()
                    + "://"
                    + request.getServerName()
                    + ":"
                    + request.getServerPort()));
  }
}
