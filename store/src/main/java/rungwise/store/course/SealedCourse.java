package rungwise.store.course;

import static rungwise.store.schema.Tables.COURSE_END;
import static rungwise.store.schema.Tables.ENTRY;

import java.time.DateTimeException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.Table;
import org.jooq.TableRecord;
import org.jooq.exception.DataAccessException;
import rungwise.clinic.StillWanted;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.soundness.Flaw;
import rungwise.clinic.soundness.UnreadableRecord;
import rungwise.store.database.Database;
import rungwise.store.journal.Journal;
import rungwise.store.schema.tables.records.EntryRecord;

/**
 * One course as it is read and compared with its seals, in one snapshot. What is given out was made
 * of the very rows that were compared, so nothing can change between the two.
 */
final class SealedCourse {

  private final CourseId id;
  private final DSLContext reading;
  private final Journal journal;
  private final List<CourseEntry> entries = new ArrayList<>();
  private final List<Flaw> flaws = new ArrayList<>();
  private long met = 0;
  private Optional<EntryRecord> last = Optional.empty();

  SealedCourse(CourseId id, DSLContext reading, Journal journal) {
    this.id = id;
    this.reading = reading;
    this.journal = journal;
  }

  /**
   * The course with what is wrong with it.
   *
   * @param shared what is wrong with what every course rests on
   * @throws UnreadableRecord if too little is left of it
   */
  Optional<CourseFile> read(List<Flaw> shared) {
    readEntries();
    if (met == 0 && !hasEnd()) {
      return Optional.empty();
    }
    if (last.filter(one -> journal.endsWith(id.text(), met, one)).isEmpty()) {
      flaws.add(new Flaw(Flaw.What.NOT_ALL, last.map(EntryRecord::getSeq).orElse(0L)));
    }
    flaws.addAll(shared);
    try {
      return Optional.of(new CourseFile(id, entries, flaws));
    } catch (IllegalArgumentException withoutOpening) {
      throw new UnreadableRecord(id.text(), withoutOpening);
    }
  }

  private boolean hasEnd() {
    return reading.fetchExists(COURSE_END, COURSE_END.COURSE_ID.eq(id.text()));
  }

  private void readEntries() {
    try {
      readWhere(ENTRY.COURSE_ID.eq(id.text()));
    } catch (DataAccessException | IllegalArgumentException | DateTimeException damaged) {
      restart();
      readOneByOne(damaged);
    }
  }

  private void restart() {
    entries.clear();
    flaws.clear();
    met = 0;
    last = Optional.empty();
  }

  /** So that one row that cannot be read does not hide the others. */
  private void readOneByOne(RuntimeException cause) {
    List<Long> numbers;
    try {
      numbers =
          reading
              .select(ENTRY.SEQ)
              .from(ENTRY)
              .where(ENTRY.COURSE_ID.eq(id.text()))
              .orderBy(ENTRY.SEQ)
              .fetch(ENTRY.SEQ);
    } catch (DataAccessException e) {
      throw Database.isDamage(e) ? new UnreadableRecord(id.text(), e) : e;
    }
    for (long number : numbers) {
      long before = met;
      try {
        readWhere(ENTRY.SEQ.eq(number));
      } catch (DataAccessException | IllegalArgumentException | DateTimeException unreadable) {
        unreadable.addSuppressed(cause);
      }
      if (met == before) {
        met++;
        flaws.add(new Flaw(Flaw.What.UNREADABLE, number));
      }
    }
  }

  private void readWhere(Condition own) {
    var lines = new CourseLines(reading, own);
    FactReading facts = SqlCourses.linesOf(lines);
    for (Record row : SqlCourses.rowsOf(own, reading)) {
      StillWanted.orStop();
      EntryRecord entry = row.into(ENTRY);
      requireLater(entry);
      read(row, entry, facts, lines);
      met++;
      last = Optional.of(entry);
    }
  }

  /** A damaged index may show an entry twice and hide another. */
  private void requireLater(EntryRecord entry) {
    if (last.filter(before -> before.getSeq() >= entry.getSeq()).isPresent()) {
      throw new UnreadableRecord(
          id.text(), new IllegalStateException("entry " + entry.getSeq() + " is met twice"));
    }
  }

  private void read(Record row, EntryRecord entry, FactReading facts, CourseLines lines) {
    try {
      entries.add(SqlCourses.entry(row, facts.fact(row)));
      String read = journal.sealOf(entry, rowsOf(row, entry, lines));
      if (!read.equals(entry.getSeal())) {
        flaws.add(new Flaw(Flaw.What.CHANGED, entry.getSeq(), read));
      }
    } catch (RuntimeException unreadable) {
      flaws.add(new Flaw(Flaw.What.UNREADABLE, entry.getSeq()));
    }
  }

  private static List<TableRecord<?>> rowsOf(Record row, EntryRecord entry, CourseLines lines) {
    var rows = new ArrayList<TableRecord<?>>(lines.of(entry.getId()));
    for (Map.Entry<Table<?>, FactKind> own : SqlCourses.TABLES.entrySet()) {
      if (own.getValue().token().equals(entry.getKind())
          && row.get(SqlCourses.entryId(own.getKey())) != null) {
        rows.add((TableRecord<?>) row.into(own.getKey()));
      }
    }
    SqlCourses.OF_ANY_KIND.stream()
        .filter(table -> row.get(SqlCourses.entryId(table)) != null)
        .forEach(table -> rows.add((TableRecord<?>) row.into(table)));
    return rows;
  }
}
