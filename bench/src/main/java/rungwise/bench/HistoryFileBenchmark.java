package rungwise.bench;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.zip.GZIPOutputStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import rungwise.dosing.fit.Courses;
import rungwise.files.history.CourseFile;
import rungwise.files.history.HistoryFile;
import rungwise.files.history.PreparationChoice;

/** A packed history file of 100,000 men with 8 injections each, once, in milliseconds. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class HistoryFileBenchmark {

  private static final int MEN = 100_000;
  private static final int INJECTIONS = 8;
  private static final int MARKS = 10;
  private static final int THOUSAND = 1000;
  private static final int LEAST_POTENCY = 850;
  private static final int HIGHEST_GRADE = 4;
  private static final int MINUTES = 200;

  private Path file = Path.of("not.there");

  /** Volumes at a mark of 0.05 mL, potencies of three places, minutes of one. */
  @Setup
  public void write() throws IOException {
    file = Files.createTempFile("history", ".csv.gz");
    var random = new SplittableRandom(1);
    try (var out =
        new BufferedWriter(
            new OutputStreamWriter(
                new GZIPOutputStream(Files.newOutputStream(file)), StandardCharsets.UTF_8))) {
      out.write("patient,group,injection,volume_ml,potency,strength,grade,duration_min,");
      out.write("duration_status,duration_upper_min\n");
      for (int man = 1; man <= MEN; man++) {
        for (int injection = 1; injection <= INJECTIONS; injection++) {
          out.write("P" + man + ",vasculogenic," + injection + "," + rest(random) + "\n");
        }
      }
    }
  }

  private static String rest(SplittableRandom random) {
    int grade = random.nextInt(HIGHEST_GRADE + 1);
    String volume = "0." + (random.nextBoolean() ? "0" : "4") + "5";
    String potency = "0." + random.nextInt(LEAST_POTENCY, THOUSAND);
    String minutes = (1 + random.nextInt(MINUTES)) + "." + (1 + random.nextInt(MARKS - 1));
    return volume
        + ","
        + potency
        + ",1,"
        + grade
        + ","
        + (random.nextBoolean() ? minutes + ",exact," : ",none,");
  }

  @TearDown
  public void delete() throws IOException {
    Files.delete(file);
  }

  @Benchmark
  public Courses readCourses() throws IOException {
    var notChosen = new PreparationChoice(List.of(), Optional.empty());
    return CourseFile.read(file, notChosen).orThrow().courses();
  }

  @Benchmark
  public HistoryFile readCells() throws IOException {
    return HistoryFile.read(file).orThrow();
  }
}
