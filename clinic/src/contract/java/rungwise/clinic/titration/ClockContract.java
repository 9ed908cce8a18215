package rungwise.clinic.titration;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.room.VisitForms;
import rungwise.dosing.guard.GuardRule;
import rungwise.quantities.Reading;

/**
 * Hours are counted as they pass, whatever the clock on the wall does: it goes forward on 8 March
 * 2026 and back on 1 November. Over any store.
 */
public abstract class ClockContract {

  private TitrationWorld world;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /** A dose is signed for the clinic. */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.open();
    world.signProposed(course);
  }

  private static Instant winter(String local) {
    return Instant.parse(local + ":00-05:00");
  }

  private static Instant summer(String local) {
    return Instant.parse(local + ":00-04:00");
  }

  private void injectedAt(String date, String time) {
    world.report(course, ReportForm.at(date, time).exactly("30")).orThrow();
  }

  private void assertOpensAt(GuardRule rule, Instant opens) {
    world.setClock(opens.minus(Duration.ofMinutes(1)));
    assertThat(world.blocks(course)).containsExactly(rule);
    world.setClock(opens);
    assertThat(world.blocks(course)).isEmpty();
  }

  private void assertRefused(Reading<Long> reading, String words) {
    assertThat(reading.faults()).singleElement().asString().contains(words);
  }

  @Test
  void twenty_four_hours_over_the_clock_going_forward_end_an_hour_later_on_the_wall() {
    world.setClock(winter("2026-03-07T22:00"));
    injectedAt("2026-03-07", "20:00");

    assertOpensAt(GuardRule.SPACING, summer("2026-03-08T21:00"));
  }

  @Test
  void twenty_four_hours_over_the_clock_going_back_end_an_hour_earlier_on_the_wall() {
    world.setClock(summer("2026-10-31T22:00"));
    injectedAt("2026-10-31", "20:00");

    assertOpensAt(GuardRule.SPACING, winter("2026-11-01T19:00"));
  }

  @Test
  void the_week_of_168_hours_over_the_clock_going_forward_ends_an_hour_later_on_the_wall() {
    world.setClock(summer("2026-03-09T22:00"));
    injectedAt("2026-03-05", "20:00");
    injectedAt("2026-03-07", "20:00");
    injectedAt("2026-03-09", "20:00");

    assertOpensAt(GuardRule.WEEKLY_COUNT, summer("2026-03-12T21:00"));
  }

  @Test
  void the_week_of_168_hours_over_the_clock_going_back_ends_an_hour_earlier_on_the_wall() {
    world.setClock(winter("2026-11-02T22:00"));
    injectedAt("2026-10-29", "20:00");
    injectedAt("2026-10-31", "20:00");
    injectedAt("2026-11-02", "20:00");

    assertOpensAt(GuardRule.WEEKLY_COUNT, winter("2026-11-05T19:00"));
  }

  @Test
  void a_time_that_never_was_is_refused_in_a_report_and_in_the_clinic() {
    world.setClock(summer("2026-03-08T09:00"));

    for (String never : new String[] {"02:00", "02:59"}) {
      assertRefused(world.report(course, ReportForm.at("2026-03-08", never)), "There was no");
      assertRefused(start("2026-03-08", never, Occurrence.NOT_SAID), "There was no");
    }

    assertThat(world.report(course, ReportForm.at("2026-03-08", "01:59")).faults()).isEmpty();
    assertThat(world.report(course, ReportForm.at("2026-03-08", "03:00")).faults()).isEmpty();
  }

  private Reading<Long> start(String date, String time, Occurrence occurrence) {
    return world
        .room()
        .start(Staff.EDUCATOR, course, new VisitForms(world).startAt(date, time, occurrence));
  }

  @Test
  void a_time_that_came_twice_is_asked_back_and_the_two_are_an_hour_apart() {
    world.setClock(winter("2026-11-01T09:00"));
    for (String twice : new String[] {"01:00", "01:59"}) {
      assertRefused(world.report(course, ReportForm.at("2026-11-01", twice)), "came twice");
      assertRefused(start("2026-11-01", twice, Occurrence.NOT_SAID), "came twice");
    }
    ReportForm half = ReportForm.at("2026-11-01", "01:30").exactly("30");

    world.report(course, half.occurrence(Occurrence.FIRST)).orThrow();
    world.report(course, half.occurrence(Occurrence.SECOND)).orThrow();

    assertThat(world.file(course).reports())
        .extracting(written -> written.fact().injectedAt())
        .containsExactly(summer("2026-11-01T01:30"), winter("2026-11-01T01:30"));
  }

  @Test
  void which_of_two_times_was_meant_decides_when_24_hours_are_over() {
    world.setClock(winter("2026-11-01T09:00"));
    ReportForm half = ReportForm.at("2026-11-01", "01:30").exactly("30");

    world.report(course, half.occurrence(Occurrence.SECOND)).orThrow();

    assertOpensAt(GuardRule.SPACING, winter("2026-11-02T01:30"));
    world
        .report(
            course, half.occurrence(Occurrence.FIRST).correcting(world.lastEntry(course), "first"))
        .orThrow();
    assertOpensAt(GuardRule.SPACING, winter("2026-11-02T00:30"));
  }
}
