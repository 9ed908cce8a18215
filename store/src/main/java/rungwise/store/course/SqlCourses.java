package rungwise.store.course;

import static rungwise.store.schema.Tables.ANSWER_OVERTURNED;
import static rungwise.store.schema.Tables.BASELINE_RECORDED;
import static rungwise.store.schema.Tables.CALL_WRITTEN;
import static rungwise.store.schema.Tables.CORRECTION_CONFIRMED;
import static rungwise.store.schema.Tables.COURSE_END;
import static rungwise.store.schema.Tables.COURSE_OPENED;
import static rungwise.store.schema.Tables.DAILY_TABLET_DECIDED;
import static rungwise.store.schema.Tables.DECISION_WRITTEN;
import static rungwise.store.schema.Tables.DOSE_SIGNED;
import static rungwise.store.schema.Tables.DOSE_SIGNED_ACCEPTED;
import static rungwise.store.schema.Tables.DOSE_SIGNED_DECISION;
import static rungwise.store.schema.Tables.DOSE_SIGNED_HOLD;
import static rungwise.store.schema.Tables.DOSE_SIGNED_HOLD_FACT;
import static rungwise.store.schema.Tables.DOSE_SIGNED_OVERRIDE;
import static rungwise.store.schema.Tables.DOSE_SIGNED_RUNG;
import static rungwise.store.schema.Tables.DOSE_SIGNED_SPOKEN;
import static rungwise.store.schema.Tables.ELSEWHERE_JOINED;
import static rungwise.store.schema.Tables.ELSEWHERE_WRITTEN;
import static rungwise.store.schema.Tables.EMERGENCY_REVIEWED_END;
import static rungwise.store.schema.Tables.ENTRY;
import static rungwise.store.schema.Tables.EXAMINATION_RECORDED;
import static rungwise.store.schema.Tables.FAULT_ACKNOWLEDGED;
import static rungwise.store.schema.Tables.HANDED_OVER;
import static rungwise.store.schema.Tables.INJECTION_NOT_ORDERED;
import static rungwise.store.schema.Tables.INJECTION_REPORTED;
import static rungwise.store.schema.Tables.INJECTION_REPORTED_CAUSE;
import static rungwise.store.schema.Tables.LIFE_WRITTEN;
import static rungwise.store.schema.Tables.OBSERVATION_NOTED;
import static rungwise.store.schema.Tables.OBSERVATION_STARTED;
import static rungwise.store.schema.Tables.PAST_REVIEWED;
import static rungwise.store.schema.Tables.PLAN_CHOSEN;
import static rungwise.store.schema.Tables.REACH_WRITTEN;
import static rungwise.store.schema.Tables.READINESS_RECORDED;
import static rungwise.store.schema.Tables.READINESS_RECORDED_LINE;
import static rungwise.store.schema.Tables.REPORT_UNFINISHED;
import static rungwise.store.schema.Tables.REPORT_UNFINISHED_LINE;
import static rungwise.store.schema.Tables.RESCUE_WRITTEN;
import static rungwise.store.schema.Tables.RESCUE_WRITTEN_OVERRIDDEN;
import static rungwise.store.schema.Tables.SCREENED;
import static rungwise.store.schema.Tables.SCREENED_ANSWER;
import static rungwise.store.schema.Tables.SHEET_MADE;
import static rungwise.store.schema.Tables.TABLET_TAKEN;
import static rungwise.store.schema.Tables.VIAL_BEFELL;
import static rungwise.store.schema.Tables.VIAL_RECEIVED;
import static rungwise.store.schema.Tables.VOLUME_REOPENED;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.Record2;
import org.jooq.Result;
import org.jooq.Table;
import org.jooq.TableRecord;
import org.jooq.impl.DSL;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.Courses;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.NewEntry;
import rungwise.clinic.course.Patient;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.soundness.Flaw;
import rungwise.clinic.words.SheetCode;
import rungwise.store.course.InjectionRows.SoftKind;
import rungwise.store.database.Database;
import rungwise.store.journal.Journal;
import rungwise.store.words.Tokens;

/** The courses in the journal: each fact is an entry that names its course. */
public final class SqlCourses implements Courses {

  private static final String ENTRY_ID = "entry_id";

  private final Database database;
  private final Journal journal;
  private final Supplier<List<Flaw>> shared;

  /**
   * Courses over a journal.
   *
   * @param shared what is wrong with what every course rests on
   */
  public SqlCourses(Database database, Journal journal, Supplier<List<Flaw>> shared) {
    this.database = database;
    this.journal = journal;
    this.shared = shared;
  }

  /** By their openings and by their sealed ends, so that nothing that is changed hides a course. */
  @Override
  public List<CourseId> all() {
    return database
        .reading()
        .select(COURSE_END.COURSE_ID, COURSE_END.FIRST_SEQ)
        .from(COURSE_END)
        .union(
            DSL.select(ENTRY.COURSE_ID, ENTRY.SEQ)
                .from(COURSE_OPENED)
                .crossJoin(ENTRY) // SQLite keeps its order
                .where(ENTRY.ID.eq(COURSE_OPENED.ENTRY_ID))
                .and(ENTRY.CORRECTS.isNull())
                .and(ENTRY.COURSE_ID.isNotNull()))
        .fetch()
        .stream()
        .sorted(Comparator.comparing((Record2<String, Long> row) -> row.value2()).reversed())
        .flatMap(row -> idOf(row.value1()).stream())
        .distinct()
        .toList();
  }

  /** What was changed into no id names no course; the course itself is found by its end. */
  private static Optional<CourseId> idOf(String text) {
    try {
      return Optional.of(new CourseId(text));
    } catch (IllegalArgumentException changed) {
      return Optional.empty();
    }
  }

  @Override
  public List<CourseId> alike(Patient patient) {
    return database
        .reading()
        .select(
            ENTRY.COURSE_ID,
            COURSE_OPENED.FULL_NAME,
            COURSE_OPENED.BIRTH_DATE.cast(String.class),
            COURSE_OPENED.RECORD_NUMBER)
        .from(COURSE_OPENED)
        .crossJoin(ENTRY) // SQLite keeps its order; else it would walk over the whole journal
        .where(ENTRY.ID.eq(COURSE_OPENED.ENTRY_ID))
        .orderBy(ENTRY.SEQ.desc())
        .fetch()
        .stream()
        .filter(
            row ->
                man(row.value2(), row.value3(), row.value4()).filter(patient::isLike).isPresent())
        .flatMap(row -> idOf(row.value1()).stream())
        .distinct()
        .toList();
  }

  /** What was changed into no man is like nobody; his course tells it when it is looked at. */
  private static Optional<Patient> man(String name, String born, String number) {
    try {
      return Optional.of(new Patient(name, LocalDate.parse(born), number));
    } catch (DateTimeParseException | IllegalArgumentException changed) {
      return Optional.empty();
    }
  }

  @Override
  public List<CourseId> namedLike(Patient patient) {
    return where(COURSE_OPENED.NAME_KEY.eq(patient.nameKey()));
  }

  private List<CourseId> where(Condition condition) {
    return database
        .reading()
        .select(ENTRY.COURSE_ID)
        .from(COURSE_OPENED)
        .crossJoin(ENTRY) // SQLite keeps its order; else it would walk over the whole journal
        .where(ENTRY.ID.eq(COURSE_OPENED.ENTRY_ID))
        .and(condition)
        .orderBy(ENTRY.SEQ.desc())
        .fetch(row -> idOf(row.value1()))
        .stream()
        .flatMap(Optional::stream)
        .distinct()
        .toList();
  }

  @Override
  public Optional<CourseId> withSheet(SheetCode code) {
    return database
        .reading()
        .select(ENTRY.COURSE_ID)
        .from(SHEET_MADE)
        .join(ENTRY)
        .on(ENTRY.ID.eq(SHEET_MADE.ENTRY_ID))
        .where(SHEET_MADE.CODE.eq(code.text()))
        .fetch(row -> idOf(row.value1()))
        .stream()
        .flatMap(Optional::stream)
        .findFirst();
  }

  @Override
  public List<CourseId> underObservation() {
    return database
        .reading()
        .select(ENTRY.COURSE_ID)
        .from(OBSERVATION_STARTED)
        .join(ENTRY)
        .on(ENTRY.ID.eq(OBSERVATION_STARTED.ENTRY_ID))
        .leftJoin(INJECTION_REPORTED)
        .on(INJECTION_REPORTED.OBSERVATION.eq(OBSERVATION_STARTED.ENTRY_ID))
        .where(INJECTION_REPORTED.ENTRY_ID.isNull())
        .orderBy(ENTRY.SEQ.asc())
        .fetch(row -> idOf(row.value1()))
        .stream()
        .flatMap(Optional::stream)
        .distinct()
        .toList();
  }

  @Override
  public List<CourseId> leftWhileFirm() {
    return database
        .reading()
        .select(ENTRY.COURSE_ID)
        .from(INJECTION_REPORTED)
        .join(ENTRY)
        .on(ENTRY.ID.eq(INJECTION_REPORTED.ENTRY_ID))
        .where(INJECTION_REPORTED.OBSERVATION.isNotNull())
        .and(INJECTION_REPORTED.SOFT_AFTER.eq(Tokens.of(SoftKind.AT_LEAST)))
        .orderBy(ENTRY.SEQ.asc())
        .fetch(row -> idOf(row.value1()))
        .stream()
        .flatMap(Optional::stream)
        .distinct()
        .toList();
  }

  /** A few queries, however long the course is. Lines of later entries do no harm. */
  @Override
  public Optional<CourseFile> find(CourseId id) {
    return database.inSnapshot(
        () -> new SealedCourse(id, database.reading(), journal).read(shared.get()));
  }

  static FactReading linesOf(CourseLines lines) {
    return new FactReading(
        lines
            .of(DOSE_SIGNED_RUNG.ENTRY_ID, DOSE_SIGNED_RUNG.LINE)
            .intoGroups(DOSE_SIGNED_RUNG.ENTRY_ID, DOSE_SIGNED_RUNG.VOLUME_MICROLITRES),
        new HoldRows(
            lines
                .of(DOSE_SIGNED_OVERRIDE.ENTRY_ID, DOSE_SIGNED_OVERRIDE.LINE)
                .intoGroups(DOSE_SIGNED_OVERRIDE.ENTRY_ID, DOSE_SIGNED_OVERRIDE.GUARD_RULE),
            lines
                .of(DOSE_SIGNED_HOLD.ENTRY_ID, DOSE_SIGNED_HOLD.LINE)
                .intoGroups(DOSE_SIGNED_HOLD.ENTRY_ID),
            lines
                .of(DOSE_SIGNED_HOLD_FACT.ENTRY_ID, DOSE_SIGNED_HOLD_FACT.LINE)
                .intoGroups(DOSE_SIGNED_HOLD_FACT.ENTRY_ID)),
        new DecisionRows(
            lines
                .of(DOSE_SIGNED_SPOKEN.ENTRY_ID, DOSE_SIGNED_SPOKEN.LINE)
                .intoGroups(DOSE_SIGNED_SPOKEN.ENTRY_ID)),
        lines
            .of(INJECTION_REPORTED_CAUSE.ENTRY_ID, INJECTION_REPORTED_CAUSE.LINE)
            .intoGroups(INJECTION_REPORTED_CAUSE.ENTRY_ID, INJECTION_REPORTED_CAUSE.CAUSE),
        lines
            .of(SCREENED_ANSWER.ENTRY_ID, SCREENED_ANSWER.LINE)
            .intoGroups(SCREENED_ANSWER.ENTRY_ID),
        lines
            .of(READINESS_RECORDED_LINE.ENTRY_ID, READINESS_RECORDED_LINE.LINE)
            .intoGroups(READINESS_RECORDED_LINE.ENTRY_ID),
        lines
            .of(REPORT_UNFINISHED_LINE.ENTRY_ID, REPORT_UNFINISHED_LINE.LINE)
            .intoGroups(REPORT_UNFINISHED_LINE.ENTRY_ID),
        lines
            .of(RESCUE_WRITTEN_OVERRIDDEN.ENTRY_ID, RESCUE_WRITTEN_OVERRIDDEN.LINE)
            .intoGroups(RESCUE_WRITTEN_OVERRIDDEN.ENTRY_ID, RESCUE_WRITTEN_OVERRIDDEN.REASON));
  }

  /** The tables of the facts of one row each. */
  static final Map<Table<?>, FactKind> TABLES = tables();

  private static Map<Table<?>, FactKind> tables() {
    var tables = new LinkedHashMap<Table<?>, FactKind>();
    tables.put(COURSE_OPENED, FactKind.COURSE_OPENED);
    tables.put(SCREENED, FactKind.SCREENED);
    tables.put(DECISION_WRITTEN, FactKind.DECISION_WRITTEN);
    tables.put(ANSWER_OVERTURNED, FactKind.ANSWER_OVERTURNED);
    tables.put(BASELINE_RECORDED, FactKind.BASELINE_RECORDED);
    tables.put(EXAMINATION_RECORDED, FactKind.EXAMINATION_RECORDED);
    tables.put(VIAL_RECEIVED, FactKind.VIAL_RECEIVED);
    tables.put(OBSERVATION_STARTED, FactKind.OBSERVATION_STARTED);
    tables.put(OBSERVATION_NOTED, FactKind.OBSERVATION_NOTED);
    tables.put(PLAN_CHOSEN, FactKind.PLAN_CHOSEN);
    tables.put(READINESS_RECORDED, FactKind.READINESS_RECORDED);
    tables.put(DOSE_SIGNED, FactKind.DOSE_SIGNED);
    tables.put(DOSE_SIGNED_ACCEPTED, FactKind.DOSE_SIGNED);
    tables.put(DOSE_SIGNED_DECISION, FactKind.DOSE_SIGNED);
    tables.put(HANDED_OVER, FactKind.HANDED_OVER);
    tables.put(INJECTION_REPORTED, FactKind.INJECTION_REPORTED);
    tables.put(REPORT_UNFINISHED, FactKind.REPORT_UNFINISHED);
    tables.put(CALL_WRITTEN, FactKind.CALL_WRITTEN);
    tables.put(RESCUE_WRITTEN, FactKind.RESCUE_WRITTEN);
    tables.put(REACH_WRITTEN, FactKind.REACH_WRITTEN);
    tables.put(LIFE_WRITTEN, FactKind.LIFE_WRITTEN);
    tables.put(VIAL_BEFELL, FactKind.VIAL_BEFELL);
    tables.put(ELSEWHERE_WRITTEN, FactKind.ELSEWHERE_WRITTEN);
    tables.put(ELSEWHERE_JOINED, FactKind.ELSEWHERE_WRITTEN);
    tables.put(SHEET_MADE, FactKind.SHEET_MADE);
    tables.put(TABLET_TAKEN, FactKind.TABLET_TAKEN);
    tables.put(DAILY_TABLET_DECIDED, FactKind.DAILY_TABLET_DECIDED);
    tables.put(VOLUME_REOPENED, FactKind.VOLUME_REOPENED);
    tables.put(EMERGENCY_REVIEWED_END, FactKind.EMERGENCY_REVIEWED);
    tables.put(CORRECTION_CONFIRMED, FactKind.CORRECTION_CONFIRMED);
    tables.put(PAST_REVIEWED, FactKind.PAST_REVIEWED);
    tables.put(FAULT_ACKNOWLEDGED, FactKind.FAULT_ACKNOWLEDGED);
    return tables;
  }

  /** Tables that go with entries of several kinds. */
  static final List<Table<?>> OF_ANY_KIND = List.of(INJECTION_NOT_ORDERED);

  static Result<Record> rowsOf(Condition own, DSLContext reading) {
    Table<?> joined = ENTRY;
    for (Map.Entry<Table<?>, FactKind> table : TABLES.entrySet()) {
      joined = joined.leftJoin(table.getKey()).on(isOf(table.getValue(), entryId(table.getKey())));
    }
    for (Table<?> table : OF_ANY_KIND) {
      joined = joined.leftJoin(table).on(entryId(table).eq(ENTRY.ID));
    }
    return reading.select().from(joined).where(own).orderBy(ENTRY.SEQ.asc()).fetch();
  }

  static Field<String> entryId(Table<?> table) {
    return Objects.requireNonNull(table.field(ENTRY_ID, String.class));
  }

  /** The kind stands first, so that only the one table of that kind is looked into. */
  private static Condition isOf(FactKind kind, Field<String> entryId) {
    return ENTRY.KIND.eq(DSL.inline(kind.token())).and(entryId.eq(ENTRY.ID));
  }

  static CourseEntry entry(Record row, CourseFact fact) {
    return new CourseEntry(
        row.get(ENTRY.SEQ),
        new EntryId(row.get(ENTRY.ID)),
        row.get(ENTRY.RECORDED_AT),
        new AccountId(row.get(ENTRY.RECORDED_BY)),
        Optional.ofNullable(row.get(ENTRY.CORRECTS)).map(EntryId::new),
        Optional.ofNullable(row.get(ENTRY.REASON)),
        fact);
  }

  @Override
  public long append(NewEntry entry) {
    DSLContext writing = database.writing();
    requireFits(entry, writing);
    String id = journal.append(head(entry), rows(entry.fact()));
    return writing.select(ENTRY.SEQ).from(ENTRY).where(ENTRY.ID.eq(id)).fetchSingle().value1();
  }

  private static void requireFits(NewEntry entry, DSLContext writing) {
    Condition inCourse = ENTRY.COURSE_ID.eq(entry.course().text());
    boolean isFirst = !writing.fetchExists(ENTRY, inCourse);
    boolean isCorrection = entry.corrects().isPresent();
    boolean opens = !isCorrection && entry.fact() instanceof CourseFact.CourseOpened;
    if (isFirst != opens) {
      throw new IllegalStateException("bug: a course is opened by its first entry, and only once");
    }
    boolean correctsOwn =
        entry
            .corrects()
            .map(id -> writing.fetchExists(ENTRY, inCourse.and(ENTRY.ID.eq(id.text()))))
            .orElse(true);
    if (!correctsOwn) {
      throw new IllegalStateException("bug: an entry that corrects one of another course");
    }
  }

  private static rungwise.store.journal.NewEntry head(NewEntry entry) {
    return new rungwise.store.journal.NewEntry(
        UUID.randomUUID().toString(),
        FactKind.of(entry.fact()).token(),
        Optional.of(entry.course().text()),
        entry.at(),
        entry.by().text(),
        Optional.empty(),
        entry.corrects().map(EntryId::text),
        entry.reason());
  }

  private static TableRecord<?>[] rows(CourseFact fact) {
    return FactRows.of(fact).toArray(new TableRecord<?>[0]);
  }
}
