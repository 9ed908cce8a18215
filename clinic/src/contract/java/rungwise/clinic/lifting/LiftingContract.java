package rungwise.clinic.lifting;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
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
import rungwise.dosing.guard.GuardRule;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/** Who lifts what a report stopped or closed, and by which words, over any store. */
public abstract class LiftingContract {

  private static final String PRESCRIBER_ONLY = "Only a prescriber can do that.";

  private TitrationWorld world;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /** He was fine on 0.12 mL and has 0.25 mL signed for home, which he injected on 4 March. */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.open();
    world.makeReady(course);
    world.signProposed(course);
    world.pass(Duration.ofDays(2));
    world
        .report(course, ReportForm.at("2026-03-02", "20:00").mark("12").grade("2").exactly("20"))
        .orThrow();
    world.sign(course, SignForms.atHome(world.proposed(course))).orThrow();
    world.pass(Duration.ofDays(2));
  }

  private static ReportForm late() {
    return ReportForm.at("2026-03-04", "20:00").mark("25").grade("4");
  }

  private void report(ReportForm form) {
    world.report(course, form).orThrow();
  }

  private void correct(ReportForm form) {
    report(form.correcting(world.lastEntry(course), "asked again"));
  }

  private void withdraw() {
    world
        .titration()
        .withdraw(Staff.EDUCATOR, course, world.lastEntry(course), "another man's")
        .orThrow();
  }

  private Reading<Long> confirm(Account actor, String reason) {
    return world.lifting().confirmCorrection(actor, course, world.lastEntry(course), reason);
  }

  private int openEmergencies() {
    return world.state(course).question().history().openEmergencies().size();
  }

  private boolean isClosed(long microlitres) {
    return world.state(course).advice().verdictsOn(Volume.ofMicrolitres(microlitres)).stream()
        .anyMatch(verdict -> verdict.rule() == GuardRule.VOLUME_CLOSED);
  }

  @Test
  void a_possible_emergency_stays_open_when_it_is_corrected_to_less_or_withdrawn() {
    report(late().atLeast("235"));
    assertThat(openEmergencies()).isEqualTo(1);

    correct(late().soft("not_known"));
    assertThat(openEmergencies()).isEqualTo(1);

    correct(late().atLeast("90"));
    assertThat(openEmergencies()).isEqualTo(1);

    withdraw();
    assertThat(openEmergencies()).isEqualTo(1);
    assertThat(world.blocks(course)).contains(GuardRule.EMERGENCY_OPEN, GuardRule.VOLUME_CLOSED);
  }

  @Test
  void a_known_end_before_four_hours_lifts_a_possible_emergency_and_opens_no_volume() {
    report(late().atLeast("130"));

    correct(late().exactly("50"));

    assertThat(openEmergencies()).isZero();
    assertThat(world.blocks(course)).containsExactly(GuardRule.VOLUME_CLOSED);
  }

  @Test
  void an_end_that_was_possible_takes_effect_at_once() {
    report(late().atLeast("90"));

    correct(late().exactly("100"));

    assertThat(world.blocks(course)).containsExactly(GuardRule.SIGN_ANEW);
    assertThat(confirm(Staff.PRESCRIBER, "asked again").faults()).hasSize(1);
  }

  @Test
  void an_end_that_contradicts_what_was_said_keeps_the_volume_closed() {
    report(late().exactly("150"));

    correct(late().exactly("40"));

    assertThat(world.blocks(course)).containsExactly(GuardRule.VOLUME_CLOSED);
    assertThat(isClosed(120)).isFalse();
  }

  @Test
  void another_volume_drawn_keeps_what_was_said_of_the_first_one() {
    report(late().exactly("150"));

    correct(late().mark("50").exactly("150"));

    assertThat(isClosed(250)).isTrue();
    confirm(Staff.PRESCRIBER, "the mark was read anew").orThrow();
    assertThat(isClosed(250)).isFalse();
    assertThat(isClosed(500)).isTrue();
  }

  @Test
  void a_smaller_volume_drawn_closes_that_one_too_and_takes_nothing_away() {
    report(late().exactly("150"));

    correct(late().mark("12").exactly("150"));

    assertThat(isClosed(120)).isTrue();
    assertThat(confirm(Staff.PRESCRIBER, "the mark was read anew").faults()).hasSize(1);
  }

  @Test
  void over_an_hour_goes_on_forbidding_more_until_the_correction_is_confirmed() {
    report(late().exactly("90"));

    correct(late().grade("2").exactly("40"));

    assertThat(world.state(course).advice().verdictsOn(Volume.ofMicrolitres(500)))
        .anyMatch(verdict -> verdict.rule() == GuardRule.HIGHER_AFTER_LONG);
    confirm(Staff.PRESCRIBER, "90 was his pulse").orThrow();
    assertThat(world.state(course).advice().isAllowed(Volume.ofMicrolitres(500))).isTrue();
  }

  @Test
  void what_is_said_of_the_same_injection_now_is_no_answer_to_what_was_said_before() {
    report(late().exactly("90"));

    correct(ReportForm.at("2026-03-04", "20:30").mark("25").grade("2").exactly("40"));

    assertThat(world.state(course).advice().verdictsOn(Volume.ofMicrolitres(500)))
        .anyMatch(verdict -> verdict.rule() == GuardRule.HIGHER_AFTER_LONG);
  }

  @Test
  void only_a_prescriber_confirms_and_writes_why() {
    report(late().exactly("150"));
    correct(late().exactly("40"));

    for (Account other : List.of(Staff.EDUCATOR, Staff.ON_CALL, Staff.AUDITOR)) {
      assertThat(confirm(other, "he said so").faults()).containsExactly(PRESCRIBER_ONLY);
    }
    assertThat(confirm(Staff.PRESCRIBER, " ").faults())
        .containsExactly("Write the reason: it stays on record.");
    assertThat(isClosed(250)).isTrue();
  }

  @Test
  void a_confirmed_correction_does_not_cover_what_is_said_after_it() {
    report(late().exactly("150"));
    correct(late().exactly("40"));
    var correction = world.lastEntry(course);
    confirm(Staff.PRESCRIBER, "150 was his pulse").orThrow();
    assertThat(isClosed(250)).isFalse();

    report(late().exactly("130").correcting(correction, "asked a third time"));
    correct(late().exactly("45"));

    assertThat(isClosed(250)).isTrue();
  }

  @Test
  void a_review_without_an_end_is_refused_where_no_report_says_it() {
    report(late().atLeast("235"));

    assertThat(world.lifting().reviewEmergency(Staff.PRESCRIBER, course, "examined").faults())
        .singleElement()
        .asString()
        .startsWith("How it ended is not on record: enter the report with its end");
    assertThat(openEmergencies()).isEqualTo(1);

    correct(late().exactly("260"));
    world.lifting().reviewEmergency(Staff.PRESCRIBER, course, "examined").orThrow();
    assertThat(openEmergencies()).isZero();
  }

  @Test
  void an_end_that_was_said_first_and_taken_back_is_no_end() {
    report(late().exactly("240"));
    correct(late().atLeast("150"));
    withdraw();
    assertThat(openEmergencies()).isEqualTo(1);

    assertThat(world.lifting().reviewEmergency(Staff.PRESCRIBER, course, "examined").faults())
        .singleElement()
        .asString()
        .startsWith("How it ended is not on record");
    assertThat(openEmergencies()).isEqualTo(1);

    review(Instant.parse("2026-03-05T06:00:00Z")).orThrow();
    assertThat(openEmergencies()).isZero();
  }

  @Test
  void an_end_that_cannot_be_known_is_reviewed_by_when_he_was_seen_soft() {
    report(late().atLeast("235"));
    Instant lastSeenFirm = Instant.parse("2026-03-05T04:55:00Z"); // 20:00 in New York and 235 min

    assertThat(review(world.now().plusSeconds(1)).faults())
        .singleElement()
        .asString()
        .contains("is still to come");
    assertThat(review(lastSeenFirm).faults())
        .singleElement()
        .asString()
        .contains("is not after he was last seen firm");
    assertThat(openEmergencies()).isEqualTo(1);

    review(lastSeenFirm.plusSeconds(60)).orThrow();
    assertThat(openEmergencies()).isZero();
    assertThat(isClosed(250)).isTrue();
  }

  private Reading<Long> review(Instant soft) {
    return world
        .lifting()
        .reviewEmergency(Staff.PRESCRIBER, course, Optional.of(soft), "the end cannot be known");
  }

  @Test
  void after_an_emergency_home_waits_for_a_dose_in_the_clinic_and_an_examination() {
    report(late().exactly("260"));
    world.lifting().reviewEmergency(Staff.PRESCRIBER, course, "no harm").orThrow();
    assertThat(world.blocks(course)).containsExactly(GuardRule.NO_ORDER);
    assertThat(isBarredFromHome()).isTrue();

    world.pass(Duration.ofDays(2));
    world.sign(course, world.proposed(course)).orThrow();
    report(ReportForm.at("2026-03-08", "09:00").mark("12").grade("3").exactly("40"));
    assertThat(isBarredFromHome()).isTrue();

    world
        .screenings()
        .examine(Staff.PRESCRIBER, course, "2026-03-08", "no", "felt both sides")
        .orThrow();
    assertThat(isBarredFromHome()).isFalse();
  }

  /**
   * The emergency began in the evening. An examination of that morning is written down afterwards.
   */
  @Test
  void an_examination_counts_after_an_emergency_only_if_it_is_known_to_be_after_it() {
    report(late().exactly("260"));
    Instant emergency = world.state(course).question().history().last().orElseThrow().at();
    LocalDate day = world.room().time().dayOf(emergency);
    world.lifting().reviewEmergency(Staff.PRESCRIBER, course, "no harm").orThrow();
    world.pass(Duration.ofDays(2));

    examine(day, "");
    assertThat(isNotExamined()).isTrue();
    examine(day, world.room().time().timeText(emergency.minus(Duration.ofMinutes(1))));
    assertThat(isNotExamined()).isTrue();
    examine(day, world.room().time().timeText(emergency.plus(Duration.ofMinutes(1))));
    assertThat(isNotExamined()).isFalse();
  }

  @Test
  void an_examination_of_the_day_after_an_emergency_needs_no_time() {
    report(late().exactly("260"));
    Instant emergency = world.state(course).question().history().last().orElseThrow().at();
    world.lifting().reviewEmergency(Staff.PRESCRIBER, course, "no harm").orThrow();
    world.pass(Duration.ofDays(2));

    examine(world.room().time().dayOf(emergency).plusDays(1), "");

    assertThat(isNotExamined()).isFalse();
  }

  private void examine(LocalDate day, String clock) {
    world.screenings().examine(Staff.PRESCRIBER, course, day.toString(), clock, "no", "").orThrow();
  }

  private boolean isNotExamined() {
    return world.state(course).question().notExaminedSince().isPresent();
  }

  private boolean isBarredFromHome() {
    return world.state(course).advice().homeVerdicts().stream()
        .anyMatch(verdict -> verdict.rule() == GuardRule.AFTER_EMERGENCY);
  }
}
