package rungwise.store.journal;

import static rungwise.store.schema.Tables.DAY_ROW;

import org.jooq.DSLContext;
import rungwise.store.schema.tables.records.DayRowRecord;

/**
 * Marks the row that the day's list has of a course: it is to be made anew, and keeps its place.
 */
public final class DayMarks {

  /** An instant that has always passed. */
  public static final long PASSED = 0;

  /** Where a course stands of which nothing is known yet: after open erections, before all else. */
  private static final int UNKNOWN_RANK = 3;

  private DayMarks() {}

  /** Something was written to the course, or its row is missing or not as it was kept. */
  public static void isDue(DSLContext writing, String course) {
    var row = new DayRowRecord();
    row.setCourseId(course);
    row.setNeedRank(UNKNOWN_RANK);
    row.setSince(PASSED);
    row.setMadeAt(PASSED);
    row.setHoldsUntil(PASSED);
    row.setLastSeq(PASSED);
    row.setVersions("");
    row.setMan("");
    row.setRecordNumber("");
    row.setAdvice("");
    row.setBecause("");
    row.setSign("");
    row.setAnswer("");
    row.setRowCheck("");
    writing
        .insertInto(DAY_ROW)
        .set(row)
        .onConflict(DAY_ROW.COURSE_ID)
        .doUpdate()
        .set(DAY_ROW.HOLDS_UNTIL, PASSED)
        .execute();
  }
}
