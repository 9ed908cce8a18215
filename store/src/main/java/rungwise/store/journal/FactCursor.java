package rungwise.store.journal;

import static rungwise.store.schema.Tables.ENTRY;

import java.util.ArrayList;
import java.util.List;
import org.jooq.Cursor;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.Table;
import org.jooq.TableRecord;
import org.jspecify.annotations.Nullable;

/** The rows of one fact table in the order of their entries, so that a walk meets each once. */
final class FactCursor implements AutoCloseable {

  private final Table<?> table;
  private final Cursor<Record> rows;
  private @Nullable Record next;

  private FactCursor(Table<?> table, Cursor<Record> rows) {
    this.table = table;
    this.rows = rows;
    this.next = rows.fetchNext();
  }

  static FactCursor over(DSLContext reading, Table<?> table) {
    return new FactCursor(
        table,
        reading
            .select(StoredText.columns(table))
            .from(table)
            .join(ENTRY)
            .on(ENTRY.ID.eq(FactTables.entryId(table)))
            .orderBy(FactTables.order(table))
            .fetchLazy());
  }

  /** The rows of that entry, if they come next. */
  List<TableRecord<?>> rowsOf(String entryId) {
    var found = new ArrayList<TableRecord<?>>();
    while (next != null && FactTables.entryIdOf(next).equals(entryId)) {
      StoredText.check(table, next);
      found.add((TableRecord<?>) next.into(table));
      next = rows.fetchNext();
    }
    return found;
  }

  @Override
  public void close() {
    rows.close();
  }
}
