package rungwise.clinic.teaching;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseFact.ReadinessRecorded;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.EmergencyPlan;
import rungwise.clinic.course.Plan;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.SignForms;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.protocol.Protocol;
import rungwise.quantities.Reading;

/** What must be on record before home use, over any store. */
public abstract class TeachingContract {

  private static final EmergencyPlan PLAN =
      new EmergencyPlan("North Hospital", "555 0100", "his sister drives");

  private TitrationWorld world;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.open();
  }

  private Reading<Long> record(ReadinessDraft draft) {
    return world.teaching().record(Staff.EDUCATOR, course, draft);
  }

  private static ReadinessDraft item(Readiness item, String day, String note) {
    return new ReadinessDraft(item.name(), day, "", "", "", note);
  }

  private static ReadinessDraft plan(String hospital, String number, String transport) {
    return new ReadinessDraft(
        Readiness.EMERGENCY_PLAN.name(), "2026-03-02", hospital, number, transport, "");
  }

  /** The protocol that asks for more and holds from a later day. */
  private Reading<Long> chooseStrict() {
    Plan now = world.file(course).plan();
    var plan = new Plan(now.preparation(), now.barrel(), "strict", 1);
    return world
        .titration()
        .choosePlan(Staff.PRESCRIBER, course, plan, world::isInUse, "this clinic asks for more");
  }

  private void assertRefused(ReadinessDraft draft, String words) {
    long before = world.file(course).basis();

    assertThat(record(draft).faults()).singleElement().asString().contains(words);

    assertThat(world.file(course).basis()).isEqualTo(before);
  }

  @Test
  void each_item_is_on_record_with_its_day_and_what_was_done() {
    record(item(Readiness.TEACH_BACK, "2026-02-27", " drew up alone ")).orThrow();
    record(plan(" North Hospital", "555 0100 ", " his sister drives ")).orThrow();

    assertThat(world.file(course).inForce(ReadinessRecorded.class))
        .extracting(written -> written.fact())
        .containsExactly(
            new ReadinessRecorded(
                Readiness.TEACH_BACK, LocalDate.of(2026, 2, 27), Optional.empty(), "drew up alone"),
            new ReadinessRecorded(
                Readiness.EMERGENCY_PLAN, LocalDate.of(2026, 3, 2), Optional.of(PLAN), ""));
    assertThat(world.file(course).readiness(Protocol.Home.NOTHING_MORE, LocalDate.of(2026, 3, 2)))
        .isEqualTo(Set.of(Readiness.TEACH_BACK, Readiness.EMERGENCY_PLAN));
    assertThat(world.last(course).recordedBy()).isEqualTo(Staff.EDUCATOR.id());
  }

  @Test
  void an_emergency_plan_needs_each_of_its_three_lines() {
    assertRefused(plan(" ", "555 0100", "a taxi"), "Enter the hospital that he goes to.");
    assertRefused(plan("North Hospital", "", "a taxi"), "Enter the number");
    assertRefused(plan("North Hospital", "555 0100", "\t"), "Enter how he gets there");

    assertThat(record(plan("", "", "")).faults()).hasSize(3);
    assertThat(world.file(course).emergencyPlan()).isEmpty();
  }

  @Test
  void a_line_of_a_plan_has_at_most_120_characters() {
    assertRefused(plan("n".repeat(121), "555 0100", "a taxi"), "at most 120 characters");
    assertThat(record(plan("n".repeat(120), "555 0100", "a taxi")).faults()).isEmpty();
  }

  @Test
  void the_emergency_plan_that_was_agreed_last_is_the_one_in_force() {
    record(plan("South Hospital", "555 0199", "a taxi")).orThrow();
    world.pass(Duration.ofDays(2));

    record(plan("North Hospital", "555 0100", "his sister drives")).orThrow();

    assertThat(world.file(course).emergencyPlan()).contains(PLAN);
    assertThat(world.file(course).inForce(ReadinessRecorded.class)).hasSize(2);
  }

  @Test
  void a_day_that_is_still_to_come_in_the_clinics_zone_is_refused() {
    assertRefused(item(Readiness.TEACH_BACK, "2026-03-03", ""), "3 March 2026 is still to come.");
    // Eleven at night in New York is the next day in UTC already.
    world.pass(Duration.ofHours(13));
    assertRefused(item(Readiness.TEACH_BACK, "2026-03-03", ""), "3 March 2026 is still to come.");

    world.pass(Duration.ofHours(1));
    assertThat(record(item(Readiness.TEACH_BACK, "2026-03-03", "")).faults()).isEmpty();
  }

  @Test
  void every_fault_of_the_form_is_told_at_once() {
    var wrong = new ReadinessDraft("HUMMING", "2 March", "", "", "", "x".repeat(1001));

    assertThat(record(wrong).faults())
        .hasSize(3)
        .anyMatch(fault -> fault.startsWith("Choose what was done"))
        .anyMatch(fault -> fault.contains("\"2 March\" is not a date"))
        .anyMatch(fault -> fault.contains("at most 1000 characters"));
  }

  @Test
  void an_auditor_records_nothing() {
    assertThat(
            world
                .teaching()
                .record(Staff.AUDITOR, course, item(Readiness.TEACH_BACK, "2026-03-02", ""))
                .faults())
        .singleElement()
        .asString()
        .startsWith("Only a prescriber, a nurse educator");
  }

  @Test
  void consent_to_what_no_label_covers_is_asked_for_a_mixture_only() {
    assertThat(homeBlocksWithoutConsent(SamplePreparations.ALPROSTADIL_20)).isEmpty();
    assertThat(homeBlocksWithoutConsent(SamplePreparations.THREE_DRUG))
        .singleElement()
        .asString()
        .startsWith("Not possible: Something that must come before home use");

    record(item(Readiness.OFF_LABEL_CONSENT, "2026-03-02", "")).orThrow();

    world.sign(course, SignForms.atHome(world.proposed(course))).orThrow();
    assertThat(world.blocks(course)).doesNotContain(GuardRule.HOME_NOT_READY);
  }

  @Test
  void a_protocol_that_holds_from_a_later_day_is_not_chosen_before_it() {
    assertThat(chooseStrict().faults()).containsExactly("This protocol holds from 10 March 2026.");

    world.pass(Duration.ofDays(8));

    assertThat(chooseStrict().faults()).isEmpty();
  }

  @Test
  void a_plan_that_lacks_what_the_protocol_asks_for_does_not_count() {
    record(plan("North Hospital", "555 0100", "his sister drives")).orThrow();
    assertThat(world.state(course).question().readiness())
        .containsExactly(Readiness.EMERGENCY_PLAN);
    world.pass(Duration.ofDays(8));
    chooseStrict().orThrow();

    assertThat(world.state(course).question().readiness()).isEmpty();
    assertRefused(
        plan("North Hospital", "555 0100", "his sister drives"),
        "The protocol asks for this: " + LabelReader.QUESTION + ".");
    record(
            new ReadinessDraft(
                Readiness.EMERGENCY_PLAN.name(),
                "2026-03-10",
                "North Hospital",
                "555 0100",
                "his sister drives",
                Map.of(LabelReader.QUESTION, " his brother "),
                ""))
        .orThrow();

    assertThat(world.state(course).question().readiness())
        .containsExactly(Readiness.EMERGENCY_PLAN);
    assertThat(world.file(course).emergencyPlan().orElseThrow().words())
        .endsWith("; " + LabelReader.QUESTION + ": his brother");
  }

  @Test
  void what_was_shown_holds_for_as_many_months_as_the_protocol_says_to_the_day() {
    record(item(Readiness.TEACH_BACK, "2026-03-01", "")).orThrow();
    world.setClock(Instant.parse("2026-08-31T20:00:00Z"));
    chooseStrict().orThrow();
    assertThat(world.state(course).question().readiness()).containsExactly(Readiness.TEACH_BACK);

    world.setClock(Instant.parse("2026-09-01T20:00:00Z"));

    assertThat(world.state(course).question().readiness()).isEmpty();
    assertThat(expired()).containsExactly(Readiness.TEACH_BACK);
    record(item(Readiness.TEACH_BACK, "2026-09-01", "")).orThrow();
    assertThat(world.state(course).question().readiness()).containsExactly(Readiness.TEACH_BACK);
    assertThat(expired()).isEmpty();
  }

  private Set<Readiness> expired() {
    return world.state(course).question().circumstances().expired();
  }

  /** What stops a dose for home of a man who was fine in the clinic and has all but consent. */
  private List<String> homeBlocksWithoutConsent(Preparation preparation) {
    world.setClock(TitrationWorld.START);
    course = world.openWith(preparation, "u100-0.5");
    for (Readiness item : Readiness.values()) {
      if (item != Readiness.OFF_LABEL_CONSENT) {
        record(world.readiness(item)).orThrow();
      }
    }
    String line = Long.toString(world.proposed(course).volumeMicrolitres() / 10);
    world.signProposed(course);
    world.pass(Duration.ofDays(2));
    world.report(course, ReportForm.at("2026-03-02", "11:00").mark(line)).orThrow();
    return world.sign(course, SignForms.atHome(world.proposed(course))).faults();
  }
}
