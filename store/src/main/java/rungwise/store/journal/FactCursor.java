package rungwise.store.journal;

import static rungwise.store.schema.Tables.ENTRY;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jooq.Cursor;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.Table;
import org.jooq.TableRecord;
import org.jooq.exception.DataAccessException;
import org.jspecify.annotations.Nullable;

/**
 * The rows of one fact table in the order of their entries, so that a walk meets each once. A row
 * that cannot be read is told only when the walk has come to its entry.
 */
final class FactCursor implements AutoCloseable {

  private final DSLContext reading;
  private final Table<?> table;
  private final Cursor<Record> rows;
  private @Nullable Record next;
  private Optional<String> unreadable = Optional.empty();
  private int met = 0;

  private FactCursor(DSLContext reading, Table<?> table, Cursor<Record> rows) {
    this.reading = reading;
    this.table = table;
    this.rows = rows;
  }

  static FactCursor over(DSLContext reading, Table<?> table) {
    var cursor =
        new FactCursor(
            reading,
            table,
            reading
                .select(StoredText.columns(table))
                .from(table)
                .join(ENTRY)
                .on(ENTRY.ID.eq(FactTables.entryId(table)))
                .orderBy(FactTables.order(table))
                .fetchLazy());
    cursor.goOn();
    return cursor;
  }

  private void goOn() {
    try {
      next = rows.fetchNext();
      met++;
    } catch (DataAccessException | IllegalArgumentException damaged) {
      next = null;
      unreadable = entryOfRow(met);
    }
  }

  private Optional<String> entryOfRow(int before) {
    return reading
        .select(ENTRY.ID)
        .from(table)
        .join(ENTRY)
        .on(ENTRY.ID.eq(FactTables.entryId(table)))
        .orderBy(FactTables.order(table))
        .limit(1)
        .offset(before)
        .fetchOptional(ENTRY.ID);
  }

  /**
   * The rows of that entry, if they come next.
   *
   * @throws IllegalArgumentException if one of them is not in the form in which it was written
   */
  List<TableRecord<?>> rowsOf(String entryId) {
    var found = new ArrayList<TableRecord<?>>();
    while (next != null && FactTables.entryIdOf(next).equals(entryId)) {
      StoredText.check(table, next);
      found.add((TableRecord<?>) next.into(table));
      goOn();
    }
    if (unreadable.filter(entryId::equals).isPresent()) {
      throw new IllegalArgumentException(table.getName());
    }
    return found;
  }

  @Override
  public void close() {
    rows.close();
  }
}
