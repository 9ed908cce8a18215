package rungwise.store.journal;

import static rungwise.store.schema.Tables.COURSE_END;
import static rungwise.store.schema.Tables.ENTRY;

import org.jooq.DSLContext;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;
import rungwise.store.schema.tables.records.CourseEndRecord;
import rungwise.store.schema.tables.records.EntryRecord;

/**
 * The sealed end of each course. One that is missing or is not as it was sealed is never made anew:
 * the course stays told until a sound record is put back.
 */
final class CourseEnds {

  private final Seals seals;

  CourseEnds(Seals seals) {
    this.seals = seals;
  }

  /** Moves the end of a course to an entry that was appended to it. */
  void move(DSLContext writing, EntryRecord appended) {
    DayMarks.isDue(writing, appended.getCourseId());
    CourseEndRecord end =
        writing.fetchOne(COURSE_END, COURSE_END.COURSE_ID.eq(appended.getCourseId()));
    if (end == null) {
      boolean isFirst =
          !writing.fetchExists(
              ENTRY,
              ENTRY.COURSE_ID.eq(appended.getCourseId()).and(ENTRY.SEQ.lt(appended.getSeq())));
      if (isFirst) {
        writing.executeInsert(end(appended, appended.getSeq(), 1));
      }
    } else if (seals.isSealed(end)) {
      writing.executeUpdate(end(appended, end.getFirstSeq(), end.getEntries() + 1));
    }
  }

  /** Whether a course has these entries and no other. */
  boolean isAt(DSLContext reading, String course, long entries, EntryRecord last) {
    @Nullable CourseEndRecord end = reading.fetchOne(COURSE_END, COURSE_END.COURSE_ID.eq(course));
    return end != null
        && seals.isSealed(end)
        && end.getEntries() == entries
        && end.getLastSeq().equals(last.getSeq())
        && end.getLastSeal().equals(last.getSeal());
  }

  /** Makes the ends of a record that was written before there were any. */
  void makeMissing(DSLContext writing) {
    if (writing.fetchExists(COURSE_END)) {
      return;
    }
    var first = DSL.min(ENTRY.SEQ);
    var last = DSL.max(ENTRY.SEQ);
    var entries = DSL.count();
    writing
        .select(first, last, entries)
        .from(ENTRY)
        .where(ENTRY.COURSE_ID.isNotNull())
        .groupBy(ENTRY.COURSE_ID)
        .fetch()
        .forEach(
            row ->
                writing.executeInsert(
                    end(
                        writing.fetchSingle(ENTRY, ENTRY.SEQ.eq(row.value2())),
                        row.value1(),
                        row.value3())));
  }

  private CourseEndRecord end(EntryRecord last, long firstSeq, long entries) {
    var end = new CourseEndRecord();
    end.setCourseId(last.getCourseId());
    end.setFirstSeq(firstSeq);
    end.setEntries(entries);
    end.setLastSeq(last.getSeq());
    end.setLastSeal(last.getSeal());
    end.setEndSeal(seals.ofEnd(end));
    return end;
  }
}
