package rungwise.clinic.running;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.clock.ClockBelief;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.day.MayInject;
import rungwise.clinic.day.Need;
import rungwise.clinic.people.Account;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.sheet.DayView;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/** Pausing, ending and opening a course again, over any store. */
public abstract class RunningContract {

  private static final long FIRST_DOSE = 120;
  private static final ClockBelief.Sign JUMPED =
      new ClockBelief.Sign(ClockBelief.Sign.What.TIME_SOURCE, Duration.ofDays(1));
  private static final String WHY = "he goes into hospital";

  private TitrationWorld world;
  private Running running;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /** A course whose first dose was signed. */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.open();
    world.signProposed(course);
    running = new Running(world.ports());
  }

  private static EndDraft end(String why, String vials, String after) {
    return new EndDraft(why, "", vials, after, "", "he has decided");
  }

  private static EndDraft wish() {
    return end("HIS_WISH", "RETURNED", "TABLETS");
  }

  private DayView day() {
    return new CourseViews(new ClinicTime(ZoneId.of("America/New_York")), id -> "Ines Halloran")
        .dayOf(world.state(course));
  }

  private long basis() {
    return world.file(course).basis();
  }

  private Need need() {
    return day().day().need();
  }

  private boolean leadsAnywhere() {
    return world.state(course).mayInject().isClear()
        || world.state(course).advice().decision().proposed().isPresent()
        || world.sign(course, world.instead(course, FIRST_DOSE)).found().isPresent();
  }

  private void worry() {
    world.pass(Duration.ofHours(6));
    world.report(course, ReportForm.at("2026-03-02", "10:30").exactly("300")).orThrow();
  }

  @Test
  void anybody_who_treats_him_pauses_it_and_every_order_is_held() {
    for (Account actor : List.of(Staff.EDUCATOR, Staff.ON_CALL, Staff.PRESCRIBER)) {
      running.pause(actor, course, WHY).orThrow();

      assertThat(leadsAnywhere()).isFalse();
      assertThat(day().day().now()).isEqualTo(new MayInject.Stopped(MayInject.Why.PAUSED));
      assertThat(day().now().then()).contains("Ines Halloran").contains(WHY);
      assertThat(need()).isEqualTo(Need.PAUSED);

      running.resume(Staff.PRESCRIBER, course, basis(), "seen, and well").orThrow();
      assertThat(world.state(course).mayInject().isClear()).isTrue();
      assertThat(world.file(course).signedDose()).isPresent();
    }
  }

  @Test
  void nobody_but_a_prescriber_lets_it_go_on_ends_it_or_opens_it_again() {
    running.pause(Staff.EDUCATOR, course, WHY).orThrow();
    assertThat(running.resume(Staff.EDUCATOR, course, basis(), WHY).found()).isEmpty();
    assertThat(running.end(Staff.ON_CALL, course, wish()).found()).isEmpty();
    running.end(Staff.PRESCRIBER, course, wish()).orThrow();
    assertThat(running.reopen(Staff.EDUCATOR, course, basis(), WHY).found()).isEmpty();
    assertThat(running.pause(Staff.AUDITOR, course, WHY).found()).isEmpty();

    assertThat(leadsAnywhere()).isFalse();
  }

  /** Two people see two reasons: neither is lost, and nobody lifts the one that he has not read. */
  @Test
  void a_pause_for_another_reason_is_lifted_only_by_who_has_read_it() {
    running.pause(Staff.EDUCATOR, course, WHY).orThrow();
    long shown = basis();
    running.pause(Staff.ON_CALL, course, "chest pain on Sunday").orThrow();

    assertThat(day().now().then()).contains(WHY).contains("chest pain on Sunday");
    assertThat(running.resume(Staff.PRESCRIBER, course, shown, "he is home again").found())
        .isEmpty();
    assertThat(leadsAnywhere()).isFalse();
    running.resume(Staff.PRESCRIBER, course, basis(), "seen, and well").orThrow();
    assertThat(world.state(course).mayInject().isClear()).isTrue();

    running.end(Staff.PRESCRIBER, course, wish()).orThrow();
    long ended = basis();
    worry();
    assertThat(running.reopen(Staff.PRESCRIBER, course, ended, WHY).found()).isEmpty();
  }

  @Test
  void a_reason_is_asked_and_what_is_so_already_is_refused() {
    assertThat(running.pause(Staff.EDUCATOR, course, " ").placed())
        .containsExactly(new Fault(CourseChanges.REASON, CourseChanges.REASON_MISSING));
    assertThat(running.resume(Staff.PRESCRIBER, course, basis(), WHY).found()).isEmpty();
    assertThat(running.reopen(Staff.PRESCRIBER, course, basis(), WHY).found()).isEmpty();
    running.pause(Staff.EDUCATOR, course, WHY).orThrow();
    running.end(Staff.PRESCRIBER, course, wish()).orThrow();
    assertThat(running.end(Staff.PRESCRIBER, course, wish()).found()).isEmpty();
    assertThat(running.pause(Staff.EDUCATOR, course, WHY).found()).isEmpty();
    assertThat(running.resume(Staff.PRESCRIBER, course, basis(), WHY).found()).isEmpty();
  }

  @Test
  void a_pause_is_taken_while_nobody_knows_what_time_it_is_and_nothing_that_lifts_it() {
    world.judgeClockBy(() -> new ClockBelief.Wrong(List.of(JUMPED)));
    running.pause(Staff.EDUCATOR, course, WHY).orThrow();

    assertThat(running.resume(Staff.PRESCRIBER, course, basis(), WHY).faults())
        .containsExactly(CourseChanges.CLOCK_NOT_KNOWN);
    assertThat(world.blocks(course)).contains(GuardRule.COURSE_PAUSED);
  }

  @Test
  void an_emergency_and_closed_volumes_stay_whatever_is_paused_ended_or_opened_again() {
    worry();
    running.pause(Staff.EDUCATOR, course, WHY).orThrow();
    assertThat(need()).isEqualTo(Need.EMERGENCY_OVER);
    running.end(Staff.PRESCRIBER, course, wish()).orThrow();
    assertThat(need()).isEqualTo(Need.EMERGENCY_OVER);
    assertThat(world.blocks(course)).contains(GuardRule.EMERGENCY_OPEN, GuardRule.COURSE_ENDED);
    assertThat(isClosed()).isTrue();

    running.reopen(Staff.PRESCRIBER, course, basis(), "he wants it again").orThrow();
    assertThat(need()).isEqualTo(Need.EMERGENCY_OVER);
    assertThat(isClosed()).isTrue();
    world
        .lifting()
        .reviewEmergency(Staff.PRESCRIBER, course, Optional.of(world.now()), "seen, and soft")
        .orThrow();
    assertThat(isClosed()).isTrue();
  }

  private boolean isClosed() {
    var question = world.state(course).question();
    return question
        .history()
        .closing(question.preparation(), Volume.ofMicrolitres(FIRST_DOSE))
        .isPresent();
  }

  @Test
  void a_report_that_comes_late_of_an_ended_course_brings_it_back_onto_the_list() {
    running.end(Staff.PRESCRIBER, course, wish()).orThrow();
    assertThat(need()).isEqualTo(Need.ENDED);
    worry();
    assertThat(need()).isEqualTo(Need.EMERGENCY_OVER);
  }

  @Test
  void no_order_outlives_the_end_and_opening_it_again_brings_none_back() {
    running.end(Staff.PRESCRIBER, course, wish()).orThrow();
    assertThat(world.file(course).signedDose()).isEmpty();
    assertThat(day().day().now()).isEqualTo(new MayInject.Stopped(MayInject.Why.ENDED));
    assertThat(leadsAnywhere()).isFalse();

    running.reopen(Staff.PRESCRIBER, course, basis(), "he wants it again").orThrow();
    assertThat(world.file(course).signedDose()).isEmpty();
    assertThat(world.state(course).mayInject().isClear()).isFalse();
    assertThat(need()).isEqualTo(Need.SIGNATURE);
    world.signProposed(course);
    assertThat(world.state(course).mayInject().isClear()).isTrue();
  }

  @Test
  void everything_that_is_wrong_with_an_end_is_said_at_once() {
    Reading<Long> read =
        running.end(
            Staff.PRESCRIBER, course, new EndDraft("", "2026-03-09", "", "IMPLANT", "", " "));

    assertThat(read.placed())
        .extracting(Fault::field)
        .containsExactlyInAnyOrder(
            EndDraft.WHY,
            EndDraft.LAST_DOSE,
            EndDraft.VIALS,
            EndDraft.REFERRED_TO,
            CourseChanges.REASON);
    assertThat(world.file(course).signedDose()).isPresent();
  }

  @Test
  void what_had_been_decided_is_decided_again_in_the_same_way() {
    running.pause(Staff.EDUCATOR, course, WHY).orThrow();
    running.resume(Staff.PRESCRIBER, course, basis(), WHY).orThrow();
    running.end(Staff.PRESCRIBER, course, wish()).orThrow();

    assertThat(world.titration().replays(world.file(course)))
        .isNotEmpty()
        .allSatisfy(replay -> assertThat(replay.differences()).isEmpty());
  }

  @Test
  void what_treats_him_after_the_end_stands_beside_the_answer() {
    running
        .end(
            Staff.PRESCRIBER,
            course,
            new EndDraft("NO_RESPONSE", "", "NONE_LEFT", "IMPLANT", "Dr Sample, urology", WHY))
        .orThrow();

    assertThat(day().now().then())
        .contains("After it: assessment for an implant, referred to Dr Sample, urology");
  }
}
