package rungwise.bench;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import rungwise.app.clock.ClockSettings;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.RunningServer;
import rungwise.app.server.ServerSettings;
import rungwise.app.server.StoryClock;
import rungwise.app.server.TemporaryFolder;

/**
 * The course page of a man with 200 injections as a running server answers it: over HTTP, signed
 * in, with the entry that he was looked at written to the disk first.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class CoursePageBenchmark {

  private static final int INJECTIONS = 200;
  private static final String MAN = "Corvin Adeyemi";
  private static final int HEADINGS = 1;
  private static final Duration APART = Duration.ofHours(12);

  /** The invented past has its injections at whole hours before now. */
  private static final Duration BESIDE_THE_PAST = Duration.ofMinutes(30);

  private static final Pattern COURSE = Pattern.compile("href=\"(/courses/[0-9a-f-]+)\"[^>]*>");
  private static final Pattern ROW = Pattern.compile("<tr>");
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

  private final TemporaryFolder folder = TemporaryFolder.make();
  private final RunningServer server = start(folder);
  private final Visitor visitor = new Visitor(server.uri());
  private String course = "";

  private static RunningServer start(TemporaryFolder folder) {
    var clock = new StoryClock(InstantSource.system());
    OpenClinic clinic = OpenClinic.in(folder.path(), clock);
    DemoClinic.fill(clinic, clock, ZoneOffset.UTC);
    return RunningServer.start(
        ServerSettings.of(
                ServerSettings.LOOPBACK, 0, Optional.empty(), "Northgate Clinic", ZoneOffset.UTC)
            .withClock(new ClockSettings.Given()),
        clinic);
  }

  /** Signs in, and reports injections until there are enough. */
  @Setup
  public void tell() {
    Member nurse =
        DemoClinic.MEMBERS.stream()
            .filter(member -> member.signInName().equals("maren"))
            .findFirst()
            .orElseThrow();
    visitor.send(
        "/sign-in", Map.of("signInName", nurse.signInName(), "password", nurse.password()));
    course = courseOf(visitor.read("/"));
    ZonedDateTime at = Instant.now().atZone(ZoneOffset.UTC).minus(APART).minus(BESIDE_THE_PAST);
    for (int told = rows(); told < INJECTIONS; told++) {
      visitor.send(
          course + "/report",
          Map.of(
              "identified", "yes",
              "date", at.toLocalDate().toString(),
              "time", CLOCK.format(at),
              "grade", "3",
              "soft", "exactly",
              "exactMinutes", "45",
              "causes", "none_found"));
      at = at.minus(APART);
    }
    if (rows() < INJECTIONS) {
      throw new IllegalStateException("bug: only " + rows() + " injections are on the page");
    }
  }

  private static String courseOf(String page) {
    Matcher courses = COURSE.matcher(page.substring(0, page.indexOf(MAN)));
    String last = "";
    while (courses.find()) {
      last = courses.group(1);
    }
    return last;
  }

  private int rows() {
    String page = visitor.read(course + "/injections");
    String body = page.substring(page.indexOf("<h2>Injections"));
    return (int) ROW.matcher(body).results().count() - HEADINGS;
  }

  @Benchmark
  public String readCoursePage() {
    return visitor.read(course);
  }

  /** Ends the server and removes what it wrote. */
  @TearDown
  public void close() {
    server.close();
    folder.close();
  }
}
