package rungwise.clinic.lifting;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.people.Account;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.SignForms;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.guard.GuardRule;
import rungwise.quantities.Volume;

/** What a long erection closes and who opens it again, over any store. */
public abstract class LongErectionContract {

  private static final String PRESCRIBER_ONLY = "Only a prescriber can do that.";
  private static final String REASON_MISSING = "Write the reason: it stays on record.";

  private TitrationWorld world;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    anotherMan();
  }

  /** He was fine on 0.12 mL and has 0.25 mL signed for home; nothing stops him. */
  private void anotherMan() {
    world.setClock(TitrationWorld.START);
    course = world.open();
    world.makeReady(course);
    world.signProposed(course);
    world.pass(Duration.ofDays(2));
    world.report(course, injection("2026-03-02").mark("12").grade("2").exactly("20")).orThrow();
    world.sign(course, SignForms.atHome(world.proposed(course))).orThrow();
    assertThat(world.state(course).mayInject().isClear()).isTrue();
  }

  private static ReportForm injection(String date) {
    return ReportForm.at(date, "20:00").mark("25").grade("4");
  }

  /** He injected the signed 0.25 mL on the evening of 4 March and reports it two days later. */
  private void reportLate(ReportForm form) {
    world.pass(Duration.ofDays(2));
    world.report(course, form).orThrow();
  }

  private static ReportForm late() {
    return injection("2026-03-04");
  }

  @Test
  void a_late_report_of_two_hours_suspends_the_dose_in_force() {
    reportLate(late().exactly("120"));

    assertThat(world.blocks(course)).containsExactly(GuardRule.VOLUME_CLOSED);
    assertThat(world.state(course).advice().decision())
        .isEqualTo(new Decision.StepDown(Volume.ofMicrolitres(120)));
    assertThat(world.file(course).signedDose()).isPresent();
  }

  @Test
  void a_late_report_of_a_little_less_than_two_hours_waits_for_a_signature_only() {
    reportLate(late().exactly("119.999"));

    assertThat(world.blocks(course)).containsExactly(GuardRule.SIGN_ANEW);
  }

  @Test
  void a_corrected_report_suspends_the_dose_and_another_correction_lifts_that() {
    reportLate(late().exactly("50"));
    assertThat(world.blocks(course)).isEmpty();

    correct(late().atLeast("50"));
    assertThat(world.blocks(course))
        .containsExactly(GuardRule.EMERGENCY_OPEN, GuardRule.VOLUME_CLOSED);

    correct(late().exactly("55"));
    assertThat(world.blocks(course)).isEmpty();
  }

  private void correct(ReportForm form) {
    world.report(course, form.correcting(world.lastEntry(course), "asked again")).orThrow();
  }

  private void withdraw() {
    world
        .titration()
        .withdraw(Staff.EDUCATOR, course, world.lastEntry(course), "another man's")
        .orThrow();
  }

  @Test
  void still_firm_at_half_an_hour_is_lifted_by_the_correction_alone() {
    reportLate(late().atLeast("30"));
    assertThat(world.blocks(course)).contains(GuardRule.EMERGENCY_OPEN);

    correct(late().exactly("50"));

    assertThat(world.blocks(course)).isEmpty();
  }

  @Test
  void an_emergency_in_so_many_words_stays_open_when_it_is_corrected() {
    for (ReportForm said :
        List.of(
            late().exactly("240"),
            late().atLeast("240"),
            late().between("200", "240.001"),
            late().soft("from_240"))) {
      anotherMan();
      reportLate(said);

      correct(late().exactly("50"));

      assertThat(world.blocks(course))
          .containsExactly(GuardRule.EMERGENCY_OPEN, GuardRule.VOLUME_CLOSED);
      confirm();
      assertThat(world.blocks(course)).isEmpty();
    }
  }

  @Test
  void what_was_said_to_be_less_than_four_hours_is_no_emergency_once_it_is_corrected() {
    for (ReportForm said :
        List.of(
            late().exactly("239.999"),
            late().atLeast("239.999"),
            late().between("200", "240"),
            late().soft("from_120"))) {
      anotherMan();
      reportLate(said);

      correct(late().exactly("50"));

      assertThat(world.blocks(course)).containsExactly(GuardRule.VOLUME_CLOSED);
      confirm();
      assertThat(world.blocks(course)).isEmpty();
    }
  }

  private void confirm() {
    world
        .lifting()
        .confirmCorrection(
            Staff.PRESCRIBER, course, world.lastEntry(course), "he looked at his notes")
        .orThrow();
  }

  @Test
  void an_emergency_stays_open_when_its_report_is_withdrawn() {
    reportLate(late().exactly("240"));

    withdraw();

    assertThat(world.blocks(course))
        .containsExactly(GuardRule.EMERGENCY_OPEN, GuardRule.VOLUME_CLOSED);
    review();
    assertThat(world.blocks(course)).containsExactly(GuardRule.NO_ORDER);
    assertThat(isClosed(250)).isTrue();
  }

  private boolean isClosed(long microlitres) {
    return world.state(course).advice().verdictsOn(Volume.ofMicrolitres(microlitres)).stream()
        .anyMatch(verdict -> verdict.rule() == GuardRule.VOLUME_CLOSED);
  }

  @Test
  void an_emergency_that_was_reviewed_before_its_correction_stays_reviewed() {
    reportLate(late().exactly("300"));
    var report = world.lastEntry(course);
    review();

    world.report(course, late().exactly("50").correcting(report, "asked again")).orThrow();

    assertThat(world.blocks(course)).containsExactly(GuardRule.NO_ORDER);
    assertThat(isClosed(250)).isTrue();
    confirm();
    assertThat(isClosed(250)).isFalse();
  }

  private void review() {
    world.lifting().reviewEmergency(Staff.PRESCRIBER, course, "examined").orThrow();
  }

  @Test
  void a_withdrawn_report_goes_on_closing_until_a_prescriber_confirms_it() {
    reportLate(late().exactly("180"));

    withdraw();

    assertThat(world.blocks(course)).containsExactly(GuardRule.VOLUME_CLOSED);
    confirm();
    assertThat(world.blocks(course)).isEmpty();
  }

  @Test
  void four_hours_stop_every_dose_however_firm_it_was() {
    reportLate(late().grade("1").exactly("240"));

    assertThat(world.blocks(course))
        .containsExactly(GuardRule.EMERGENCY_OPEN, GuardRule.VOLUME_CLOSED);
    assertThat(world.sign(course, world.instead(course, 120)).faults())
        .singleElement()
        .asString()
        .startsWith("Not possible: An erection lasted, or may have lasted, 4 hours or more");
  }

  @Test
  void only_a_prescriber_reviews_an_emergency_and_with_a_reason() {
    reportLate(late().exactly("300"));

    for (Account other : List.of(Staff.EDUCATOR, Staff.ON_CALL, Staff.AUDITOR)) {
      assertThat(world.lifting().reviewEmergency(other, course, "seen").faults())
          .containsExactly(PRESCRIBER_ONLY);
    }
    assertThat(world.lifting().reviewEmergency(Staff.PRESCRIBER, course, " ").faults())
        .containsExactly(REASON_MISSING);
    assertThat(world.blocks(course)).contains(GuardRule.EMERGENCY_OPEN);
  }

  @Test
  void a_reviewed_emergency_leaves_its_volume_closed() {
    reportLate(late().exactly("300"));

    world.lifting().reviewEmergency(Staff.PRESCRIBER, course, "examined, no harm").orThrow();

    assertThat(world.blocks(course)).containsExactly(GuardRule.NO_ORDER);
    assertThat(world.last(course).reason()).contains("examined, no harm");
    assertThat(isClosed(250)).isTrue();
    world.sign(course, world.proposed(course)).orThrow();
    assertThat(world.blocks(course)).isEmpty();
  }

  @Test
  void a_review_does_not_cover_a_report_that_came_after_it() {
    reportLate(late().exactly("300"));
    world.lifting().reviewEmergency(Staff.PRESCRIBER, course, "examined").orThrow();

    world.report(course, injection("2026-03-03").exactly("250")).orThrow();

    assertThat(world.blocks(course)).contains(GuardRule.EMERGENCY_OPEN);
  }

  @Test
  void only_a_prescriber_reopens_a_volume_with_a_reason_and_only_a_closed_one() {
    reportLate(late().exactly("150"));

    for (Account other : List.of(Staff.EDUCATOR, Staff.ON_CALL, Staff.AUDITOR)) {
      assertThat(world.lifting().reopen(other, course, 250, "seen").faults())
          .containsExactly(PRESCRIBER_ONLY);
    }
    assertThat(world.lifting().reopen(Staff.PRESCRIBER, course, 250, " ").faults())
        .containsExactly(REASON_MISSING);
    for (long open : new long[] {120, 0, -1, Long.MAX_VALUE}) {
      assertThat(world.lifting().reopen(Staff.PRESCRIBER, course, open, "seen").faults())
          .singleElement()
          .asString()
          .endsWith(": nothing was changed.");
    }
    assertThat(world.blocks(course)).containsExactly(GuardRule.VOLUME_CLOSED);
  }

  @Test
  void a_reopened_volume_may_be_injected_again_and_the_ones_above_stay_closed() {
    reportLate(late().exactly("150"));

    world.lifting().reopen(Staff.PRESCRIBER, course, 250, "he had taken another drug").orThrow();

    assertThat(world.blocks(course)).isEmpty();
    assertThat(world.state(course).advice().verdictsOn(Volume.ofMicrolitres(500)))
        .anyMatch(verdict -> verdict.rule() == GuardRule.VOLUME_CLOSED);
  }

  @Test
  void a_reopening_does_not_cover_a_report_that_came_after_it() {
    reportLate(late().exactly("150"));
    world.lifting().reopen(Staff.PRESCRIBER, course, 250, "explained").orThrow();

    world.report(course, injection("2026-03-03").exactly("130")).orThrow();

    assertThat(world.blocks(course)).contains(GuardRule.VOLUME_CLOSED);
  }
}
