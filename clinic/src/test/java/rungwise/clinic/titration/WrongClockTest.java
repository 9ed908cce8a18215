package rungwise.clinic.titration;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.stream.LongStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.clock.ClockBelief;
import rungwise.clinic.clock.ClockCheck;
import rungwise.clinic.clock.ClockWatch;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.InMemoryRecord;
import rungwise.clinic.day.MayInject;
import rungwise.clinic.day.Need;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.room.VisitForms;
import rungwise.clinic.screening.ScreeningForm;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.sheet.NowView;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.supply.VialForm;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.quantities.TimeSpan;

/**
 * A clock that is wrong tells nobody that he may. The same course is asked by a clock that is set
 * wrong and watched, and by the true time.
 */
final class WrongClockTest {

  private static final Duration MOST = Duration.ofDays(2);
  private static final Duration SCANNED = Duration.ofDays(45);

  private TitrationWorld world;
  private CourseId course;

  /**
   * A dose is signed, and he has injected it a day before the clocks go forward on 8 March. His
   * vial is for use until 20 March.
   */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(InMemoryRecord.ports(), new LabelReader());
    course = world.open();
    world.setClock(Instant.parse("2026-03-06T16:00:00Z"));
    world.signProposed(course);
    world.setClock(Instant.parse("2026-03-07T16:00:00Z"));
    world.report(course, ReportForm.at("2026-03-07", "10:30").exactly("30")).orThrow();
    world.signProposed(course);
    world.receive(
        course, VialForm.of(world.state(course).question().preparation()).beyondUse("2026-03-20"));
  }

  private boolean saysYes() {
    return view().day().now().isYes();
  }

  private CourseView view() {
    return new CourseViews(world.room().time(), account -> "somebody").of(world.state(course));
  }

  /** The answer of the true time. */
  private boolean isYes(Instant truth) {
    world.setClock(truth);
    world.judgeClockBy(ClockCheck.GIVEN);
    return saysYes();
  }

  /** Instants at which the true answer changes, from now on. */
  private List<Instant> changes() {
    var changes = new ArrayList<Instant>();
    Instant begin = world.now();
    boolean before = isYes(begin);
    for (Instant at = begin; at.isBefore(begin.plus(SCANNED)); at = at.plus(Duration.ofHours(1))) {
      boolean is = isYes(at);
      if (is != before) {
        changes.add(toTheMinute(at.minus(Duration.ofHours(1)), before));
      }
      before = is;
    }
    return changes;
  }

  private Instant toTheMinute(Instant before, boolean answer) {
    Instant at = before;
    while (isYes(at) == answer) {
      at = at.plus(Duration.ofMinutes(1));
    }
    return at;
  }

  private static List<Duration> offsets() {
    return LongStream.concat(
            LongStream.rangeClosed(-MOST.toHours(), MOST.toHours()).map(hours -> hours * 60),
            LongStream.rangeClosed(-6, 6))
        .mapToObj(Duration::ofMinutes)
        .toList();
  }

  /** One independent clock that says what the true time is. */
  private enum Independent {
    TIME_SOURCE(ClockWatch::told),
    TWO_BROWSERS(
        (watch, truth) -> {
          watch.heard("192.0.2.7", truth);
          watch.heard("192.0.2.8", truth);
        });

    private final BiConsumer<ClockWatch, Instant> speaks;

    Independent(BiConsumer<ClockWatch, Instant> speaks) {
      this.speaks = speaks;
    }
  }

  /** The answer by a clock that is so far ahead, either from the start or since it jumped. */
  private boolean isYes(Instant truth, Duration ahead, Independent clock, boolean jumps) {
    Instant started = truth.minus(Duration.ofMinutes(20));
    world.setClock(jumps ? started : started.plus(ahead));
    var steady = new long[] {0};
    var watch = new ClockWatch(world::now, () -> steady[0], Optional.of(started));
    clock.speaks.accept(watch, started);
    steady[0] = Duration.between(started, truth).toNanos();
    world.setClock(truth.plus(ahead));
    world.judgeClockBy(watch::belief);
    return saysYes();
  }

  @Test
  void a_clock_walked_over_four_days_says_no_yes_that_the_true_time_does_not_say() {
    List<Instant> changes = changes();
    assertThat(changes).as("he may, and later he may not").hasSizeGreaterThanOrEqualTo(2);
    int yes = 0;
    for (Instant change : changes) {
      for (long minutes : List.of(-1440L, -61L, -3L, -1L, 0L, 1L, 3L, 61L, 1440L)) {
        Instant truth = change.plus(Duration.ofMinutes(minutes));
        boolean isTrue = isYes(truth);
        for (Duration ahead : offsets()) {
          for (Independent clock : Independent.values()) {
            for (boolean jumps : List.of(false, true)) {
              boolean said = isYes(truth, ahead, clock, jumps);
              yes += said ? 1 : 0;
              assertThat(said && !isTrue)
                  .as("%s, %s ahead, %s, jumps %s", truth, ahead, clock, jumps)
                  .isFalse();
            }
          }
        }
      }
    }
    assertThat(yes).as("a right clock still says yes").isPositive();
  }

  @Test
  void by_a_right_clock_that_is_compared_the_answer_is_that_of_the_true_time() {
    Instant opens = changes().getFirst();
    for (long minutes : List.of(-180L, 180L)) {
      Instant truth = opens.plus(Duration.ofMinutes(minutes));
      for (Independent clock : Independent.values()) {
        assertThat(isYes(truth, Duration.ZERO, clock, false)).isEqualTo(isYes(truth));
      }
    }
  }

  /** A clock that is a day ahead, and whoever asks knows it. */
  private void aDayAhead() {
    var watch = new ClockWatch(world::now, () -> 0, Optional.empty());
    watch.told(world.now().minus(Duration.ofDays(1)));
    world.judgeClockBy(watch::belief);
  }

  @Test
  void by_a_wrong_clock_nothing_is_signed_and_every_answer_of_time_is_not_known() {
    aDayAhead();

    assertThat(view().day().now()).isEqualTo(new MayInject.Stopped(MayInject.Why.CLOCK_NOT_KNOWN));
    assertThat(view().now().sign()).isEqualTo(NowView.Sign.STOPPED);
    assertThat(view().day().need()).isEqualTo(Need.SUSPENDED);
    assertThat(world.blocks(course)).contains(GuardRule.CLOCK_NOT_KNOWN);
    assertThat(world.state(course).advice().decision().proposed()).isEmpty();
    assertThat(world.sign(course, world.instead(course, 120)).faults())
        .containsExactly(CourseChanges.CLOCK_NOT_KNOWN);
  }

  @Test
  void a_report_is_taken_by_a_clock_that_is_behind_and_waits_to_be_believed() {
    Instant truth = Instant.parse("2026-03-09T15:00:00Z");
    world.setClock(truth.minus(Duration.ofDays(1)));
    var watch = new ClockWatch(world::now, () -> 0, Optional.empty());
    watch.told(truth);
    world.judgeClockBy(watch::belief);

    world.report(course, ReportForm.at("2026-03-09", "10:00").exactly("30")).orThrow();

    assertThat(world.file(course).reports().getLast().fact().injectedAt())
        .isEqualTo(Instant.parse("2026-03-09T14:00:00Z"));
    assertThat(saysYes()).isFalse();
  }

  @Test
  void who_is_still_firm_by_a_wrong_clock_is_an_emergency_and_no_minute_of_it_is_made_up() {
    aDayAhead();

    world.report(course, ReportForm.at("2026-03-07", "10:45").soft("still")).orThrow();

    assertThat(world.file(course).reports().getLast().fact().soft())
        .isEqualTo(new SoftAfter.AtLeast(TimeSpan.ofMinutes(0)));
    assertThat(view().day().need()).isEqualTo(Need.EMERGENCY);
  }

  @Test
  void of_a_screening_only_what_stops_is_taken_and_no_no_gets_a_date_that_is_not_known() {
    aDayAhead();

    assertThat(
            world.screenings().answer(Staff.EDUCATOR, course, ScreeningForm.stillTrue()).faults())
        .singleElement()
        .asString()
        .contains("a no counts until a date");
    world.answer(course, Condition.TRAZODONE, Answer.YES);
    assertThat(world.file(course).screening().answerTo(Condition.TRAZODONE)).isEqualTo(Answer.YES);
  }

  @Test
  void of_an_examination_only_what_it_found_is_taken_whatever_day_the_clock_says() {
    Instant truth = world.now();
    world.setClock(truth.minus(Duration.ofDays(1)));
    var watch = new ClockWatch(world::now, () -> 0, Optional.empty());
    watch.told(truth);
    world.judgeClockBy(watch::belief);

    assertThat(world.screenings().examine(Staff.EDUCATOR, course, "2026-03-07", "no", "").faults())
        .singleElement()
        .asString()
        .contains("It is not known what time it is");
    world.screenings().examine(Staff.EDUCATOR, course, "2026-03-07", "yes", "").orThrow();
  }

  @Test
  void last_night_and_today_are_asked_back_as_a_date_while_the_day_is_not_known() {
    aDayAhead();

    assertThat(
            world.report(course, ReportForm.at("", "10:45").with(ReportPart.DAY, "today")).faults())
        .singleElement()
        .asString()
        .contains("write the date");
  }

  @Test
  void nobody_has_confirmed_and_nothing_answers_so_it_is_not_known_until_somebody_has() {
    Instant later = changes().getFirst().plus(Duration.ofHours(3));
    world.setClock(later);
    var watch = new ClockWatch(world::now, () -> 0, Optional.of(later));
    world.judgeClockBy(watch::belief);
    assertThat(view().day().now()).isEqualTo(new MayInject.Stopped(MayInject.Why.CLOCK_NOT_KNOWN));

    watch.confirmed("Ines Halloran");

    assertThat(saysYes()).isTrue();
    assertThat(watch.belief()).isInstanceOf(ClockBelief.NotCompared.class);
    assertThat(view().now().then()).contains("Asked ").contains("a clock that is not compared");
  }

  @Test
  void a_visit_over_which_the_clock_jumps_can_be_written_down_and_offers_no_second_dose() {
    Instant truth = Instant.parse("2026-03-10T15:00:00Z");
    world.setClock(truth);
    var steady = new long[] {0};
    var watch = new ClockWatch(world::now, () -> steady[0], Optional.of(truth));
    watch.told(truth);
    world.judgeClockBy(watch::belief);
    world.room().start(Staff.EDUCATOR, course, new VisitForms(world).start("12")).orThrow();

    steady[0] = Duration.ofMinutes(30).toNanos();
    world.setClock(truth.plus(Duration.ofHours(30)));

    assertThat(view().day().now().isYes()).isFalse();
    assertThat(world.blocks(course)).contains(GuardRule.CLOCK_NOT_KNOWN);
    assertThat(world.room().board().getFirst().isTimeKnown()).isFalse();
  }
}
