package rungwise.clinic.supply;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.people.Account;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.supply.Freshness;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/** What befalls a vial, over any store. */
public abstract class VialLifeContract {

  private static final String REASON = "he telephoned";

  private TitrationWorld world;
  private CourseId course;
  private EntryId vial;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /** A signed dose, ready for home, and a vial: 2026-03-02, 10:00 there. */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.openWith(SamplePreparations.ALPROSTADIL_20, "u100-1");
    world.signProposed(course);
    vial = world.receive(course, VialForm.of(SamplePreparations.ALPROSTADIL_20));
    assertThat(world.blocks(course)).isEmpty();
  }

  private static BefellDraft draft(String what) {
    return new BefellDraft(what, "2026-03-01", "", "", "", REASON);
  }

  private Reading<Long> befell(String what) {
    return world.vials().befell(Staff.EDUCATOR, course, vial, draft(what));
  }

  private Reading<Long> judge(Account actor) {
    long basis = world.file(course).basis();
    return world.vials().judge(actor, course, vial, basis, "the pharmacy answered");
  }

  @ParameterizedTest
  @ValueSource(strings = {"WARM", "ROOM", "TRAVEL", "FROZEN", "NOT_KNOWN"})
  void what_may_have_spoilt_it_stops_until_a_prescriber_has_judged_it(String what) {
    befell(what).orThrow();
    assertThat(world.blocks(course)).containsExactly(GuardRule.VIAL_TO_BE_JUDGED);
    assertThat(judge(Staff.EDUCATOR).faults()).containsExactly(By.PRESCRIBER.refusal());

    judge(Staff.PRESCRIBER).orThrow();

    assertThat(world.blocks(course)).isEmpty();
  }

  @Test
  void a_dose_that_is_signed_meanwhile_is_suspended_until_it_is_judged() {
    befell("FROZEN").orThrow();
    world.signProposed(course);
    assertThat(world.blocks(course)).containsExactly(GuardRule.VIAL_TO_BE_JUDGED);

    judge(Staff.PRESCRIBER).orThrow();

    assertThat(world.blocks(course)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"THROWN_AWAY", "EMPTY", "TAKEN_BACK"})
  void nothing_is_drawn_from_what_is_gone_until_another_vial_is_entered(String what) {
    befell(what).orThrow();
    assertThat(world.blocks(course)).containsExactly(GuardRule.VIAL_GONE);

    world.receive(course, VialForm.of(SamplePreparations.ALPROSTADIL_20).lot("B-2"));

    assertThat(world.blocks(course)).isEmpty();
  }

  @Test
  void the_refrigerator_stops_nothing_and_lifts_nothing() {
    befell("REFRIGERATOR").orThrow();
    assertThat(world.blocks(course)).isEmpty();
    befell("FROZEN").orThrow();
    befell("REFRIGERATOR").orThrow();

    assertThat(world.blocks(course)).containsExactly(GuardRule.VIAL_TO_BE_JUDGED);
  }

  @Test
  void what_comes_after_a_judgement_stops_again() {
    befell("WARM").orThrow();
    judge(Staff.PRESCRIBER).orThrow();
    befell("FROZEN").orThrow();

    assertThat(world.blocks(course)).containsExactly(GuardRule.VIAL_TO_BE_JUDGED);
  }

  @Test
  void a_judgement_of_what_was_not_read_is_refused() {
    befell("WARM").orThrow();
    long basis = world.file(course).basis();
    befell("FROZEN").orThrow();

    assertThat(world.vials().judge(Staff.PRESCRIBER, course, vial, basis, REASON).faults())
        .isNotEmpty();
    assertThat(world.blocks(course)).containsExactly(GuardRule.VIAL_TO_BE_JUDGED);
  }

  @Test
  void a_judgement_of_nothing_is_refused() {
    assertThat(judge(Staff.PRESCRIBER).faults()).isNotEmpty();
  }

  @Test
  void a_judgement_makes_no_date_later() {
    world.receive(course, VialForm.of(SamplePreparations.ALPROSTADIL_20).beyondUse("2026-03-02"));
    vial = world.lastEntry(course);
    befell("WARM").orThrow();
    judge(Staff.PRESCRIBER).orThrow();

    world.pass(Duration.ofDays(2));

    assertThat(world.blocks(course)).containsExactly(GuardRule.VIAL_PAST_DATE);
  }

  @Test
  void an_addendum_to_the_label_lifts_nothing() {
    befell("FROZEN").orThrow();
    VialDraft opened = VialForm.of(SamplePreparations.ALPROSTADIL_20).opened("2026-03-02").draft();
    world.vials().amend(Staff.EDUCATOR, course, vial, opened, "opened").orThrow();

    assertThat(world.blocks(course)).containsExactly(GuardRule.VIAL_TO_BE_JUDGED);
  }

  @Test
  void what_was_drawn_from_it_since_then_proves_nothing_of_fresh_stock_even_told_late() {
    world.pass(Duration.ofHours(2));
    world.report(course, ReportForm.at("2026-03-02", "10:30").mark("25").grade("3")).orThrow();
    assertThat(fresh()).isEqualTo(Freshness.FRESH);

    befell("WARM").orThrow();
    judge(Staff.PRESCRIBER).orThrow();

    assertThat(fresh()).isEqualTo(Freshness.OLD);
  }

  private Freshness fresh() {
    return world.state(course).question().history().last().orElseThrow().stock().freshness();
  }

  @Test
  void every_fault_is_told_at_its_field_and_nothing_is_written() {
    long before = world.file(course).basis();
    var wrong = new BefellDraft("ROOM", "2026-03-09", "hot", "9", "3", " ");

    assertThat(world.vials().befell(Staff.EDUCATOR, course, vial, wrong).placed())
        .extracting(Fault::field)
        .containsExactlyInAnyOrder(
            BefellDraft.DAY, BefellDraft.CELSIUS, BefellDraft.MOST, BefellDraft.WHAT, "reason");
    assertThat(world.file(course).basis()).isEqualTo(before);
  }
}
