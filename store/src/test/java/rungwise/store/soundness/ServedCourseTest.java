package rungwise.store.soundness;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.soundness.Flaw;
import rungwise.clinic.soundness.UnreadableRecord;
import rungwise.store.RawDatabase;
import rungwise.store.SampleCourse;
import rungwise.store.SampleEntries;
import rungwise.store.SqliteStore;

/**
 * Another program changes the database while the store is open: no course is given out as if it
 * were sound. The tables are those that the file itself lists.
 */
final class ServedCourseTest {

  private static final long SEED = 20261129;

  @TempDir Path folder;
  private SqliteStore store;
  private RawDatabase raw;
  private List<CourseFile> written;

  @BeforeEach
  void fill() throws SQLException {
    store = SqliteStore.open(folder);
    SampleEntries.append(store);
    SampleEntries.appendFormulary(store);
    SampleEntries.appendAccess(store);
    SampleCourse.append(store);
    raw = RawDatabase.withoutTriggers(folder);
    raw.run("pragma foreign_keys = off");
    written = store.courses().all().stream().map(this::sound).toList();
    assertThat(written).isNotEmpty();
  }

  @AfterEach
  void close() throws SQLException {
    raw.close();
    store.close();
  }

  private CourseFile sound(CourseId id) {
    CourseFile file = store.courses().find(id).orElseThrow();
    assertThat(file.flaws()).isEmpty();
    return file;
  }

  private List<String> texts(String sql) throws SQLException {
    return raw.column(sql).stream().map(String::valueOf).toList();
  }

  /** The tables with rows of courses, and the courses' entries. */
  private List<String> tables() throws SQLException {
    return texts(
            "select m.name from sqlite_master m join pragma_table_info(m.name) c"
                + " where m.type = 'table' and c.name = 'entry_id' order by m.name")
        .stream()
        .filter(table -> !rowsOf(table).isEmpty())
        .toList();
  }

  private List<String> rowsOf(String table) {
    try {
      return texts(
          "select f.rowid from %s f join entry e on e.id = f.entry_id where e.course_id is not null"
              .formatted(table));
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  /** What is given out of a course now; empty if nothing is. */
  private Optional<CourseFile> served(CourseId id) {
    try {
      return store.courses().find(id);
    } catch (UnreadableRecord told) {
      return Optional.empty();
    }
  }

  /**
   * Every course is told to be not sound, or is as it was written; one is told, or none differs.
   */
  private boolean isTold(String what) {
    boolean isTold = false;
    for (CourseFile before : written) {
      Optional<CourseFile> now = served(before.id());
      if (now.filter(CourseFile::isSound).isEmpty()) {
        isTold = true;
      } else {
        assertThat(now.orElseThrow().entries())
            .as("%s, seed %d", what, SEED)
            .isEqualTo(before.entries());
      }
    }
    assertThat(store.courses().all())
        .as(what)
        .containsAll(written.stream().map(CourseFile::id).toList());
    return isTold;
  }

  @Test
  void each_value_of_each_row_that_is_changed_is_told_when_its_course_is_read()
      throws SQLException {
    var random = new Random(SEED);
    int tried = 0;
    int told = 0;
    for (String table : tables()) {
      for (String row : rowsOf(table)) {
        for (String column : texts("select name from pragma_table_info('" + table + "')")) {
          tried++;
          told += isChangeTold(table, row, column, random) ? 1 : 0;
        }
      }
    }
    assertThat(tried).isGreaterThan(150);
    assertThat(tried - told).as("changes that read as the same value").isLessThan(tried / 10);
  }

  @Test
  void each_value_of_each_entry_that_is_changed_is_told_when_its_course_is_read()
      throws SQLException {
    var random = new Random(SEED);
    for (String row : texts("select rowid from entry where course_id is not null")) {
      for (String column : texts("select name from pragma_table_info('entry')")) {
        isChangeTold("entry", row, column, random);
      }
    }
  }

  private boolean isChangeTold(String table, String row, String column, Random random)
      throws SQLException {
    String where = " where rowid = " + row;
    String update = "update " + table + " set " + column + " = ?" + where;
    Object stored = raw.column("select " + column + " from " + table + where).getFirst();
    if (column.equals("seq")) {
      return true; // it is the row's own name; a removed entry is tried below
    }
    raw.run(update, changed(stored, random));
    boolean isTold = isTold(table + "." + column + " of row " + row);
    raw.run(update, stored);
    return isTold;
  }

  private static Object changed(@Nullable Object stored, Random random) {
    return switch (stored) {
      case null -> "1";
      case String text when text.isEmpty() -> "x";
      case String text -> {
        int at = random.nextInt(text.length());
        char other = (char) (text.charAt(at) ^ (1 << random.nextInt(5)));
        yield text.substring(0, at) + other + text.substring(at + 1);
      }
      case Number number -> number.longValue() + 1000;
      default -> throw new AssertionError("a column of " + stored.getClass());
    };
  }

  @Test
  void each_row_that_is_removed_is_told_when_its_course_is_read() throws SQLException {
    for (String table : tables()) {
      for (String row : rowsOf(table)) {
        assertRemovalIsTold(table, row);
      }
    }
    for (String row : texts("select rowid from entry where course_id is not null")) {
      assertRemovalIsTold("entry", row);
    }
  }

  private void assertRemovalIsTold(String table, String row) throws SQLException {
    raw.run("create temp table kept as select * from " + table + " where rowid = " + row);
    raw.run("delete from " + table + " where rowid = " + row);

    assertThat(isTold("row " + row + " of " + table)).as("row %s of %s", row, table).isTrue();

    raw.run("insert into " + table + " select * from kept");
    raw.run("drop table kept");
  }

  @Test
  void an_entry_that_is_removed_with_its_rows_and_the_end_of_its_course_is_told()
      throws SQLException {
    CourseId id = written.getFirst().id();
    long last = written.getFirst().entries().getLast().number();
    raw.run("delete from course_end where course_id = '" + id.text() + "'");
    for (String table : tables()) {
      raw.run(
          "delete from %s where entry_id = (select id from entry where seq = %d)"
              .formatted(table, last));
    }
    raw.run("delete from entry where seq = " + last);

    assertThat(served(id)).hasValueSatisfying(file -> assertThat(file.isSound()).isFalse());
  }

  @Test
  void a_changed_grade_is_told_by_its_entry_and_the_course_is_told_until_it_is_put_back()
      throws SQLException {
    String entry =
        texts("select entry_id from injection_reported where grade is not null").getFirst();
    String grade =
        texts("select grade from injection_reported where entry_id = '" + entry + "'").getFirst();
    long number =
        Long.parseLong(texts("select seq from entry where id = '" + entry + "'").getFirst());
    CourseId id =
        new CourseId(texts("select course_id from entry where id = '" + entry + "'").getFirst());

    raw.run("update injection_reported set grade = 4 - grade where entry_id = '" + entry + "'");
    assertThat(served(id).orElseThrow().flaws())
        .anyMatch(flaw -> flaw.what() == Flaw.What.CHANGED && flaw.entry() == number);

    raw.run("update injection_reported set grade = " + grade + " where entry_id = '" + entry + "'");
    assertThat(served(id).orElseThrow().isSound()).isTrue();
  }

  @Test
  void a_record_of_before_the_ends_were_sealed_is_sound_when_it_is_opened() throws Exception {
    raw.run("delete from course_end");
    assertThat(served(written.getFirst().id()).orElseThrow().flaws())
        .extracting(Flaw::what)
        .containsExactly(Flaw.What.NOT_ALL);
    store.close();

    store = SqliteStore.open(folder);

    assertThat(store.courses().all().stream().map(id -> sound(id).entries()))
        .isEqualTo(written.stream().map(CourseFile::entries).toList());
  }
}
