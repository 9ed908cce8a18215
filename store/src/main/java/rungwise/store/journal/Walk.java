package rungwise.store.journal;

import static rungwise.store.schema.Tables.ENTRY;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import org.jooq.Cursor;
import org.jooq.DSLContext;
import org.jooq.Table;
import org.jooq.TableRecord;
import rungwise.store.schema.tables.records.EntryRecord;

/** One walk over all entries with their facts, holding one entry at a time. */
final class Walk {

  private Walk() {}

  static void over(DSLContext reading, BiConsumer<EntryRecord, List<TableRecord<?>>> each) {
    var cursors = new ArrayList<FactCursor>();
    try (Cursor<EntryRecord> entries =
        reading.selectFrom(ENTRY).orderBy(ENTRY.SEQ.asc()).fetchLazy()) {
      for (Table<?> table : FactTables.all()) {
        cursors.add(FactCursor.over(reading, table));
      }
      for (EntryRecord entry : entries) {
        var facts = new ArrayList<TableRecord<?>>();
        cursors.forEach(cursor -> facts.addAll(cursor.rowsOf(entry.getId())));
        each.accept(entry, facts);
      }
    } finally {
      cursors.forEach(FactCursor::close);
    }
  }
}
