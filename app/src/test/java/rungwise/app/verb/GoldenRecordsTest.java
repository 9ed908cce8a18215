package rungwise.app.verb;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.StoryClock;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.titration.Replay;
import rungwise.dosing.Dosing;

/**
 * What each version of the engine said of the invented clinic, kept as record files that the
 * program of that version made (versions 2 to 5 by the commit before the next version). Today's
 * engine is asked again: what an older one said otherwise is a difference by version and no fault,
 * what this very version said otherwise is one.
 *
 * <p>Version 1 is not among them: its tables were changed before anything was released, so no
 * program of today reads its folders. With a new version the one before must be here: before the
 * number is raised, {@code tools/mvn -pl app -am test -Dtest=GoldenRecordsTest
 * -Dsurefire.failIfNoSpecifiedTests=false -Drungwise.keep-golden=true} writes it.
 */
final class GoldenRecordsTest {

  private static final Path KEPT = Path.of("src/test/resources/rungwise/app/verb/golden");
  private static final int FIRST = 2;
  private static final ZoneId ZONE = ZoneId.of("America/Chicago");
  private static final Instant TOLD = Instant.parse("2026-03-02T09:00:00Z");

  /** Fewer would hardly be a record of a clinic. */
  private static final int LEAST_DOSES = 10;

  @TempDir private Path folder = Path.of("");

  static List<Integer> versions() {
    return IntStream.rangeClosed(FIRST, Integer.parseInt(Dosing.ENGINE_VERSION)).boxed().toList();
  }

  private static boolean isToday(int version) {
    return Dosing.ENGINE_VERSION.equals(Integer.toString(version));
  }

  private static Path golden(String version) {
    return KEPT.resolve("engine-" + version + ".json.gz");
  }

  private static String run(String... arguments) {
    var out = new StringWriter();
    int status =
        RungwiseCommand.commandLine()
            .setOut(new PrintWriter(out))
            .setErr(new PrintWriter(out))
            .execute(arguments);
    assertThat(status).as(out.toString()).isZero();
    return out.toString();
  }

  private void keepIfAsked(int version) throws IOException {
    if (!Boolean.getBoolean("rungwise.keep-golden") || !isToday(version)) {
      return;
    }
    Path told = Files.createDirectory(folder.resolve("told"));
    var clock = new StoryClock(InstantSource.fixed(TOLD));
    try (OpenClinic clinic = OpenClinic.in(told, clock)) {
      DemoClinic.fill(clinic, clock, ZONE);
    }
    Path file = folder.resolve("told.json");
    run("export", "--data", told.toString(), "--to", file.toString());
    try (OutputStream out =
        new GZIPOutputStream(Files.newOutputStream(golden(Dosing.ENGINE_VERSION)))) {
      Files.copy(file, out);
    }
  }

  /** The golden record of a version, taken into a folder of its own. */
  private Path takenIn(int version) throws IOException {
    Path file = folder.resolve("golden.json");
    try (var in = new GZIPInputStream(Files.newInputStream(golden(Integer.toString(version))))) {
      Files.copy(in, file);
    }
    Path data = Files.createDirectory(folder.resolve("data"));
    run("import", file.toString(), "--data", data.toString(), "--commit");
    return data;
  }

  @ParameterizedTest
  @MethodSource("versions")
  void what_an_older_engine_said_is_asked_again_and_is_no_fault(int version) throws IOException {
    keepIfAsked(version);
    Path data = takenIn(version);

    List<Replay> replays;
    try (OpenClinic clinic = OpenClinic.toRead(data, InstantSource.system())) {
      replays = clinic.replays(new ClinicTime(ZONE));
    }
    var text = new ReplayText(replays);
    System.out.printf("Engine %d. %s%n", version, text.words().lines().findFirst().orElseThrow());

    assertThat(replays).hasSizeGreaterThanOrEqualTo(LEAST_DOSES);
    assertThat(replays)
        .allSatisfy(one -> assertThat(one.stored().engine()).hasValue(Integer.toString(version)));
    assertThat(text.hasFault()).as(text.words()).isFalse();
    assertThat(replays.stream().filter(Replay::isOfAnotherVersion))
        .hasSize(isToday(version) ? 0 : replays.size());
    if (isToday(version)) {
      assertThat(replays.stream().flatMap(one -> one.differences().stream())).isEmpty();
    }
  }

  @ParameterizedTest
  @MethodSource("versions")
  void verify_says_so_and_ends_well(int version) throws IOException {
    Path data = takenIn(version);

    String said = run("verify", "--data", data.toString(), "--replay", "--zone", ZONE.getId());

    assertThat(said).contains("Other though the version is the same: 0.");
    Stream<String> entries = said.lines().filter(line -> line.startsWith("Entry "));
    assertThat(entries).allMatch(line -> line.contains("signed by engine " + version + ","));
  }
}
