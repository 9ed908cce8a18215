package rungwise.app.server;

import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.function.UnaryOperator;
import rungwise.app.clock.ClockSettings;
import rungwise.app.server.DemoClinic.Member;
import rungwise.clinic.clock.ClockWatch;
import rungwise.clinic.factor.FactorRule;
import rungwise.clinic.factor.FactorRule.Asked;
import rungwise.store.RecordCheck;
import rungwise.store.journal.Inspected;
import rungwise.web.provider.ProviderSettings;
import rungwise.web.secrets.Argon2Hashing;

/** A real server on a free port, with a real folder and a clock that the test moves. */
public final class Clinic implements AutoCloseable {

  public static final Member ADMINISTRATOR = DemoClinic.MEMBERS.getFirst();

  private static final int LEAST_MEMORY_KIB = 8;

  private final TemporaryFolder folder;
  private final SettableClock clock = new SettableClock();
  private final StoryClock story = new StoryClock(clock);
  private final OpenClinic opened;
  private final RunningServer server;

  private Clinic(TemporaryFolder folder, UnaryOperator<ServerSettings> change) {
    this.folder = folder;
    opened = open(folder, story);
    server = RunningServer.start(change.apply(settings()), opened);
  }

  private Clinic() {
    this(TemporaryFolder.make(), UnaryOperator.identity());
  }

  /** At the least cost of a password, so that tests do not wait for what they do not test. */
  private static OpenClinic open(TemporaryFolder folder, InstantSource clock) {
    return OpenClinic.in(
        folder.path(), clock, new Argon2Hashing(LEAST_MEMORY_KIB, /* passes= */ 1));
  }

  /** A clock that stands still until it is moved on. */
  public static final class SettableClock implements InstantSource {

    private volatile Instant now = Instant.parse("2026-03-02T08:00:00Z");
    private volatile CountDownLatch held = new CountDownLatch(0);

    /** Whoever asks for the time waits from now on. */
    public void hold() {
      held = new CountDownLatch(1);
    }

    /** Whoever waits for the time gets it. */
    public void letGo() {
      held.countDown();
    }

    public synchronized void moveOn(Duration time) {
      now = now.plus(time);
    }

    @Override
    public Instant instant() {
      try {
        held.await();
      } catch (InterruptedException e) {
        throw new IllegalStateException(e);
      }
      return now;
    }
  }

  /** The invented clinic, told once for all tests of a process. */
  private static final class Told {
    private static final TemporaryFolder FOLDER = tell();

    private static TemporaryFolder tell() {
      TemporaryFolder folder = TemporaryFolder.make();
      var story = new StoryClock(new SettableClock());
      try (OpenClinic clinic = open(folder, story)) {
        DemoClinic.fill(clinic, story, ZoneOffset.UTC);
      }
      Runtime.getRuntime().addShutdownHook(new Thread(folder::close));
      return folder;
    }
  }

  /** Everybody, and nobody signs without a second factor. */
  public static Clinic thatAsksForSecondFactors() {
    return asking(Asked.OF_EVERYBODY_WHO_SIGNS);
  }

  /** Everybody, and nobody opens a page without a second factor. */
  public static Clinic thatLetsNobodyIn() {
    return asking(Asked.OF_EVERYBODY_WHO_ENTERS);
  }

  /** Everybody, who may sign in elsewhere too, and nobody signs without a second factor. */
  static Clinic withProvider(ProviderSettings provider) {
    var clinic =
        new Clinic(
            TemporaryFolder.make(),
            settings ->
                settings
                    .knownAs(URI.create("http://localhost:1"))
                    .withProvider(provider)
                    .withFactors(
                        new FactorRule(Asked.OF_EVERYBODY_WHO_SIGNS, FactorRule.SAMPLE_SHIFT)));
    DemoClinic.fillPeople(clinic.opened.people());
    return clinic;
  }

  private static Clinic asking(Asked asked) {
    var clinic =
        new Clinic(
            TemporaryFolder.make(),
            settings -> settings.withFactors(new FactorRule(asked, FactorRule.SAMPLE_SHIFT)));
    DemoClinic.fillPeople(clinic.opened.people());
    return clinic;
  }

  /** Everybody, and courses with a past, by a clock that is watched and not given. */
  public static Clinic thatWatchesItsClock() {
    return new Clinic(
        TemporaryFolder.copyOf(Told.FOLDER.path()),
        settings -> settings.withClock(new ClockSettings.Watched(Optional.empty())));
  }

  public static Clinic empty() {
    return new Clinic();
  }

  public static Clinic withAdministrator() {
    var clinic = new Clinic();
    DemoClinic.fillFirst(clinic.opened.people());
    return clinic;
  }

  public static Clinic withEverybody() {
    var clinic = new Clinic();
    DemoClinic.fillPeople(clinic.opened.people());
    return clinic;
  }

  /** Everybody, and courses with a past. The clock stands where the story has ended. */
  public static Clinic withDemoStory() {
    return new Clinic(TemporaryFolder.copyOf(Told.FOLDER.path()), UnaryOperator.identity());
  }

  /** Another server on a copy of this folder, after this one has been closed. */
  public Clinic startedAgain() {
    return new Clinic(TemporaryFolder.copyOf(folder.path()), UnaryOperator.identity());
  }

  private static ServerSettings settings() {
    return ServerSettings.of(
            ServerSettings.LOOPBACK, 0, Optional.empty(), "Northgate Clinic", ZoneOffset.UTC)
        .withClock(new ClockSettings.Given());
  }

  public SettableClock clock() {
    return clock;
  }

  public Path database() {
    return folder.path().resolve("rungwise.db");
  }

  public OpenClinic opened() {
    return opened;
  }

  /** The record, walked over from outside. */
  public Inspected whole() {
    return RecordCheck.of(folder.path(), Optional.empty());
  }

  /** What its server compares the clock with. */
  public ClockWatch watch() {
    return server.context().getBean(ClockWatch.class);
  }

  public RunningServer server() {
    return server;
  }

  public URI uri() {
    return server.uri();
  }

  public Visitor visitor() {
    return new Visitor(uri());
  }

  public Visitor signedIn(Member member) {
    Visitor visitor = visitor();
    visitor.signIn(member.signInName(), member.password());
    return visitor;
  }

  @Override
  public void close() {
    server.close();
    folder.close();
  }
}
