package rungwise.store.journal;

import static rungwise.store.schema.Tables.ENTRY;

import java.util.Comparator;
import java.util.List;
import org.jooq.Field;
import org.jooq.OrderField;
import org.jooq.Record;
import org.jooq.Table;
import rungwise.store.schema.DefaultSchema;

/**
 * The tables that say what happened: every table with the column entry_id. A table whose entries
 * may have several rows has the column line as well, which orders them.
 */
final class FactTables {

  private static final String ENTRY_ID = "entry_id";
  private static final String LINE = "line";

  private FactTables() {}

  /** All of them by name, which is their order in a seal. */
  static List<Table<?>> all() {
    return DefaultSchema.DEFAULT_SCHEMA.getTables().stream()
        .filter(table -> table.field(ENTRY_ID) != null)
        .<Table<?>>map(table -> table)
        .sorted(Comparator.comparing(Table::getName))
        .toList();
  }

  static Field<String> entryId(Table<?> table) {
    Field<String> field = table.field(ENTRY_ID, String.class);
    if (field == null) {
      throw new IllegalArgumentException("bug: " + table.getName() + " is no fact table");
    }
    return field;
  }

  static String entryIdOf(Record row) {
    return row.get(ENTRY_ID, String.class);
  }

  /** The order of the entries, and of the lines of one entry. */
  static List<OrderField<?>> order(Table<?> table) {
    Field<?> line = table.field(LINE);
    return line == null ? List.of(ENTRY.SEQ) : List.of(ENTRY.SEQ, line);
  }

  static long lineOf(Record row) {
    return row.field(LINE) == null ? 0 : row.get(LINE, Long.class);
  }
}
