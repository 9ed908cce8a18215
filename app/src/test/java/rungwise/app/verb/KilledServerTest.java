package rungwise.app.verb;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.Random;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.StoryClock;
import rungwise.app.server.Visitor;
import rungwise.store.RecordCheck;
import rungwise.store.journal.Inspected;

/**
 * The server as it is started by hand, killed (SIGKILL) while two people open courses: it starts
 * again, its record is whole, and every course that a page said was opened is there.
 */
final class KilledServerTest {

  private static final int KILLS = Integer.getInteger("rungwise.server.kills", 4);
  private static final long SEED = Long.getLong("rungwise.seed", 20260302);
  private static final int LONGEST_LOAD_MILLISECONDS = 1500;

  @TempDir(factory = OnTheDisk.class)
  private static Path folder = Path.of("");

  private final Queue<String> acknowledged = new ConcurrentLinkedQueue<>();
  private final AtomicInteger numbers = new AtomicInteger();

  @Test
  @Tag("long")
  void every_course_that_a_page_said_was_opened_is_there_after_each_kill() throws Exception {
    var clock = new StoryClock(InstantSource.system());
    try (OpenClinic clinic = OpenClinic.in(folder, clock)) {
      DemoClinic.fill(clinic, clock, ZoneOffset.UTC);
    }
    var random = new Random(SEED);
    for (int kill = 0; kill < KILLS; kill++) {
      loadAndKill(random.nextInt(LONGEST_LOAD_MILLISECONDS));

      assertThat(RecordCheck.of(folder, Optional.empty()))
          .as("kill %d", kill)
          .isInstanceOf(Inspected.Whole.class);
      try (OpenClinic clinic = OpenClinic.in(folder, InstantSource.system())) {
        assertThat(clinic.courses().map(file -> file.patient().recordNumber()))
            .as("kill %d", kill)
            .containsOnlyOnceElementsOf(acknowledged);
      }
    }

    System.out.printf(
        "%d kills of the server, seed %d: %d courses acknowledged, all of them there%n",
        KILLS, SEED, acknowledged.size());
    assertThat(acknowledged).hasSizeGreaterThan(KILLS);
  }

  private void loadAndKill(int milliseconds) throws Exception {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "--enable-native-access=ALL-UNNAMED",
                "-cp",
                System.getProperty(
                    "surefire.test.class.path", System.getProperty("java.class.path", "")),
                "rungwise.app.Main",
                "serve",
                "--port",
                "0",
                "--data",
                folder.toString())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    try {
      URI server = uriOf(process);
      Visitor first = signedIn(server, 1);
      Visitor second = signedIn(server, 2);
      openOne(first); // so that at least one is acknowledged however early the kill comes
      Thread one = Thread.ofPlatform().start(() -> openUntilKilled(first));
      Thread two = Thread.ofPlatform().start(() -> openUntilKilled(second));
      TimeUnit.MILLISECONDS.sleep(milliseconds);
      process.toHandle().destroyForcibly();
      process.waitFor();
      one.join();
      two.join();
    } finally {
      process.destroyForcibly();
    }
  }

  private static URI uriOf(Process process) throws IOException {
    var lines =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    String where = "";
    for (String line = lines.readLine(); line != null; line = lines.readLine()) {
      if (line.contains(" at http")) {
        where = line.replaceFirst(".* at (http\\S+).*", "$1");
      }
      if (line.equals("ready")) {
        return URI.create(where);
      }
    }
    throw new AssertionError("the server did not start");
  }

  private static Visitor signedIn(URI server, int member) {
    var visitor = new Visitor(server);
    var who = DemoClinic.MEMBERS.get(member);
    assertThat(visitor.signIn(who.signInName(), who.password()).statusCode()).isEqualTo(303);
    return visitor;
  }

  private void openUntilKilled(Visitor visitor) {
    try {
      while (true) {
        openOne(visitor);
      }
    } catch (UncheckedIOException killed) {
      return;
    }
  }

  private void openOne(Visitor visitor) {
    String number = "K-" + numbers.incrementAndGet();
    HttpResponse<String> answer =
        visitor.fill(
            "/courses/new",
            Map.of(
                "fullName", "Man " + number,
                "birthDate", "1961-04-30",
                "recordNumber", number,
                "group", "vasculogenic",
                "preparation", "alprostadil-20",
                "barrel", "u100-1",
                "protocol", "us-vial-syringe-label version 1"));
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(303);
    acknowledged.add(number);
  }
}
