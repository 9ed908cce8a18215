package rungwise.app.server;

import java.net.InetAddress;
import java.net.URI;
import java.net.UnknownHostException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Optional;
import rungwise.app.clock.ClockSettings;
import rungwise.clinic.factor.FactorRule;
import rungwise.clinic.factor.FactorRule.Asked;
import rungwise.web.access.ClinicSign;
import rungwise.web.access.PublicAddress;
import rungwise.web.provider.ProviderSettings;
import rungwise.web.session.SessionLimits;

/**
 * Where and how a server answers.
 *
 * @param port 0 takes any free one
 * @param publicAddress by which people know it
 * @param provider the clinic's own identity provider, if there is one
 * @param clock how the clock is judged
 */
public record ServerSettings(
    InetAddress address,
    int port,
    Optional<Tls> tls,
    ClinicSign clinic,
    SessionLimits sessions,
    FactorRule factors,
    PublicAddress publicAddress,
    Optional<ProviderSettings> provider,
    ClockSettings clock) {

  public static final String LOOPBACK = "127.0.0.1";
  public static final String USUAL_PORT = "8717";

  private static final int LAST_PORT = 65_535;

  /** PEM files of a certificate with its chain, and of its private key. */
  public record Tls(Path certificate, Path key) {}

  /**
   * Settings as a person gave them.
   *
   * @throws WrongUse if one of them cannot be
   */
  public static ServerSettings of(
      String address, int port, Optional<Tls> tls, String clinic, ZoneId zone) {
    if (port < 0 || port > LAST_PORT) {
      throw new WrongUse("--port " + port + " is not a port: use 0 to " + LAST_PORT + ".");
    }
    return new ServerSettings(
        addressOf(address),
        port,
        tls,
        signOf(clinic, zone),
        SessionLimits.USUAL,
        new FactorRule(Asked.OF_WHO_HAS_ONE, FactorRule.SAMPLE_SHIFT),
        new PublicAddress(Optional.empty()),
        Optional.empty(),
        new ClockSettings.Watched(Optional.empty()));
  }

  private static InetAddress addressOf(String text) {
    try {
      return InetAddress.getByName(text);
    } catch (UnknownHostException e) {
      throw new WrongUse("--address " + text + " is not known: use an address of this machine.", e);
    }
  }

  private static ClinicSign signOf(String clinic, ZoneId zone) {
    if (!ClinicSign.isAcceptedName(clinic)) {
      throw new WrongUse(
          "--clinic \"" + clinic + "\" cannot be shown: use 1 to 80 characters on one line.");
    }
    return new ClinicSign(clinic, zone);
  }

  /** The same, with other limits for being signed in. */
  public ServerSettings withSessions(SessionLimits limits) {
    return new ServerSettings(
        address, port, tls, clinic, limits, factors, publicAddress, provider, clock);
  }

  /** The same, with another rule for the second factor. */
  public ServerSettings withFactors(FactorRule rule) {
    return new ServerSettings(
        address, port, tls, clinic, sessions, rule, publicAddress, provider, clock);
  }

  /** The same, known to people by an address. */
  public ServerSettings knownAs(URI known) {
    return new ServerSettings(
        address,
        port,
        tls,
        clinic,
        sessions,
        factors,
        new PublicAddress(Optional.of(known)),
        provider,
        clock);
  }

  /**
   * The same, with the clinic's own identity provider.
   *
   * @throws WrongUse if the address to which it sends people back is not known
   */
  public ServerSettings withProvider(ProviderSettings given) {
    if (publicAddress.given().isEmpty()) {
      throw new WrongUse(
          "--oidc-issuer needs --public-address: the provider sends people back to it.");
    }
    return new ServerSettings(
        address, port, tls, clinic, sessions, factors, publicAddress, Optional.of(given), clock);
  }

  /** The same, with another way to judge the clock. */
  public ServerSettings withClock(ClockSettings other) {
    return new ServerSettings(
        address, port, tls, clinic, sessions, factors, publicAddress, provider, other);
  }

  /** Whether others on the network could read what is sent. */
  public boolean isOpenToOthersInClear() {
    return tls.isEmpty() && !address.isLoopbackAddress();
  }
}
