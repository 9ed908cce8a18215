package rungwise.store.course;

import static rungwise.store.schema.Tables.ENTRY;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Result;
import org.jooq.Table;
import org.jooq.TableField;
import org.jooq.TableRecord;

/**
 * The rows of some entries in the tables whose entries may have several, in their order. It keeps
 * what it has given out, for the seal of the entry.
 */
final class CourseLines {

  private final DSLContext reading;
  private final Condition own;
  private final Map<String, List<TableRecord<?>>> given = new HashMap<>();

  CourseLines(DSLContext reading, Condition own) {
    this.reading = reading;
    this.own = own;
  }

  <R extends TableRecord<R>> Result<R> of(
      TableField<R, String> entryId, TableField<R, Integer> line) {
    Table<R> table = Objects.requireNonNull(entryId.getTable());
    Result<R> rows =
        reading
            .select(table.fields())
            .from(table)
            .join(ENTRY)
            .on(ENTRY.ID.eq(entryId))
            .where(own)
            .orderBy(line)
            .fetchInto(table);
    rows.forEach(row -> given.computeIfAbsent(row.get(entryId), id -> new ArrayList<>()).add(row));
    return rows;
  }

  /** Every row of an entry that was given out. */
  List<TableRecord<?>> of(String entryId) {
    return given.getOrDefault(entryId, List.of());
  }
}
