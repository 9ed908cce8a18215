package rungwise.store.access;

import static rungwise.store.schema.Tables.ACCESS_TAKEN;
import static rungwise.store.schema.Tables.ENTRY;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.jooq.Record;
import rungwise.clinic.access.TakenAccess;
import rungwise.clinic.access.TakenAccesses;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.AccountId;
import rungwise.store.database.Database;
import rungwise.store.journal.Journal;
import rungwise.store.journal.NewEntry;
import rungwise.store.schema.tables.records.AccessTakenRecord;

/** Each access that was taken is one entry, with its reason. */
public final class SqlTakenAccesses implements TakenAccesses {

  private static final String KIND = "access_taken";

  private final Database database;
  private final Journal journal;

  public SqlTakenAccesses(Database database, Journal journal) {
    this.database = database;
    this.journal = journal;
  }

  @Override
  public void append(TakenAccess access) {
    var row = new AccessTakenRecord();
    row.setAccountId(access.by().text());
    row.setCourseId(access.course().text());
    row.setGoodUntil(access.goodUntil());
    journal.append(
        NewEntry.of(KIND, access.at(), access.by().text()).because(access.reason()), row);
  }

  @Override
  public boolean isGood(AccountId by, CourseId course, Instant at) {
    return database
        .reading()
        .select(ACCESS_TAKEN.GOOD_UNTIL)
        .from(ACCESS_TAKEN)
        .where(ACCESS_TAKEN.ACCOUNT_ID.eq(by.text()))
        .and(ACCESS_TAKEN.COURSE_ID.eq(course.text()))
        .fetch(ACCESS_TAKEN.GOOD_UNTIL)
        .stream()
        .anyMatch(at.truncatedTo(ChronoUnit.MILLIS)::isBefore);
  }

  @Override
  public List<TakenAccess.Numbered> list(long before, int most) {
    return database
        .reading()
        .select(
            ENTRY.SEQ,
            ENTRY.RECORDED_AT,
            ENTRY.REASON,
            ACCESS_TAKEN.ACCOUNT_ID,
            ACCESS_TAKEN.COURSE_ID,
            ACCESS_TAKEN.GOOD_UNTIL)
        .from(ACCESS_TAKEN)
        .join(ENTRY)
        .on(ENTRY.ID.eq(ACCESS_TAKEN.ENTRY_ID))
        .where(ENTRY.SEQ.lt(before))
        .orderBy(ENTRY.SEQ.desc())
        .limit(most)
        .fetch(SqlTakenAccesses::numbered);
  }

  private static TakenAccess.Numbered numbered(Record row) {
    return new TakenAccess.Numbered(
        row.get(ENTRY.SEQ),
        new TakenAccess(
            new AccountId(row.get(ACCESS_TAKEN.ACCOUNT_ID)),
            new CourseId(row.get(ACCESS_TAKEN.COURSE_ID)),
            row.get(ENTRY.REASON),
            row.get(ENTRY.RECORDED_AT),
            row.get(ACCESS_TAKEN.GOOD_UNTIL)));
  }
}
