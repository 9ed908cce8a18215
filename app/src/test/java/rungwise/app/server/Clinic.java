package rungwise.app.server;

import java.net.URI;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.function.UnaryOperator;
import rungwise.app.server.DemoClinic.Member;
import rungwise.clinic.factor.FactorRule;
import rungwise.clinic.factor.FactorRule.Asked;
import rungwise.store.RecordCheck;
import rungwise.store.journal.Inspected;

/** A real server on a free port, with a real folder and a clock that the test moves. */
final class Clinic implements AutoCloseable {

  static final Member ADMINISTRATOR = DemoClinic.MEMBERS.getFirst();

  private final TemporaryFolder folder = TemporaryFolder.make();
  private final SettableClock clock = new SettableClock();
  private final StoryClock story = new StoryClock(clock);
  private final OpenClinic opened = OpenClinic.in(folder.path(), story);
  private final RunningServer server;

  private Clinic(UnaryOperator<ServerSettings> change) {
    server = RunningServer.start(change.apply(settings()), opened);
  }

  private Clinic() {
    this(UnaryOperator.identity());
  }

  /** Everybody, and nobody signs without a second factor. */
  static Clinic thatAsksForSecondFactors() {
    return asking(Asked.OF_EVERYBODY_WHO_SIGNS);
  }

  /** Everybody, and nobody opens a page without a second factor. */
  static Clinic thatLetsNobodyIn() {
    return asking(Asked.OF_EVERYBODY_WHO_ENTERS);
  }

  private static Clinic asking(Asked asked) {
    var clinic =
        new Clinic(
            settings -> settings.withFactors(new FactorRule(asked, FactorRule.SAMPLE_SHIFT)));
    DemoClinic.fillPeople(clinic.opened.people());
    return clinic;
  }

  static Clinic empty() {
    return new Clinic();
  }

  static Clinic withAdministrator() {
    var clinic = new Clinic();
    DemoClinic.fillFirst(clinic.opened.people());
    return clinic;
  }

  static Clinic withEverybody() {
    var clinic = new Clinic();
    DemoClinic.fillPeople(clinic.opened.people());
    return clinic;
  }

  /** Everybody, and courses with a past. The clock stands where the story has ended. */
  static Clinic withDemoStory() {
    var clinic = new Clinic();
    DemoClinic.fill(clinic.opened, clinic.story, ZoneOffset.UTC);
    return clinic;
  }

  private static ServerSettings settings() {
    return ServerSettings.of(
        ServerSettings.LOOPBACK, 0, Optional.empty(), "Northgate Clinic", ZoneOffset.UTC);
  }

  SettableClock clock() {
    return clock;
  }

  Path database() {
    return folder.path().resolve("rungwise.db");
  }

  OpenClinic opened() {
    return opened;
  }

  /** The record, walked over from outside. */
  Inspected whole() {
    return RecordCheck.of(folder.path(), Optional.empty());
  }

  RunningServer server() {
    return server;
  }

  URI uri() {
    return server.uri();
  }

  Visitor visitor() {
    return new Visitor(uri());
  }

  Visitor signedIn(Member member) {
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
