package rungwise.store.audit;

import static rungwise.store.schema.Tables.ENTRY;
import static rungwise.store.schema.Tables.PAGE_VIEWED;
import static rungwise.store.schema.Tables.PAGE_VIEWED_COURSE;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jooq.Record;
import org.jooq.TableRecord;
import rungwise.clinic.audit.Audit;
import rungwise.clinic.audit.Look;
import rungwise.clinic.audit.Screen;
import rungwise.clinic.audit.Viewed;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.AccountId;
import rungwise.store.database.Database;
import rungwise.store.journal.Journal;
import rungwise.store.journal.NewEntry;
import rungwise.store.schema.tables.records.PageViewedCourseRecord;
import rungwise.store.schema.tables.records.PageViewedRecord;

/** The views in the journal: one entry for each page, one line for each course that it names. */
public final class SqlAudit implements Audit {

  private static final String KIND = "page_viewed";

  private final Database database;
  private final Journal journal;

  public SqlAudit(Database database, Journal journal) {
    this.database = database;
    this.journal = journal;
  }

  @Override
  public void append(Viewed viewed) {
    var rows = new ArrayList<TableRecord<?>>();
    rows.add(page(viewed));
    for (CourseId course : viewed.courses()) {
      var row = new PageViewedCourseRecord();
      row.setLine(rows.size());
      row.setCourseId(course.text());
      rows.add(row);
    }
    journal.append(
        NewEntry.of(KIND, viewed.at(), viewed.by().text()), rows.toArray(new TableRecord<?>[0]));
  }

  private static PageViewedRecord page(Viewed viewed) {
    var row = new PageViewedRecord();
    row.setScreen(token(viewed.screen()));
    row.setOutcome(token(viewed.outcome()));
    return row;
  }

  @Override
  public List<Look> of(CourseId course, long before, int most) {
    return database
        .reading()
        .select(
            ENTRY.SEQ,
            ENTRY.RECORDED_BY,
            ENTRY.RECORDED_AT,
            PAGE_VIEWED.SCREEN,
            PAGE_VIEWED.OUTCOME)
        .from(PAGE_VIEWED_COURSE)
        .join(ENTRY)
        .on(ENTRY.ID.eq(PAGE_VIEWED_COURSE.ENTRY_ID))
        .join(PAGE_VIEWED)
        .on(PAGE_VIEWED.ENTRY_ID.eq(ENTRY.ID))
        .where(PAGE_VIEWED_COURSE.COURSE_ID.eq(course.text()))
        .and(ENTRY.SEQ.lt(before))
        .orderBy(ENTRY.SEQ.desc())
        .limit(most)
        .fetch(SqlAudit::look);
  }

  private static Look look(Record row) {
    return new Look(
        row.get(ENTRY.SEQ),
        new AccountId(row.get(ENTRY.RECORDED_BY)),
        row.get(ENTRY.RECORDED_AT),
        Screen.valueOf(name(row.get(PAGE_VIEWED.SCREEN))),
        Viewed.Outcome.valueOf(name(row.get(PAGE_VIEWED.OUTCOME))));
  }

  private static String token(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }

  private static String name(String token) {
    return token.toUpperCase(Locale.ROOT);
  }
}
