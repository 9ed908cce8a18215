package rungwise.checks.browser;

import java.net.URI;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import rungwise.app.clock.ClockSettings;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.RunningServer;
import rungwise.app.server.ServerSettings;
import rungwise.app.server.StoryClock;
import rungwise.app.server.TemporaryFolder;
import rungwise.web.secrets.Argon2Hashing;

/** A server on a free port with an empty folder of its own, gone once it is closed. */
public final class TestServer implements AutoCloseable {

  private static final String CLINIC = "Northgate Clinic";
  private static final ZoneId ZONE = ZoneId.of("America/Chicago");
  private static final int LEAST_MEMORY_KIB = 8;

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

  /** Starts one with everybody and the invented past, which is told once for all of a process. */
  public static TestServer withStory() {
    return withStory(clinic -> {}, UnaryOperator.identity());
  }

  /** The same with more in it, and with settings of its own. */
  public static TestServer withStory(
      Consumer<OpenClinic> more, UnaryOperator<ServerSettings> change) {
    return start(TemporaryFolder.copyOf(Told.FOLDER.path()), Told.NOW, more, /* port= */ 0, change);
  }

  /** The invented clinic, and when it was told. */
  private static final class Told {
    private static final Instant NOW = thisMinute();
    private static final TemporaryFolder FOLDER = tell();

    private static TemporaryFolder tell() {
      TemporaryFolder folder = TemporaryFolder.make();
      var clock = new StoryClock(InstantSource.fixed(NOW));
      try (OpenClinic clinic = open(folder, clock)) {
        DemoClinic.fill(clinic, clock, ZONE);
      }
      Runtime.getRuntime().addShutdownHook(new Thread(folder::close));
      return folder;
    }
  }

  private static Instant thisMinute() {
    return InstantSource.system().instant().truncatedTo(ChronoUnit.MINUTES);
  }

  /** At the least cost of a password, so that tests do not wait for what they do not test. */
  private static OpenClinic open(TemporaryFolder folder, InstantSource clock) {
    return OpenClinic.in(
        folder.path(), clock, new Argon2Hashing(LEAST_MEMORY_KIB, /* passes= */ 1));
  }

  /** Starts one; the clinic is filled before anybody can see it. */
  public static TestServer start(Consumer<OpenClinic> fill) {
    return start(fill, /* port= */ 0, UnaryOperator.identity());
  }

  /** Starts one on a port of its own, with settings of its own. */
  public static TestServer start(
      Consumer<OpenClinic> fill, int port, UnaryOperator<ServerSettings> change) {
    return start(TemporaryFolder.make(), thisMinute(), fill, port, change);
  }

  private static TestServer start(
      TemporaryFolder folder,
      Instant from,
      Consumer<OpenClinic> fill,
      int port,
      UnaryOperator<ServerSettings> change) {
    var clock = new StoryClock(unhurried(from));
    OpenClinic clinic = open(folder, clock);
    fill.accept(clinic);
    ServerSettings settings =
        ServerSettings.of(ServerSettings.LOOPBACK, port, Optional.empty(), CLINIC, ZONE)
            .withClock(new ClockSettings.Given());
    return new TestServer(
        folder, clinic, clock, RunningServer.start(change.apply(settings), clinic));
  }

  /**
   * Every look at the time is a millisecond later than the one before, so that a slow browser makes
   * no minute of difference to what a page says.
   */
  private static InstantSource unhurried(Instant from) {
    var milliseconds = new AtomicLong(from.toEpochMilli());
    return () -> Instant.ofEpochMilli(milliseconds.incrementAndGet());
  }

  public OpenClinic clinic() {
    return clinic;
  }

  /** The file that another program may change. */
  public Path database() {
    return folder.path().resolve("rungwise.db");
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
