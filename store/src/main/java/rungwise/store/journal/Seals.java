package rungwise.store.journal;

import static rungwise.store.schema.Tables.COURSE_END;
import static rungwise.store.schema.Tables.ENTRY;

import java.util.List;
import org.jooq.TableRecord;
import rungwise.store.schema.tables.records.CourseEndRecord;
import rungwise.store.schema.tables.records.EntryRecord;
import rungwise.store.schema.tables.records.JournalHeadRecord;

/** What is sealed, and how. */
final class Seals {

  static final String BEFORE_THE_FIRST = "0".repeat(64);

  private final JournalKey key;

  Seals(JournalKey key) {
    this.key = key;
  }

  /**
   * The seal of an entry, which holds the seal of the one before it.
   *
   * @param facts its rows, by table name and line
   */
  String ofEntry(EntryRecord entry, List<? extends TableRecord<?>> facts) {
    var text = new StringBuilder(Canonical.text(ENTRY.getName(), entry, ENTRY.SEAL));
    for (TableRecord<?> fact : facts) {
      text.append(Canonical.text(fact.getTable().getName(), fact));
    }
    return key.seal(text.toString());
  }

  /** The seal of the chain's end. */
  String ofHead(long seq, String seal) {
    return key.seal("end of the journal\n" + seq + "\n" + seal + "\n");
  }

  boolean isSealed(JournalHeadRecord head) {
    return ofHead(head.getSeq(), head.getSeal()).equals(head.getHeadSeal());
  }

  /** The seal of the end of a course. */
  String ofEnd(CourseEndRecord end) {
    return key.seal("end of a course\n" + Canonical.text("course_end", end, COURSE_END.END_SEAL));
  }

  boolean isSealed(CourseEndRecord end) {
    return ofEnd(end).equals(end.getEndSeal());
  }

  /** The seal of the end as it is kept beside the database. */
  String ofKept(EndFile.End end) {
    return key.seal("end that is kept apart\n" + end.seq() + "\n" + end.seal() + "\n");
  }
}
