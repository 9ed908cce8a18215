package rungwise.checks.browser;

import java.net.URI;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.RunningServer;
import rungwise.app.server.ServerSettings;
import rungwise.app.server.StoryClock;
import rungwise.app.server.TemporaryFolder;

/** A server on a free port with an empty folder of its own, gone once it is closed. */
public final class TestServer implements AutoCloseable {

  private static final String CLINIC = "Northgate Clinic";

  private final TemporaryFolder folder;
  private final OpenClinic clinic;
  private final StoryClock clock;
  private final RunningServer server;

  private TestServer(
      TemporaryFolder folder, OpenClinic clinic, StoryClock clock, RunningServer server) {
    this.folder = folder;
    this.clinic = clinic;
    this.clock = clock;
    this.server = server;
  }

  /** Starts one; the clinic is filled before anybody can see it. */
  public static TestServer start(Consumer<OpenClinic> fill) {
    return start(fill, /* port= */ 0, UnaryOperator.identity());
  }

  /** Starts one on a port of its own, with settings of its own. */
  public static TestServer start(
      Consumer<OpenClinic> fill, int port, UnaryOperator<ServerSettings> change) {
    TemporaryFolder folder = TemporaryFolder.make();
    var clock = new StoryClock(unhurried());
    OpenClinic clinic = OpenClinic.in(folder.path(), clock);
    fill.accept(clinic);
    ServerSettings settings =
        ServerSettings.of(
            ServerSettings.LOOPBACK, port, Optional.empty(), CLINIC, ZoneId.of("America/Chicago"));
    return new TestServer(
        folder, clinic, clock, RunningServer.start(change.apply(settings), clinic));
  }

  /**
   * Every look at the time is a millisecond later than the one before, so that a slow browser makes
   * no minute of difference to what a page says.
   */
  private static InstantSource unhurried() {
    var milliseconds =
        new AtomicLong(
            InstantSource.system().instant().truncatedTo(ChronoUnit.MINUTES).toEpochMilli());
    return () -> Instant.ofEpochMilli(milliseconds.incrementAndGet());
  }

  public OpenClinic clinic() {
    return clinic;
  }

  /** The clock that the clinic lives by. */
  public StoryClock clock() {
    return clock;
  }

  /** The address of a path that starts with a slash. */
  public URI at(String path) {
    return server.uri().resolve(path);
  }

  /** The same by the name of this machine, which passkeys need. */
  public URI byName(String path) {
    return URI.create("http://localhost:" + server.uri().getPort()).resolve(path);
  }

  @Override
  public void close() {
    server.close();
    folder.close();
  }
}
