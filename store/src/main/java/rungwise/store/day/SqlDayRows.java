package rungwise.store.day;

import static rungwise.store.schema.Tables.COURSE_END;
import static rungwise.store.schema.Tables.DAY_ROW;
import static rungwise.store.schema.Tables.ENTRY;
import static rungwise.store.schema.Tables.MAN_WORD;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.Record1;
import org.jooq.Record2;
import org.jooq.Select;
import org.jooq.SelectConditionStep;
import org.jooq.impl.DSL;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.Courses;
import rungwise.clinic.day.Need;
import rungwise.clinic.sheet.NowView;
import rungwise.clinic.soundness.Flaw;
import rungwise.clinic.today.DayRow;
import rungwise.clinic.today.DayRows;
import rungwise.store.database.Database;
import rungwise.store.journal.DayMarks;
import rungwise.store.schema.tables.records.DayRowRecord;
import rungwise.store.schema.tables.records.ManWordRecord;

/** The rows of the day's list, each with a keyed check that is asked whenever it is read. */
public final class SqlDayRows implements DayRows {

  /** The kinds of entry on which every row rests. */
  private static final List<String> FOUNDATION =
      List.of(
          "preparation_added",
          "preparation_changed",
          "preparation_withdrawn",
          "protocol_signed",
          "population_signed",
          "population_withdrawn",
          "past_history_brought_in",
          "past_history_withdrawn");

  private static final int FIRST_OTHER = Need.RECORD_NOT_SOUND.rank();
  private static final String AFTER_ANY_LETTER = "\uffff";

  private final Database database;
  private final Courses courses;
  private final RowCheck check;
  private final Supplier<List<Flaw>> shared;

  /**
   * Rows over a database.
   *
   * @param shared what is wrong with what every course rests on
   */
  public SqlDayRows(
      Database database, Courses courses, RowCheck check, Supplier<List<Flaw>> shared) {
    this.database = database;
    this.courses = courses;
    this.check = check;
    this.shared = shared;
  }

  @Override
  public String foundation() {
    List<? extends Field<String>> last = FOUNDATION.stream().map(SqlDayRows::last).toList();
    Record row = database.reading().select(last).fetchSingle();
    return check.of(
        last.stream().map(field -> String.valueOf(row.get(field))).collect(Collectors.joining())
            + shared.get());
  }

  private static Field<String> last(String kind) {
    return DSL.field(
        DSL.select(ENTRY.ID)
            .from(ENTRY)
            .where(ENTRY.KIND.eq(kind))
            .orderBy(ENTRY.SEQ.desc())
            .limit(1));
  }

  @Override
  public long last() {
    Long last =
        database
            .reading()
            .select(DSL.max(COURSE_END.LAST_SEQ))
            .from(COURSE_END)
            .fetchOne(0, Long.class);
    return last == null ? 0 : last;
  }

  @Override
  public long endOf(CourseId course) {
    return database
        .reading()
        .select(COURSE_END.LAST_SEQ)
        .from(COURSE_END)
        .where(COURSE_END.COURSE_ID.eq(course.text()))
        .fetchOptional(COURSE_END.LAST_SEQ)
        .orElse(0L);
  }

  @Override
  public void keep(DayRow row, Basis basis, long end, Set<String> words) {
    if (endOf(row.course()) != end) {
      return; // it is due again
    }
    DSLContext writing = database.writing();
    DayRowRecord kept = recordOf(row, basis, end);
    writing
        .insertInto(DAY_ROW)
        .set(kept)
        .onConflict(DAY_ROW.COURSE_ID)
        .doUpdate()
        .set(kept)
        .execute();
    Set<String> before =
        writing
            .select(MAN_WORD.WORD)
            .from(MAN_WORD)
            .where(MAN_WORD.COURSE_ID.eq(row.course().text()))
            .fetchSet(MAN_WORD.WORD);
    if (!before.equals(words)) {
      writing.deleteFrom(MAN_WORD).where(MAN_WORD.COURSE_ID.eq(row.course().text())).execute();
      words.forEach(word -> writing.executeInsert(new ManWordRecord(word, row.course().text())));
    }
  }

  private DayRowRecord recordOf(DayRow row, Basis basis, long end) {
    var kept = new DayRowRecord();
    kept.setCourseId(row.course().text());
    kept.setNeedRank(row.need().rank());
    kept.setSince(row.since().toEpochMilli());
    kept.setHoldsUntil(row.until().toEpochMilli());
    kept.setEmergencyAt(row.emergencyAt().map(Instant::toEpochMilli).orElse(null));
    kept.setLastSeq(end);
    kept.setVersions(basis.versions());
    kept.setMadeAt(basis.now().toEpochMilli());
    kept.setMan(row.man());
    kept.setRecordNumber(row.recordNumber());
    kept.setAdvice(row.advice());
    kept.setBecause(row.because());
    kept.setSign(row.sign().name().toLowerCase(Locale.ROOT));
    kept.setAnswer(row.answer());
    CalledRows.fill(kept, row.reach());
    kept.setRowCheck(check.of(kept));
    return kept;
  }

  /** One range of an index each: with "or" the whole table would be walked over. */
  private static Condition isDue(Basis basis) {
    return DAY_ROW.COURSE_ID.in(
        where(DAY_ROW.HOLDS_UNTIL.le(basis.now().toEpochMilli()))
            .union(where(DAY_ROW.MADE_AT.gt(basis.now().toEpochMilli())))
            .union(where(DAY_ROW.VERSIONS.lt(basis.versions())))
            .union(where(DAY_ROW.VERSIONS.gt(basis.versions()))));
  }

  private static Condition isOpen(Basis basis) {
    return DAY_ROW.COURSE_ID.in(
        where(DAY_ROW.NEED_RANK.lt(FIRST_OTHER))
            .union(where(DAY_ROW.EMERGENCY_AT.le(basis.now().toEpochMilli()))));
  }

  private static Select<Record1<String>> where(Condition condition) {
    return DSL.select(DAY_ROW.COURSE_ID).from(DAY_ROW).where(condition);
  }

  @Override
  public List<CourseId> due(Basis basis, int most) {
    return database
        .reading()
        .select(DAY_ROW.COURSE_ID)
        .from(DAY_ROW)
        .where(isDue(basis))
        .orderBy(DAY_ROW.EMERGENCY_AT.isNull(), DAY_ROW.NEED_RANK, DAY_ROW.SINCE)
        .limit(most)
        .fetch(row -> idOf(row.value1()))
        .stream()
        .flatMap(Optional::stream)
        .toList();
  }

  /** A row whose id was changed into none names no course; its course is missed by the repair. */
  private static Optional<CourseId> idOf(String text) {
    try {
      return Optional.of(new CourseId(text));
    } catch (IllegalArgumentException changed) {
      return Optional.empty();
    }
  }

  @Override
  public Counts counts(Basis basis) {
    DSLContext reading = database.reading();
    Map<Need, Integer> others =
        reading
            .select(DAY_ROW.NEED_RANK, DSL.count())
            .from(DAY_ROW)
            .where(isOther(basis))
            .groupBy(DAY_ROW.NEED_RANK)
            .fetchMap(row -> Need.ofRank(row.value1()), Record2::value2);
    return new Counts(
        reading.fetchCount(DAY_ROW, isOpen(basis)),
        others,
        reading.fetchCount(DAY_ROW, isDue(basis)));
  }

  @Override
  public List<Listed> open(Basis basis, int most) {
    return rows()
        .and(isOpen(basis))
        .orderBy(DAY_ROW.NEED_RANK, DAY_ROW.SINCE)
        .limit(most)
        .fetch()
        .stream()
        .flatMap(row -> listed(row, basis).stream())
        .toList();
  }

  @Override
  public List<Listed> others(Basis basis, Set<Need> first, int from, int most) {
    Condition isFirst = DAY_ROW.NEED_RANK.in(first.stream().map(Need::rank).toList());
    int before = database.reading().fetchCount(DAY_ROW, isOther(basis).and(isFirst));
    var listed = new ArrayList<>(others(basis, isFirst, from, most));
    int more = most - Math.max(0, Math.min(most, before - from));
    listed.addAll(others(basis, DSL.not(isFirst), Math.max(0, from - before), more));
    return listed;
  }

  private static Condition isOther(Basis basis) {
    return DAY_ROW
        .NEED_RANK
        .ge(FIRST_OTHER)
        .and(DAY_ROW.NEED_RANK.ne(Need.ENDED.rank()))
        .and(DAY_ROW.EMERGENCY_AT.isNull().or(DAY_ROW.EMERGENCY_AT.gt(basis.now().toEpochMilli())));
  }

  private List<Listed> others(Basis basis, Condition which, int from, int most) {
    return rows()
        .and(isOther(basis))
        .and(which)
        .orderBy(DAY_ROW.NEED_RANK, DAY_ROW.SINCE, DAY_ROW.MAN)
        .limit(most)
        .offset(from)
        .fetch()
        .stream()
        .flatMap(row -> listed(row, basis).stream())
        .toList();
  }

  private SelectConditionStep<Record> rows() {
    return database
        .reading()
        .select(DAY_ROW.fields())
        .select(COURSE_END.LAST_SEQ)
        .from(DAY_ROW)
        .leftJoin(COURSE_END)
        .on(COURSE_END.COURSE_ID.eq(DAY_ROW.COURSE_ID))
        .where(DSL.noCondition());
  }

  private Optional<Listed> listed(Record row, Basis basis) {
    DayRowRecord kept = row.into(DAY_ROW);
    Optional<DayRow> read = check.holds(kept) ? Optional.of(rowOf(kept)) : Optional.empty();
    Long end = row.get(COURSE_END.LAST_SEQ);
    boolean isCurrent =
        read.isPresent()
            && kept.getVersions().equals(basis.versions())
            && kept.getHoldsUntil() > basis.now().toEpochMilli()
            && kept.getMadeAt() <= basis.now().toEpochMilli()
            && kept.getLastSeq() == (end == null ? 0 : end);
    return idOf(kept.getCourseId()).map(id -> new Listed(id, read, isCurrent));
  }

  private static DayRow rowOf(DayRowRecord kept) {
    return new DayRow(
        new CourseId(kept.getCourseId()),
        Need.ofRank(kept.getNeedRank()),
        Instant.ofEpochMilli(kept.getSince()),
        Instant.ofEpochMilli(kept.getHoldsUntil()),
        Optional.ofNullable(kept.getEmergencyAt()).map(Instant::ofEpochMilli),
        kept.getMan(),
        kept.getRecordNumber(),
        kept.getAdvice(),
        kept.getBecause(),
        NowView.Sign.valueOf(kept.getSign().toUpperCase(Locale.ROOT)),
        kept.getAnswer(),
        CalledRows.reach(kept));
  }

  @Override
  public List<CourseId> found(List<Set<String>> beginnings, int most) {
    Select<Record1<String>> found = null;
    for (Set<String> words : beginnings) {
      Condition begins =
          words.stream()
              .map(word -> MAN_WORD.WORD.ge(word).and(MAN_WORD.WORD.lt(word + AFTER_ANY_LETTER)))
              .reduce(DSL.noCondition(), Condition::or);
      var one = DSL.select(MAN_WORD.COURSE_ID).from(MAN_WORD).where(begins);
      found = found == null ? one : found.intersect(one);
    }
    if (found == null) {
      return List.of();
    }
    return database
        .reading()
        .select(DAY_ROW.COURSE_ID)
        .from(DAY_ROW)
        .where(DAY_ROW.COURSE_ID.in(found))
        .orderBy(DAY_ROW.MAN, DAY_ROW.RECORD_NUMBER)
        .limit(most)
        .fetch(row -> idOf(row.value1()))
        .stream()
        .flatMap(Optional::stream)
        .toList();
  }

  @Override
  public boolean isAnyMissing() {
    DSLContext reading = database.reading();
    return reading.fetchCount(DAY_ROW) < reading.fetchCount(COURSE_END);
  }

  @Override
  public int repair() {
    DSLContext writing = database.writing();
    Set<String> sound =
        writing.selectFrom(DAY_ROW).fetch().stream()
            .filter(row -> check.holds(row) || row.getHoldsUntil() == DayMarks.PASSED)
            .map(DayRowRecord::getCourseId)
            .collect(Collectors.toSet());
    var broken = new ArrayList<String>();
    for (CourseId course : courses.all()) {
      if (!sound.contains(course.text())) {
        broken.add(course.text());
      }
    }
    broken.forEach(course -> DayMarks.isDue(writing, course));
    return broken.size();
  }

  /** Has every row made anew, wherever it came from. */
  public void forget() {
    database.inTransaction(
        () ->
            database.writing().update(DAY_ROW).set(DAY_ROW.HOLDS_UNTIL, DayMarks.PASSED).execute());
  }
}
