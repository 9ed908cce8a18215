package rungwise.store.course;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.jooq.exception.DataAccessException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.soundness.UnreadableRecord;
import rungwise.store.RawDatabase;
import rungwise.store.SampleCourse;
import rungwise.store.SampleEntries;
import rungwise.store.SqliteStore;
import rungwise.store.database.CannotOpenStore;
import rungwise.store.database.Database;
import rungwise.store.journal.Journal;
import rungwise.store.journal.JournalKey;

/**
 * Single bits of the database file are turned over, anywhere in it: a course is given out as it was
 * written, or told not to be sound, or not given out at all. {@code -Drungwise.flips=10000} turns
 * over more.
 */
final class DamagedFileTest {

  private static final int FLIPS = Integer.getInteger("rungwise.flips", 300);
  private static final long SEED = Long.getLong("rungwise.seed", 20261129);

  @TempDir Path folder;

  @Test
  void no_bit_of_the_file_that_is_turned_over_makes_a_course_that_is_served_and_false()
      throws SQLException, IOException {
    CourseId id;
    List<CourseEntry> written;
    try (var store = SqliteStore.open(folder)) {
      SampleEntries.append(store);
      SampleEntries.appendFormulary(store);
      SampleCourse.append(store);
      id = store.courses().all().getFirst();
      written = store.courses().find(id).orElseThrow().entries();
    }
    try (var raw = RawDatabase.in(folder)) {
      raw.run("pragma journal_mode = delete");
    }
    JournalKey key = JournalKey.keptIn(folder);
    byte[] whole = Files.readAllBytes(folder.resolve(Database.FILE));
    Path copy = folder.resolve("copy.db");
    var random = new Random(SEED);
    int told = 0;
    for (int flip = 0; flip < FLIPS; flip++) {
      byte[] bytes = whole.clone();
      int at = placeIn(whole, random, /* written= */ flip % 2 == 0);
      bytes[at] ^= (byte) (1 << random.nextInt(8));
      Files.write(copy, bytes);
      if (isTold(copy, key, id, written, "byte %d, flip %d, seed %d".formatted(at, flip, SEED))) {
        told++;
      }
    }
    System.out.printf("%d bits turned over, seed %d: %d told%n", FLIPS, SEED, told);
    assertThat(told).isGreaterThan(FLIPS / 20);
  }

  /** A byte of the file, or one of those that hold something: much of a file is still empty. */
  private static int placeIn(byte[] whole, Random random, boolean written) {
    int at = random.nextInt(whole.length);
    while (written && whole[at] == 0) {
      at = random.nextInt(whole.length);
    }
    return at;
  }

  private static boolean isTold(
      Path copy, JournalKey key, CourseId id, List<CourseEntry> written, String where) {
    Optional<CourseFile> served;
    try (Database database = Database.openKnown(copy)) {
      var courses = new SqlCourses(database, new Journal(database, key), List::of);
      served = courses.find(id);
    } catch (CannotOpenStore | DataAccessException | UnreadableRecord notServed) {
      return true;
    }
    assertThat(served).as("a course that is gone without a word, %s", where).isPresent();
    if (!served.orElseThrow().isSound()) {
      return true;
    }
    assertThat(served.orElseThrow().entries()).as(where).isEqualTo(written);
    return false;
  }
}
