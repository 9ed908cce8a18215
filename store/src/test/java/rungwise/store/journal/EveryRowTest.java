package rungwise.store.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.store.CarriedFile;
import rungwise.store.RawDatabase;
import rungwise.store.RecordCheck;
import rungwise.store.SampleCourse;
import rungwise.store.SampleEntries;
import rungwise.store.SqliteStore;
import rungwise.store.database.CannotOpenStore;

/**
 * Walks over all that the database file holds, as the file itself lists it, so that a table that is
 * added later cannot be forgotten: each row changed in each column, each row removed.
 */
final class EveryRowTest {

  /** What is no record: hashes that are replaced, the migrations, and the sealed end itself. */
  private static final Set<String> NO_RECORD =
      Set.of(
          "course_end",
          "credential",
          "day_row",
          "flyway_schema_history",
          "journal_head",
          "man_word",
          "passkey",
          "recovery_code",
          "time_secret");

  private static final String ENTRY = "entry";
  private static final int FLIPS = 400;
  private static final long SEED = 20260302;

  @TempDir Path top;
  private Path folder;
  private @Nullable RawDatabase opened;

  @BeforeEach
  void fill() throws SQLException, IOException {
    folder = Files.createDirectory(top.resolve("data"));
    String file = withAnOverrideOfBefore(Files.createDirectory(top.resolve("before")));
    try (var store = SqliteStore.open(folder)) {
      CarriedFile.takeIn(store, file);
    }
    opened = RawDatabase.withoutTriggers(folder);
  }

  /** A record with every kind of row, also the one that is written no more. */
  private static String withAnOverrideOfBefore(Path before) throws SQLException {
    try (var store = SqliteStore.open(before);
        var raw = RawDatabase.in(before)) {
      SampleEntries.append(store);
      SampleEntries.appendFormulary(store);
      SampleEntries.appendAccess(store);
      SampleCourse.append(store);
      String signed = String.valueOf(raw.column("select entry_id from dose_signed").getFirst());
      raw.run("insert into dose_signed_override values ('" + signed + "', 1, 'new_stock')");
      return CarriedFile.whole(store);
    }
  }

  @AfterEach
  void close() throws SQLException {
    raw().close();
  }

  private RawDatabase raw() {
    RawDatabase raw = opened;
    assertThat(raw).isNotNull();
    return Objects.requireNonNull(raw);
  }

  private Optional<BrokenEntry> firstBroken() {
    return switch (RecordCheck.of(folder, Optional.empty())) {
      case Inspected.Whole whole -> Optional.empty();
      case Inspected.Broken broken -> Optional.of(broken.first());
    };
  }

  private List<String> texts(String sql) throws SQLException {
    return raw().column(sql).stream().map(String::valueOf).toList();
  }

  /** Every table of the file that holds clinical or audit rows. */
  private List<String> tables() throws SQLException {
    return texts("select name from sqlite_master where type = 'table' order by name").stream()
        .filter(name -> !NO_RECORD.contains(name))
        .toList();
  }

  private long entryOf(String table, String row) throws SQLException {
    String sql =
        table.equals(ENTRY)
            ? "select seq from entry where rowid = " + row
            : "select e.seq from entry e join %s f on f.entry_id = e.id where f.rowid = %s"
                .formatted(table, row);
    return Long.parseLong(texts(sql).getFirst());
  }

  @Test
  void each_row_changed_by_one_byte_in_each_column_is_named() throws SQLException {
    var random = new Random(SEED);
    int tried = 0;
    for (String table : tables()) {
      List<String> rows = texts("select rowid from " + table);
      assertThat(rows).as("a sample row of " + table).isNotEmpty();
      for (String row : rows) {
        for (String column : texts("select name from pragma_table_info('" + table + "')")) {
          assertChangeIsNamed(table, row, column, random);
          tried++;
        }
      }
    }

    assertThat(tried).isGreaterThan(400);
    assertThat(firstBroken()).isEmpty();
  }

  private void assertChangeIsNamed(String table, String row, String column, Random random)
      throws SQLException {
    String where = " where rowid = " + row;
    String update = "update " + table + " set " + column + " = ?" + where;
    long entry = entryOf(table, row);
    Object stored = raw().column("select " + column + " from " + table + where).getFirst();

    raw().run(update, changed(stored, random));

    assertThat(firstBroken())
        .as("%s.%s of row %s, seed %d", table, column, row, SEED)
        .map(BrokenEntry::seq)
        .contains(entry);
    raw().run(update, stored);
  }

  private static Object changed(@Nullable Object stored, Random random) {
    return switch (stored) {
      case null -> "x";
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
  void each_row_removed_is_named() throws SQLException {
    for (String table : tables()) {
      for (String row : texts("select rowid from " + table)) {
        long entry = entryOf(table, row);
        raw()
            .run(
                "create temp table kept as select * from %s where rowid = %s"
                    .formatted(table, row));
        raw().run("delete from " + table + " where rowid = " + row);

        assertThat(firstBroken())
            .as("row %s of %s", row, table)
            .map(BrokenEntry::seq)
            .contains(entry);

        raw().run("insert into " + table + " select * from kept");
        raw().run("drop table kept");
      }
    }
    assertThat(firstBroken()).isEmpty();
  }

  @Test
  void a_tail_of_any_length_cut_off_is_named_by_its_first_entry() throws SQLException {
    long last = Long.parseLong(texts("select max(seq) from entry").getFirst());
    for (long seq = last; seq >= 1; seq--) {
      for (String table : tables()) {
        if (!table.equals(ENTRY)) {
          raw()
              .run(
                  "delete from %s where entry_id = (select id from entry where seq = %d)"
                      .formatted(table, seq));
        }
      }
      raw().run("delete from entry where seq = " + seq);

      assertThat(firstBroken()).map(BrokenEntry::seq).contains(seq);
    }
  }

  /** What of the record the file still says, in a form to compare. */
  private static List<String> everything(Path in) throws SQLException {
    var all = new ArrayList<String>();
    try (var raw = RawDatabase.in(in)) {
      for (Object table :
          raw.column("select name from sqlite_master where type = 'table' order by name")) {
        List<Object> columns =
            raw.column("select name from pragma_table_info('" + table + "')").stream()
                .map(name -> (Object) ("quote(" + name + ")"))
                .toList();
        String row = String.join(" || ',' || ", columns.stream().map(String::valueOf).toList());
        for (Object text : raw.column("select " + row + " as row from " + table + " order by 1")) {
          all.add(table + ":" + text);
        }
      }
    }
    return all;
  }

  @Test
  void any_bit_of_the_file_turned_over_is_found_or_changes_nothing_of_the_record()
      throws SQLException, IOException {
    raw().run("pragma journal_mode = delete");
    List<String> before = everything(folder);
    byte[] whole = Files.readAllBytes(folder.resolve("rungwise.db"));
    var random = new Random(SEED);
    int found = 0;
    for (int flip = 0; flip < FLIPS; flip++) {
      Path copy = Files.createDirectory(folder.resolve("copy-" + flip));
      byte[] bytes = whole.clone();
      int at = random.nextInt(bytes.length);
      bytes[at] ^= (byte) (1 << random.nextInt(8));
      Files.write(copy.resolve("rungwise.db"), bytes);
      Files.copy(folder.resolve("journal.key"), copy.resolve("journal.key"));
      if (isFound(copy)) {
        found++;
      } else {
        assertThat(record(everything(copy)))
            .as("byte %d, seed %d", at, SEED)
            .isEqualTo(record(before));
      }
    }

    assertThat(found).isGreaterThan(FLIPS / 10);
  }

  private static List<String> record(List<String> all) {
    return all.stream()
        .filter(
            line -> !line.startsWith("credential:") && !line.startsWith("flyway_schema_history:"))
        .toList();
  }

  private static boolean isFound(Path copy) {
    try {
      return RecordCheck.of(copy, Optional.empty()) instanceof Inspected.Broken;
    } catch (CannotOpenStore e) {
      return true;
    }
  }
}
