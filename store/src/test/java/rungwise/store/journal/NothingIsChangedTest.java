package rungwise.store.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static rungwise.store.schema.Tables.ENTRY;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.jooq.Table;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.store.RawDatabase;
import rungwise.store.SampleCourse;
import rungwise.store.SampleEntries;
import rungwise.store.SqliteStore;

final class NothingIsChangedTest {

  @TempDir Path folder;
  private SqliteStore store;
  private RawDatabase raw;

  @BeforeEach
  void open() throws SQLException {
    store = SqliteStore.open(folder);
    SampleEntries.append(store);
    SampleEntries.appendFormulary(store);
    SampleEntries.appendAccess(store);
    SampleCourse.append(store);
    raw = RawDatabase.in(folder);
    // Nothing writes such a row any more; records of before hold some.
    String signed = String.valueOf(raw.column("select entry_id from dose_signed").getFirst());
    raw.run("insert into dose_signed_override values ('" + signed + "', 1, 'new_stock')");
  }

  @AfterEach
  void close() throws SQLException {
    raw.close();
    store.close();
  }

  private static List<Table<?>> journalTables() {
    var tables = new ArrayList<Table<?>>(FactTables.all());
    tables.add(ENTRY);
    return tables;
  }

  @Test
  void every_fact_table_and_the_entries_have_triggers_against_change_and_removal()
      throws SQLException {
    List<String> triggers =
        raw.column("select sql from sqlite_master where type = 'trigger'").stream()
            .map(String::valueOf)
            .toList();

    for (Table<?> table : journalTables()) {
      for (String change : List.of("update", "delete")) {
        String head = "_is_not_.* before " + change + " on " + table.getName() + "\n.*abort.*";
        assertThat(triggers).as(table.getName()).anyMatch(sql -> sql.matches("(?s).*" + head));
      }
    }
  }

  @Test
  void a_written_row_is_neither_changed_nor_removed_nor_replaced() throws SQLException {
    raw.run("pragma recursive_triggers = on");

    for (Table<?> table : journalTables()) {
      String name = table.getName();
      String column = table.fields()[0].getName();
      assertThat(raw.column("select 1 from " + name)).as("a sample row of " + name).isNotEmpty();
      assertThatThrownBy(() -> raw.run("update %s set %s = %s".formatted(name, column, column)))
          .hasMessageContaining("never changed");
      assertThatThrownBy(() -> raw.run("delete from " + name))
          .hasMessageContaining("never removed");
      assertThatThrownBy(
              () -> raw.run("insert or replace into %s select * from %s".formatted(name, name)))
          .hasMessageContaining("SQLITE_CONSTRAINT_TRIGGER");
    }
  }

  @Test
  void an_entry_that_leaves_a_gap_is_refused() {
    assertThatThrownBy(
            () ->
                raw.run(
                    "insert into entry select 99, 'forged', kind, course_id, recorded_at,"
                        + " recorded_by, on_behalf_of, corrects, reason, previous_seal, seal,"
                        + " clock_believed from entry where seq = 5"))
        .hasMessageContaining("without a gap");
  }
}
