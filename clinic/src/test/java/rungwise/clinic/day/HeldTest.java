package rungwise.clinic.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rungwise.clinic.course.CourseFact.PlanChosen;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.InMemoryRecord;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.room.VisitForms;
import rungwise.clinic.running.RandomCourse;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.sheet.DayView;
import rungwise.clinic.standing.CourseReader;
import rungwise.clinic.supply.VialForm;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.known.SamplePreparations;

/**
 * What the day's list says of a course holds as long as it says that it does: over courses in which
 * anything happens in any order, after each entry, at each instant that is named, a millisecond
 * before it, and at instants that nobody named.
 */
final class HeldTest {

  private static final int TURNS = 6;
  private static final int BETWEEN = 3;
  private static final Duration TWO_HOURS = Duration.ofHours(2);
  private static final Duration FOUR_HOURS = Duration.ofHours(4);

  private final TitrationWorld world =
      new TitrationWorld(InMemoryRecord.ports(), new LabelReader());
  private final CourseReader reader = new CourseReader(world.ports());
  private final CourseViews views = new CourseViews(world.ports().time(), by -> "somebody");

  private Held held(CourseFile file, Instant now) {
    return new Held(
        reader.state(file, now), world.ports().time(), day -> reader.byDay(file, now, day));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void what_is_said_holds_until_the_instant_that_it_names(long seed) {
    var made = new AtomicReference<CourseId>();
    world.stored().run(() -> made.set(RandomCourse.run(world, seed)));
    CourseFile whole = world.file(Objects.requireNonNull(made.get()));
    var random = new Random(seed);
    int held = 0;
    for (var entry : whole.entries()) {
      CourseFile file = whole.upTo(entry.number());
      if (file.inForce(PlanChosen.class).isEmpty()) {
        continue; // it is being opened
      }
      held += holds(file, entry.recordedAt(), random, "seed " + seed + ", entry " + entry.number());
    }
    assertThat(held).isGreaterThan(100);
  }

  /** From an instant on over some turns; gives how many instants between them were looked at. */
  private int holds(CourseFile file, Instant from, Random random, String where) {
    Instant now = from;
    int looked = 0;
    for (int turn = 0; turn < TURNS; turn++) {
      Instant until = held(file, now).until();
      assertThat(until).isAfter(now);
      DayView said = views.dayOf(reader.state(file, now));
      assertThat(views.dayOf(reader.state(file, until.minusMillis(1))))
          .as("%s, from %s until %s", where, now, until)
          .isEqualTo(said);
      long span = Duration.between(now, until).toMillis();
      for (int between = 0; between < BETWEEN; between++) {
        Instant inside = now.plusMillis((long) (random.nextDouble() * span));
        assertThat(views.dayOf(reader.state(file, inside)))
            .as("%s, at %s", where, inside)
            .isEqualTo(said);
        looked++;
      }
      now = until;
    }
    return looked;
  }

  @Test
  void a_worry_in_a_report_that_is_not_complete_is_looked_at_again_at_two_and_at_four_hours() {
    CourseId course = world.open();
    world.signProposed(course);
    world.pass(Duration.ofMinutes(10));
    ReportForm form = ReportForm.at("2026-03-02", "10:00").soft("still").grade("");
    world.titration().reports().enter(Staff.EDUCATOR, course, form.draft());

    Instant injected = TitrationWorld.START.minusMillis(123);
    CourseFile file = world.file(course);
    assertThat(held(file, world.now()).until()).isBeforeOrEqualTo(injected.plus(TWO_HOURS));
    assertThat(held(file, injected.plus(TWO_HOURS)).until())
        .isBeforeOrEqualTo(injected.plus(FOUR_HOURS));
    assertThat(held(file, world.now()).emergencyAt()).contains(injected.plus(FOUR_HOURS));
    holds(file, world.now(), new Random(1), "not complete");
  }

  @Test
  void a_vial_that_gets_old_is_looked_at_again_on_that_day_and_the_next() {
    CourseId course = world.open();
    world.receive(course, VialForm.of(SamplePreparations.ALPROSTADIL_20).made("2026-02-25"));
    world.signProposed(course);
    CourseFile file = world.file(course);
    int fresh = world.state(course).question().protocol().limits().freshDays().value();
    LocalDate old = LocalDate.of(2026, 2, 25).plusDays(fresh);
    for (LocalDate day : List.of(old, old.plusDays(1))) {
      Instant begin = world.ports().time().startOf(day);
      assertThat(held(file, begin.minusMillis(1)).until()).isEqualTo(begin);
    }
    holds(file, world.now(), new Random(2), "a vial gets old");
  }

  /** A row that is made anew each night for nothing costs as much as one that changes. */
  @Test
  void where_nothing_changes_a_row_holds_for_days() {
    CourseId course = world.open();
    world.signProposed(course);
    world.pass(Duration.ofDays(3));

    assertThat(held(world.file(course), world.now()).until())
        .isAfter(world.now().plus(Duration.ofDays(3)));
    assertThat(held(world.file(course), world.now()).emergencyAt()).isEmpty();
  }

  @Test
  void who_is_watched_is_an_emergency_four_hours_after_his_injection() {
    CourseId course = world.open();
    world.signProposed(course);
    Instant injected = TitrationWorld.START.minusMillis(123);
    world.room().start(Staff.EDUCATOR, course, new VisitForms(world).start("12")).orThrow();

    assertThat(held(world.file(course), world.now()).emergencyAt())
        .contains(injected.plus(FOUR_HOURS));
  }
}
