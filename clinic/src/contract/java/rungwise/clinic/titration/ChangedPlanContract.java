package rungwise.clinic.titration;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.function.Predicate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.Plan;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.supply.VialForm;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/** Another preparation, and reports of the one before it, over any store. */
public abstract class ChangedPlanContract {

  private static final PreparationId FIRST = SamplePreparations.ALPROSTADIL_20.id();
  private static final PreparationId NEXT = SamplePreparations.ALPROSTADIL_40.id();

  private TitrationWorld world;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /** He was fine on 0.12 mL of the first preparation, which is signed again for the clinic. */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.open();
    world.signProposed(course);
    world.pass(Duration.ofDays(2));
    world.report(course, ReportForm.at("2026-03-02", "20:00")).orThrow();
    world.signProposed(course);
  }

  private Reading<Long> choose(PreparationId id, String barrel, String protocol, String reason) {
    Predicate<PreparationId> inUse = world::isInUse;
    return world
        .titration()
        .choosePlan(Staff.PRESCRIBER, course, new Plan(id, barrel, protocol, 1), inUse, reason);
  }

  private void change() {
    world.pass(Duration.ofDays(2));
    world.choosePreparation(course, SamplePreparations.ALPROSTADIL_40).orThrow();
  }

  private InjectionReported lastReport() {
    return world.file(course).reports().getLast().fact();
  }

  private void assertRefused(Reading<Long> reading, String words) {
    assertThat(reading.faults()).singleElement().asString().contains(words);
  }

  @Test
  void another_preparation_begins_as_a_new_test_at_no_more_than_he_tolerated() {
    change();

    assertThat(world.file(course).signedDose()).isEmpty();
    assertThat(world.blocks(course))
        .containsExactlyInAnyOrder(GuardRule.NO_ORDER, GuardRule.VIAL_DIFFERS);
    assertThat(world.state(course).advice().decision())
        .isEqualTo(new Decision.Start(Volume.ofMicrolitres(60)));
    world.receive(course, VialForm.of(SamplePreparations.ALPROSTADIL_40));
    world.makeReady(course);
    assertThat(world.sign(course, SignForms.atHome(world.proposed(course))).faults())
        .contains("Not possible: " + GuardRule.FIRST_IN_CLINIC.wording());
  }

  @Test
  void a_late_report_that_leaves_no_first_dose_suspends_the_signed_one_and_the_page_still_opens() {
    EntryId report = world.file(course).reports().getLast().entry().id();
    world.pass(Duration.ofDays(2));
    world.choosePreparation(course, SamplePreparations.THREE_DRUG).orThrow();
    world.receive(course, VialForm.of(SamplePreparations.THREE_DRUG));
    assertThat(world.state(course).advice().decision()).isInstanceOf(Decision.Start.class);

    ReportForm late =
        ReportForm.at("2026-03-02", "20:00").exactly("90").correcting(report, "it was longer");
    world.report(course, late).orThrow();

    assertThat(world.state(course).advice().decision()).isEqualTo(new Decision.Refer());
    assertThat(world.state(course).advice().reason().rule())
        .isEqualTo(TitrationRule.NOTHING_TOLERATED_BEFORE);
    assertThat(world.state(course).question().ladder().rungs())
        .noneMatch(volume -> world.state(course).advice().isAllowed(volume));
  }

  @Test
  void a_course_runs_on_the_protocol_that_was_chosen_last_and_on_no_other() {
    world.pass(Duration.ofDays(10));
    CourseId other = world.open();

    choose(FIRST, "u100-1", "strict", "").orThrow();

    var running = world.titration().runningOn();
    assertThat(running).containsOnlyKeys("label version 1", "strict version 1");
    assertThat(running.get("label version 1")).extracting(CourseFile::id).containsExactly(other);
    assertThat(running.get("strict version 1")).extracting(CourseFile::id).containsExactly(course);
  }

  @Test
  void a_late_report_counts_for_the_preparation_that_he_had_then() {
    change();

    Reading<Long> reading =
        world.report(course, ReportForm.at("2026-03-05", "20:00").mark("10").exactly("150"));

    assertThat(lastReport().preparation()).isEqualTo(FIRST);
    assertThat(lastReport().ordered()).contains(Volume.ofMicrolitres(120));
    assertThat(reading.notices())
        .contains(
            "Recorded as an injection of Alprostadil 20 (alprostadil 20 mcg per mL),"
                + " which was his preparation at that time.");
  }

  @Test
  void an_injection_after_the_change_counts_for_the_new_preparation() {
    change();
    world.receive(course, VialForm.of(SamplePreparations.ALPROSTADIL_40));
    world.pass(Duration.ofDays(1));

    Reading<Long> reading = world.report(course, ReportForm.at("2026-03-06", "10:00").mark("6"));

    assertThat(reading.notices()).noneMatch(notice -> notice.startsWith("Recorded as"));
    assertThat(lastReport().preparation()).isEqualTo(NEXT);
    assertThat(lastReport().ordered()).isEmpty();
  }

  @Test
  void a_corrected_report_stays_one_of_what_was_injected() {
    EntryId report = world.file(course).reports().getFirst().entry().id();
    change();
    world.chooseBarrel(course, "u100-0.5").orThrow();

    world
        .report(
            course,
            ReportForm.at("2026-03-02", "20:00").exactly("150").correcting(report, "asked again"))
        .orThrow();

    assertThat(lastReport().preparation()).isEqualTo(FIRST);
    assertThat(lastReport().barrel()).isEqualTo("u100-1");
    var history = world.state(course).question().history();
    assertThat(history.closing(SamplePreparations.ALPROSTADIL_20, Volume.ofMicrolitres(120)))
        .isPresent();
    assertThat(history.closing(SamplePreparations.ALPROSTADIL_40, Volume.ofMicrolitres(50)))
        .isEmpty();
  }

  /** 0.12 mL of 20 mcg/mL and 0.06 mL of 40 mcg/mL both hold 2.4 mcg. */
  @Test
  void a_dose_that_lasted_two_hours_stays_closed_in_another_strength() {
    world.pass(Duration.ofDays(3));
    world.report(course, ReportForm.at("2026-03-05", "20:00").exactly("150")).orThrow();
    change();
    var history = world.state(course).question().history();

    assertThat(history.closing(SamplePreparations.ALPROSTADIL_40, Volume.ofMicrolitres(60)))
        .isPresent();
    assertThat(world.state(course).advice().isAllowed(Volume.ofMicrolitres(60))).isFalse();
  }

  @Test
  void a_changed_preparation_needs_a_reason_and_a_changed_syringe_does_not() {
    assertRefused(choose(NEXT, "u100-1", "label", " "), "Write why the preparation is changed");
    assertThat(choose(FIRST, "u100-0.5", "label", "").faults()).isEmpty();
  }

  @Test
  void a_plan_that_is_none_changes_nothing() {
    long before = world.file(course).basis();
    world.withdraw(NEXT);

    assertRefused(choose(FIRST, "u100-1", "label", "x"), "That is the plan already");
    assertRefused(choose(NEXT, "u100-1", "label", "x"), "from the clinic's list");
    assertRefused(choose(FIRST, "u100-1", "another", "x"), "a protocol that the clinic has signed");
    assertRefused(choose(FIRST, "u100-0.5", "mixture", "x"), "is not written for");
    assertThat(world.file(course).basis()).isEqualTo(before);
  }
}
