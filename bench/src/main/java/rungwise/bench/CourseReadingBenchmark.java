package rungwise.bench;

import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.StoryClock;
import rungwise.app.server.TemporaryFolder;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.store.SqliteStore;

/**
 * The longest course of the invented clinic as the store reads it, compared with its seals: what
 * every page of a course begins with.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class CourseReadingBenchmark {

  private final TemporaryFolder folder = TemporaryFolder.make();
  private final SqliteStore store = filled(folder);
  private final CourseId course = longest(store);

  private static SqliteStore filled(TemporaryFolder folder) {
    var clock = new StoryClock(InstantSource.system());
    try (OpenClinic clinic = OpenClinic.in(folder.path(), clock)) {
      DemoClinic.fill(clinic, clock, ZoneOffset.UTC);
    }
    return SqliteStore.open(folder.path());
  }

  private static CourseId longest(SqliteStore store) {
    return store.courses().all().stream()
        .flatMap(id -> store.courses().find(id).stream())
        .max(Comparator.comparingInt(file -> file.entries().size()))
        .orElseThrow()
        .id();
  }

  @Benchmark
  public Optional<CourseFile> readCourse() {
    return store.courses().find(course);
  }

  /** Closes the store and removes what it wrote. */
  @TearDown
  public void close() {
    store.close();
    folder.close();
  }
}
