package rungwise.store.audit;

import static org.jooq.impl.DSL.coalesce;
import static org.jooq.impl.DSL.min;
import static org.jooq.impl.DSL.select;
import static rungwise.store.schema.Tables.ACCESS_TAKEN;
import static rungwise.store.schema.Tables.ACCOUNT_STANDING;
import static rungwise.store.schema.Tables.COURSE_OPENED;
import static rungwise.store.schema.Tables.ENTRY;
import static rungwise.store.schema.Tables.FACTOR_CHANGED;
import static rungwise.store.schema.Tables.PAGE_VIEWED_COURSE;
import static rungwise.store.schema.Tables.SIGN_IN;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jooq.Condition;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.Record2;
import org.jooq.impl.DSL;
import rungwise.clinic.audit.Trail;
import rungwise.clinic.audit.TrailLine;
import rungwise.clinic.audit.TrailSearch;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.Patient;
import rungwise.clinic.people.AccountId;
import rungwise.store.database.Database;

/** Searches the entries and the few facts that say whom they are about. */
public final class SqlTrail implements Trail {

  private static final Field<String> ABOUT =
      coalesce(ACCOUNT_STANDING.ACCOUNT_ID, FACTOR_CHANGED.ACCOUNT_ID, SIGN_IN.ACCOUNT_ID);

  private final Database database;

  public SqlTrail(Database database) {
    this.database = database;
  }

  @Override
  public List<TrailLine> find(TrailSearch search, long before, int most) {
    List<? extends Record> rows =
        database
            .reading()
            .select(
                ENTRY.ID,
                ENTRY.SEQ,
                ENTRY.RECORDED_AT,
                ENTRY.RECORDED_BY,
                ENTRY.KIND,
                ENTRY.COURSE_ID,
                ENTRY.REASON,
                ACCESS_TAKEN.COURSE_ID,
                ABOUT)
            .from(ENTRY)
            .leftJoin(ACCOUNT_STANDING)
            .on(ACCOUNT_STANDING.ENTRY_ID.eq(ENTRY.ID))
            .leftJoin(FACTOR_CHANGED)
            .on(FACTOR_CHANGED.ENTRY_ID.eq(ENTRY.ID))
            .leftJoin(SIGN_IN)
            .on(SIGN_IN.ENTRY_ID.eq(ENTRY.ID))
            .leftJoin(ACCESS_TAKEN)
            .on(ACCESS_TAKEN.ENTRY_ID.eq(ENTRY.ID))
            .where(conditions(search))
            .and(ENTRY.SEQ.lt(before))
            .orderBy(ENTRY.SEQ.desc())
            .limit(most)
            .fetch();
    Map<String, List<CourseId>> shown = shownBy(rows);
    return rows.stream().map(row -> line(row, shown)).toList();
  }

  private static List<Condition> conditions(TrailSearch search) {
    var asked = new ArrayList<Condition>();
    search.person().map(AccountId::text).map(SqlTrail::isOf).ifPresent(asked::add);
    search.course().map(CourseId::text).map(SqlTrail::isInCourse).ifPresent(asked::add);
    search.kind().map(ENTRY.KIND::eq).ifPresent(asked::add);
    search.from().map(ENTRY.RECORDED_AT::ge).ifPresent(asked::add);
    search.until().map(ENTRY.RECORDED_AT::lt).ifPresent(asked::add);
    return asked;
  }

  private static Condition isOf(String account) {
    return ENTRY
        .RECORDED_BY
        .eq(account)
        .or(
            ENTRY.ID.in(
                select(ACCOUNT_STANDING.ENTRY_ID)
                    .from(ACCOUNT_STANDING)
                    .where(ACCOUNT_STANDING.ACCOUNT_ID.eq(account))))
        .or(
            ENTRY.ID.in(
                select(FACTOR_CHANGED.ENTRY_ID)
                    .from(FACTOR_CHANGED)
                    .where(FACTOR_CHANGED.ACCOUNT_ID.eq(account))))
        .or(
            ENTRY.ID.in(
                select(SIGN_IN.ENTRY_ID).from(SIGN_IN).where(SIGN_IN.ACCOUNT_ID.eq(account))));
  }

  private static Condition isInCourse(String course) {
    return ENTRY
        .COURSE_ID
        .eq(course)
        .or(
            ENTRY.ID.in(
                select(PAGE_VIEWED_COURSE.ENTRY_ID)
                    .from(PAGE_VIEWED_COURSE)
                    .where(PAGE_VIEWED_COURSE.COURSE_ID.eq(course))))
        .or(
            ENTRY.ID.in(
                select(ACCESS_TAKEN.ENTRY_ID)
                    .from(ACCESS_TAKEN)
                    .where(ACCESS_TAKEN.COURSE_ID.eq(course))));
  }

  /** The courses that each of these entries showed, by the id of the entry. */
  private Map<String, List<CourseId>> shownBy(List<? extends Record> rows) {
    List<String> ids = rows.stream().map(row -> row.get(ENTRY.ID)).toList();
    return database
        .reading()
        .select(PAGE_VIEWED_COURSE.ENTRY_ID, PAGE_VIEWED_COURSE.COURSE_ID)
        .from(PAGE_VIEWED_COURSE)
        .where(PAGE_VIEWED_COURSE.ENTRY_ID.in(ids))
        .orderBy(PAGE_VIEWED_COURSE.LINE)
        .fetchGroups(
            row -> row.get(PAGE_VIEWED_COURSE.ENTRY_ID),
            row -> new CourseId(row.get(PAGE_VIEWED_COURSE.COURSE_ID)));
  }

  private static TrailLine line(Record row, Map<String, List<CourseId>> shown) {
    Stream<CourseId> own =
        Stream.of(
                Optional.ofNullable(row.get(ENTRY.COURSE_ID)),
                Optional.ofNullable(row.get(ACCESS_TAKEN.COURSE_ID)))
            .flatMap(Optional::stream)
            .map(CourseId::new);
    List<CourseId> looked = shown.getOrDefault(row.get(ENTRY.ID), List.of());
    return new TrailLine(
        row.get(ENTRY.SEQ),
        row.get(ENTRY.RECORDED_AT),
        new AccountId(row.get(ENTRY.RECORDED_BY)),
        row.get(ENTRY.KIND),
        Optional.ofNullable(row.get(ABOUT)).map(AccountId::new),
        Stream.concat(own, looked.stream()).toList(),
        Optional.ofNullable(row.get(ENTRY.REASON)));
  }

  /** From one kind to the next by the index, so that the entries are not walked over. */
  @Override
  public List<String> kinds() {
    var kinds = new ArrayList<String>();
    Optional<String> next = firstKind(DSL.noCondition());
    while (next.isPresent()) {
      kinds.add(next.get());
      next = firstKind(ENTRY.KIND.gt(next.get()));
    }
    return kinds;
  }

  private Optional<String> firstKind(Condition condition) {
    return database
        .reading()
        .select(min(ENTRY.KIND))
        .from(ENTRY)
        .where(condition)
        .fetchOptional()
        .map(row -> row.value1());
  }

  @Override
  public Optional<CourseId> courseOf(String recordNumber) {
    return database
        .reading()
        .select(ENTRY.COURSE_ID)
        .from(COURSE_OPENED)
        .join(ENTRY)
        .on(ENTRY.ID.eq(COURSE_OPENED.ENTRY_ID))
        .where(COURSE_OPENED.RECORD_KEY.eq(Patient.recordKeyOf(recordNumber)))
        .orderBy(ENTRY.SEQ.desc())
        .limit(1)
        .fetchOptional(ENTRY.COURSE_ID)
        .map(CourseId::new);
  }

  @Override
  public Map<CourseId, String> recordNumbers(Set<CourseId> courses) {
    return database
        .reading()
        .select(ENTRY.COURSE_ID, COURSE_OPENED.RECORD_NUMBER)
        .from(ENTRY)
        .join(COURSE_OPENED)
        .on(COURSE_OPENED.ENTRY_ID.eq(ENTRY.ID))
        .where(ENTRY.COURSE_ID.in(courses.stream().map(CourseId::text).toList()))
        .orderBy(ENTRY.SEQ)
        .stream()
        .collect(
            Collectors.toMap(
                row -> new CourseId(row.value1()), Record2::value2, (before, after) -> after));
  }
}
