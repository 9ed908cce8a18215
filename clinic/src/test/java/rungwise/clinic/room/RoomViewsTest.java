package rungwise.clinic.room;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.InMemoryRecord;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.room.WatchView.Alarm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;

/** The words of the board and of one man on it. The world begins at 10:00 in New York. */
class RoomViewsTest {

  private static final ClinicTime TIME = new ClinicTime(ZoneId.of("America/New_York"));
  private static final LocalDate DAY = LocalDate.of(2026, 3, 2);

  private final TitrationWorld world =
      new TitrationWorld(InMemoryRecord.ports(), new LabelReader());
  private final RoomViews views = new RoomViews(TIME);
  private CourseId course = new CourseId("00000000-0000-4000-8000-000000000001");

  @BeforeEach
  void begin() {
    course = world.open();
    world.signProposed(course);
  }

  private void inject(CourseId id, String mark) {
    world
        .room()
        .start(
            Staff.EDUCATOR,
            id,
            new StartDraft(
                TIME.dateText(world.now()),
                TIME.timeText(world.now()),
                Occurrence.NOT_SAID,
                mark,
                "HIS_LEFT",
                "2",
                "128",
                "76",
                "72",
                /* alreadyGiven= */ true))
        .orThrow();
  }

  private void note(String time, String moment, String grade) {
    world
        .room()
        .note(
            Staff.EDUCATOR,
            course,
            observed().observation(),
            new NoteDraft("2026-03-02", time, Occurrence.NOT_SAID, moment, grade, "", "", ""))
        .orThrow();
  }

  private Observed observed() {
    return world.room().observed(world.file(course)).getFirst();
  }

  private WatchView view() {
    return views.of(observed(), world.now());
  }

  private RoomView board() {
    return views.board(world.room().board(), world.now(), Optional.empty());
  }

  @Test
  void a_man_is_named_with_volume_mark_composition_and_the_time_since_the_needle() {
    inject(course, "12");
    world.pass(Duration.ofMinutes(12));

    assertThat(view().dose()).isEqualTo("0.12 mL (12-unit mark on a 1 mL U-100 syringe)");
    assertThat(view().composition()).contains("alprostadil").contains("20 mcg");
    assertThat(view().injectedAt()).isEqualTo("10:00");
    assertThat(view().since()).isEqualTo("12 min");
    assertThat(view().lastSeen()).isEqualTo("nothing seen since the injection");
    assertThat(view().place()).isEqualTo("his left, 2 o'clock");
    assertThat(view().check().at()).isEqualTo("10:15");
    assertThat(view().check().isDue()).isFalse();
  }

  @Test
  void a_volume_between_two_lines_names_no_mark() {
    inject(course, "12.5");

    assertThat(view().dose()).isEqualTo("0.125 mL (between two lines of a 1 mL U-100 syringe)");
  }

  @Test
  void a_check_is_due_a_quarter_of_an_hour_after_he_was_last_seen() {
    inject(course, "12");
    world.pass(Duration.ofMinutes(15));
    assertThat(view().check().isDue()).isTrue();

    note("10:14", "CHECKED", "2");

    assertThat(view().check().isDue()).isFalse();
    assertThat(view().check().at()).isEqualTo("10:29");
    assertThat(view().lastSeen()).isEqualTo("checked, firm but not usable, 10:14");
  }

  @Test
  void milestones_say_when_and_how_long_after_or_stay_open() {
    inject(course, "12");
    world.pass(Duration.ofMinutes(40));
    note("10:20", "USABLE", "3");
    note("10:10", "FIRST_FIRM", "2");

    assertThat(view().milestones())
        .extracting(one -> one.words() + " " + one.at().orElse("-") + " " + one.after().orElse("-"))
        .containsExactly(
            "injected 10:00 -", "first firm 10:10 10 min", "usable 10:20 20 min", "fully soft - -");
    assertThat(view().seen())
        .extracting(WatchView.Seen::at)
        .containsExactly("10:00", "10:10", "10:20");
    assertThat(view().seen().getFirst().vitals()).isEqualTo("128/76 mmHg, pulse 72");
    assertThat(observed().firmest().orElseThrow().number()).isEqualTo(3);
  }

  @Test
  void two_hours_are_told_and_four_are_an_emergency_on_the_minute() {
    inject(course, "12");
    assertThat(view().emergencyAt()).isEqualTo("14:00");

    world.pass(Duration.ofMinutes(119));
    assertThat(view().alarm()).isEqualTo(Alarm.NONE);
    world.pass(Duration.ofMinutes(1));
    assertThat(view().alarm()).isEqualTo(Alarm.LONG);
    world.pass(Duration.ofMinutes(119));
    assertThat(view().alarm()).isEqualTo(Alarm.LONG);
    world.pass(Duration.ofMinutes(1));
    assertThat(view().alarm()).isEqualTo(Alarm.EMERGENCY);
  }

  @Test
  void who_is_to_be_looked_at_now_comes_first_on_the_board() {
    CourseId seen = course;
    inject(seen, "12");
    CourseId later = world.open();
    world.signProposed(later);
    world.pass(Duration.ofMinutes(1));
    inject(later, "12");
    world.pass(Duration.ofMinutes(20));
    assertThat(board().men()).extracting(WatchView::course).containsExactly(seen, later);

    note("10:20", "CHECKED", "");

    assertThat(board().men()).extracting(WatchView::course).containsExactly(later, seen);
    assertThat(board().answer()).isEqualTo("2 men are under observation; to be looked at now: 1.");
  }

  @Test
  void an_empty_board_says_so_and_a_day_is_closed_only_on_that_day() {
    assertThat(board().answer()).isEqualTo("Nobody is under observation.");
    assertThat(board().asOf()).isEqualTo("10:00");

    assertThat(views.board(List.of(), world.now(), Optional.of(DAY)).isClosed()).isTrue();
    RoomView nextDay = views.board(List.of(), world.now(), Optional.of(DAY.minusDays(1)));
    assertThat(nextDay.isClosed()).isFalse();
    assertThat(nextDay.lastClosed()).contains("1 March 2026");
  }

  @Test
  void another_day_than_today_is_named() {
    inject(course, "12");
    world.pass(Duration.ofHours(20));

    assertThat(view().injectedAt()).isEqualTo("Monday 2 March 2026 10:00");
  }

  @Test
  void no_second_dose_is_offered_where_nothing_was_injected_before() {
    assertThat(views.secondDose(world.state(course))).isEmpty();
  }
}
