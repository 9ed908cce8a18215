package rungwise.store.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.day.Held;
import rungwise.clinic.day.Need;
import rungwise.clinic.formulary.ClinicPreparation;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.reaching.ReachDraft;
import rungwise.clinic.reaching.ReachDraft.What;
import rungwise.clinic.reaching.Reaching;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.CourseReader;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.HowToReach;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.clinic.today.DayList;
import rungwise.clinic.today.DayRow;
import rungwise.clinic.today.DayRows.Basis;
import rungwise.clinic.today.DayRows.Listed;
import rungwise.clinic.today.Touched;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.supply.InUseRule;
import rungwise.files.SampleProtocolReader;
import rungwise.store.OpenStores;
import rungwise.store.RawDatabase;
import rungwise.store.SqliteStore;

/** The rows of the day's list as they are kept, changed by another program, and made anew. */
final class SqlDayRowsTest {

  @TempDir Path folder;
  private SqliteStore store;
  private TitrationWorld world;
  private DayList list;
  private CourseViews views;
  private RawDatabase raw;

  @BeforeEach
  void open() throws SQLException {
    store = SqliteStore.open(folder);
    var touched = new Touched(store.courses(), store.transactions());
    CoursePorts stored = OpenStores.ports(store);
    world =
        new TitrationWorld(
            new CoursePorts(
                touched.courses(),
                stored.shelf(),
                stored.populations(),
                stored.audit(),
                stored.roomDays(),
                stored.clinicVials(),
                stored.signedWords(),
                stored.past(),
                touched.transactions()),
            new SampleProtocolReader());
    views = new CourseViews(world.ports().time(), by -> "somebody");
    list = new DayList(world.ports(), touched, views, store.dayRows());
    raw = RawDatabase.in(folder);
  }

  @AfterEach
  void close() throws SQLException {
    raw.close();
    store.close();
  }

  private Listed listed(CourseId course) {
    return list.page(Set.of(), 1).others().stream()
        .filter(one -> one.course().equals(course))
        .findFirst()
        .orElseThrow();
  }

  private Object kept(String column, CourseId course) throws SQLException {
    return raw.column(
            "select " + column + " from day_row where course_id = '" + course.text() + "'")
        .getFirst();
  }

  private void assertAsFolded(CourseId course) {
    Listed listed = listed(course);
    CourseState state = world.state(course);
    var reader = new CourseReader(world.ports());
    var held =
        new Held(state, world.ports().time(), day -> reader.byDay(state.file(), state.now(), day));
    assertThat(listed.isCurrent()).isTrue();
    var row = listed.row().orElseThrow();
    var view = views.dayOf(state);
    assertThat(row.need()).isEqualTo(view.day().need());
    assertThat(row.since()).isEqualTo(view.day().since());
    assertThat(row.advice()).isEqualTo(view.advice());
    assertThat(row.because()).isEqualTo(view.because());
    assertThat(row.sign()).isEqualTo(view.now().sign());
    assertThat(row.answer()).isEqualTo(view.now().sentence());
    assertThat(row.until()).isEqualTo(held.until());
    assertThat(row.man()).isEqualTo(state.file().patient().fullName());
  }

  @Test
  void a_row_is_written_in_the_transaction_of_the_entry() throws SQLException {
    CourseId course = world.open();
    assertThat(kept("last_seq", course)).isEqualTo((int) world.file(course).basis());
    assertThat((long) kept("holds_until", course)).isGreaterThan(world.now().toEpochMilli());

    world.signProposed(course);

    assertThat(kept("last_seq", course)).isEqualTo((int) world.file(course).basis());
    assertAsFolded(course);
  }

  @Test
  void a_row_that_has_passed_its_instant_is_made_anew() throws SQLException {
    CourseId course = world.open();
    world.signProposed(course);
    Object before = kept("holds_until", course);

    world.setClock(Instant.ofEpochMilli((long) before));

    assertAsFolded(course);
    assertThat(kept("holds_until", course)).isNotEqualTo(before);
  }

  @Test
  void a_row_that_was_made_by_a_clock_ahead_is_made_anew_when_it_is_put_back() throws SQLException {
    CourseId course = world.open();
    world.signProposed(course);
    Instant right = world.now();
    world.pass(Duration.ofDays(300));
    assertAsFolded(course);

    world.setClock(right);

    assertAsFolded(course);
    assertThat(kept("made_at", course)).isEqualTo(right.toEpochMilli());
  }

  @Test
  void a_row_that_another_program_changed_is_never_believed() throws SQLException {
    CourseId course = world.open();
    world.signProposed(course);
    assertAsFolded(course);
    for (String change :
        List.of(
            "need_rank = 5",
            "since = since + 1",
            "holds_until = holds_until + 1000",
            "answer = 'At home: 0.5 mL'",
            "sign = 'yes'",
            "advice = 'Increase'",
            "because = 'x'",
            "man = 'Another Man'",
            "record_number = 'X-1'",
            "emergency_at = 99999999999999",
            "last_seq = last_seq + 1")) {
      raw.run("update day_row set " + change + " where course_id = '" + course.text() + "'");
      assertThat(listed(course).row()).as(change).isEmpty();
      assertThat(listed(course).isCurrent()).as(change).isFalse();

      assertThat(list.repair()).as(change).isEqualTo(1);

      assertAsFolded(course);
    }
  }

  @Test
  void a_row_that_was_removed_comes_back_with_the_next_look() throws SQLException {
    CourseId course = world.open();
    raw.run("delete from day_row where course_id = '" + course.text() + "'");

    assertAsFolded(course);
  }

  @Test
  void a_row_of_another_course_in_its_place_is_not_believed() throws SQLException {
    CourseId one = world.open();
    CourseId other = world.open();
    raw.run(
        "update day_row set row_check = (select row_check from day_row where course_id = '%s')"
                .formatted(one.text())
            + " where course_id = '%s'".formatted(other.text()));

    assertThat(listed(other).row()).isEmpty();
    assertAsFolded(one);
  }

  @Test
  void every_row_is_made_anew_after_what_every_course_rests_on_has_changed() throws SQLException {
    CourseId course = world.open();
    assertAsFolded(course);
    Object before = kept("versions", course);
    var other =
        new ClinicPreparation(
            SamplePreparations.ALPROSTADIL_40, new InUseRule.SingleUse(), Optional.empty());

    world.stored().run(() -> store.preparations().append(other, AccountId.PROGRAM, world.now()));

    assertAsFolded(course);
    assertThat(kept("versions", course)).isNotEqualTo(before);
  }

  /** Three of each kind, read by pages of two: the split lies within a page. */
  @Test
  void the_readers_tasks_stand_first_and_no_course_is_left_out_or_told_twice() {
    var toSign = new ArrayList<CourseId>();
    var toScreen = new ArrayList<CourseId>();
    for (int man = 0; man < 3; man++) {
      toSign.add(world.open());
      toScreen.add(world.openUnprepared("vasculogenic", "u100-1"));
    }
    assertAsFolded(toScreen.getFirst());
    var now = new Basis("now", world.now());

    var seen = new ArrayList<CourseId>();
    for (int from = 0; from < 6; from += 2) {
      store.dayRows().others(now, Set.of(Need.SCREENING), from, 2).stream()
          .map(Listed::course)
          .forEach(seen::add);
    }

    assertThat(seen.subList(0, 3)).containsExactlyInAnyOrderElementsOf(toScreen);
    assertThat(seen.subList(3, 6)).containsExactlyInAnyOrderElementsOf(toSign);
    assertThat(store.dayRows().others(now, Set.of(), 0, 9))
        .extracting(Listed::course)
        .containsExactlyElementsOf(Stream.concat(toSign.stream(), toScreen.stream()).toList());
    assertThat(list.counts().others()).containsEntry(Need.SCREENING, 3);
    assertThat(list.counts().all()).isEqualTo(6);
  }

  /** A number that is no longer there leaves nothing of it in the row that held it. */
  @Test
  void a_row_says_how_he_is_called_and_forgets_what_no_longer_holds() {
    CourseId course = world.open();
    var reaching = new Reaching(world.ports());
    reaching
        .write(
            Staff.EDUCATOR,
            course,
            ReachDraft.number("07700 900123", "HIS", "18:00", "", "CALL_BACK"))
        .orThrow();
    String entry = HowToReach.of(world.file(course)).numbers().getFirst().entry().id().text();
    reaching.write(Staff.EDUCATOR, course, ReachDraft.of(What.NOT_REACHED, entry)).orThrow();
    assertAsFolded(course);

    DayRow.Reach reach = listed(course).row().orElseThrow().reach();
    assertThat(reach.telephone())
        .contains(HowToReach.of(world.file(course)).numbers().getFirst().telephone());
    assertThat(reach.tried().orElseThrow().last()).isEqualTo(world.now());

    reaching.write(Staff.EDUCATOR, course, ReachDraft.of(What.REACHED, entry)).orThrow();
    reaching.write(Staff.EDUCATOR, course, ReachDraft.of(What.GONE, entry)).orThrow();

    assertAsFolded(course);
    reach = listed(course).row().orElseThrow().reach();
    assertThat(reach.telephone()).isEmpty();
    assertThat(reach.tried()).isEmpty();
  }

  @Test
  void a_record_that_was_written_elsewhere_waits_for_its_rows_and_says_nothing_meanwhile()
      throws SQLException {
    CourseId course = world.open();
    raw.run("update day_row set versions = 'of another program'");

    assertThat(store.dayRows().others(new Basis("now", world.now()), Set.of(), 0, 9))
        .extracting(Listed::isCurrent)
        .containsOnly(false);
    assertAsFolded(course);
  }

  @Test
  void an_open_erection_is_read_from_the_record_at_every_look() {
    CourseId course = world.open();
    world.signProposed(course);
    world.pass(Duration.ofHours(6));
    ZonedDateTime at = world.now().minus(Duration.ofHours(5)).atZone(world.ports().time().zone());
    world
        .report(
            course,
            ReportForm.at(
                    DateTimeFormatter.ISO_LOCAL_DATE.format(at),
                    DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT).format(at))
                .grade("3")
                .atLeast("100"))
        .orThrow();

    assertThat(list.page(Set.of(), 1).open())
        .extracting(one -> one.course())
        .containsExactly(course);
    assertThat(list.page(Set.of(), 1).others()).isEmpty();
  }

  @Test
  void a_man_is_found_by_index_and_only_he() {
    CourseId course = world.open();
    String name = world.file(course).patient().fullName();
    CourseId other = world.open();

    assertThat(found(world.file(course).patient().recordNumber())).containsExactly(course);
    assertThat(found(name)).contains(course);
    assertThat(found("nobody of this name")).isEmpty();
    assertThat(found(world.file(other).patient().recordNumber())).containsExactly(other);
  }

  private List<CourseId> found(String typed) {
    return list.found(typed, 10).stream().map(state -> state.file().id()).toList();
  }

  @Test
  void what_the_list_asks_walks_over_no_table() throws SQLException {
    world.open();
    for (String sql :
        Stream.of(
                "select course_id from day_row where holds_until <= 5",
                "select course_id from day_row where made_at > 5",
                "select course_id from day_row where versions < 'a'",
                "select course_id from day_row where versions > 'a'",
                "select course_id from day_row where need_rank < 3",
                "select course_id from day_row where emergency_at <= 5",
                "select * from day_row where need_rank >= 3 and (emergency_at is null or"
                    + " emergency_at > 5) order by need_rank, since, man limit 100",
                "select course_id from man_word where word >= 'ab' and word < 'ac'")
            .toList()) {
      assertThat(raw.plan(sql)).as(sql).isNotEmpty().noneMatch(step -> step.matches("SCAN \\w+"));
    }
  }
}
