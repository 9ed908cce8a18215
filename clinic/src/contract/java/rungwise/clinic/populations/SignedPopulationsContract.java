package rungwise.clinic.populations;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.Plan;
import rungwise.clinic.people.Account;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.SignForms;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.Reason;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.Reading;

/** Who signs a population, for what, which one is asked, and what becomes of the limits. */
public abstract class SignedPopulationsContract {

  private static final PreparationId ALONE_20 = SamplePreparations.ALPROSTADIL_20.id();
  private static final PreparationId ALONE_40 = SamplePreparations.ALPROSTADIL_40.id();
  private static final PreparationId MIXTURE = SamplePreparations.THREE_DRUG.id();
  private static final String OURS = "our-men";
  private static final String BY_RULE = "by rule";

  private TitrationWorld world;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
  }

  private Reading<SignedPopulation> sign(String name, String document, PreparationId... ids) {
    return world.populations().signBroughtIn(Staff.LEAD, name, document, Set.of(ids));
  }

  private void withdraw(String name, int version) {
    world.populations().withdraw(Staff.LEAD, name, version, "too few men").orThrow();
  }

  private Optional<String> inUse(PreparationId id) {
    return world.populations().inUseFor(id).map(SignedPopulation::key);
  }

  private Advice advice(CourseId course) {
    return world.state(course).advice();
  }

  private static List<TitrationRule> rules(Advice advice) {
    return advice.proposal().reasons().stream().map(Reason::rule).toList();
  }

  /** A course on a protocol that allows so many in 1000 to last 120 minutes. */
  private CourseId limitedTo(int inThousand) {
    CourseId course = world.open();
    world.written().signWritten(Staff.LEAD, LabelReader.limitedTo(inThousand), Set.of()).orThrow();
    var plan = new Plan(ALONE_20, "u100-1", "limited", 1);
    world.titration().choosePlan(Staff.PRESCRIBER, course, plan, world::isInUse, "").orThrow();
    return course;
  }

  private void reportPoor(CourseId course) {
    world
        .report(course, ReportForm.at("2026-03-02", "09:00").mark("12").grade("2").exactly("20"))
        .orThrow();
  }

  @Test
  void only_the_programme_lead_signs_and_withdraws() {
    for (Account other : List.of(Staff.PRESCRIBER, Staff.EDUCATOR, Staff.ON_CALL, Staff.AUDITOR)) {
      assertThat(
              world
                  .populations()
                  .signBroughtIn(other, OURS, InventedPopulations.WEAK, Set.of(ALONE_20))
                  .faults())
          .singleElement()
          .asString()
          .startsWith("Only the programme lead");
    }
    sign(OURS, InventedPopulations.WEAK, ALONE_20).orThrow();
    assertThat(world.populations().withdraw(Staff.PRESCRIBER, OURS, 1, "why").faults()).hasSize(1);
    assertThat(world.populations().withdraw(Staff.LEAD, OURS, 1, " ").faults()).hasSize(1);
    assertThat(world.populations().withdraw(Staff.LEAD, OURS, 2, "why").faults()).hasSize(1);

    assertThat(inUse(ALONE_20)).contains("our-men version 1");
  }

  @Test
  void all_that_is_wrong_is_said_at_once_and_nothing_is_signed() {
    assertThat(sign("Our Men", "nothing").faults())
        .hasSize(3)
        .anyMatch(fault -> fault.startsWith("name: \"Our Men\" was given"))
        .contains("it has no mu", "it has no preparation");
    assertThat(sign("shipped", InventedPopulations.WEAK).faults())
        .hasSize(2)
        .anyMatch(fault -> fault.contains("that of a population of the program"))
        .anyMatch(fault -> fault.startsWith("preparations: choose at least one"));
    assertThat(sign(OURS, "mu 1 of nowhere", ALONE_20).faults())
        .singleElement()
        .asString()
        .startsWith("reference_preparation: \"nowhere\" is no preparation that is known here");
    assertThat(sign(OURS, "x".repeat(100_001), ALONE_20).faults()).hasSize(1);
    assertThat(world.populations().signed()).isEmpty();
  }

  @Test
  void it_is_signed_only_for_what_its_strength_is_known_of() {
    assertThat(sign(OURS, InventedPopulations.WEAK, ALONE_20, MIXTURE).faults())
        .singleElement()
        .asString()
        .contains("the strength of \"" + MIXTURE + "\" is not known exactly");
    sign(OURS, InventedPopulations.WEAK, ALONE_20, ALONE_40).orThrow();

    assertThat(inUse(ALONE_40)).contains("our-men version 1");
    assertThat(inUse(MIXTURE)).isEmpty();
    assertThat(world.populations().look(InventedPopulations.WEAK).orThrow().fits())
        .extracting(fit -> fit.strength().orElse(0.0))
        .containsExactly(1.0, 2.0);
  }

  @Test
  void a_population_of_the_program_is_signed_under_its_own_name() {
    world.populations().signShipped(Staff.LEAD, "shipped", Set.of(ALONE_20)).orThrow();

    assertThat(inUse(ALONE_20)).contains("shipped version 1");
    assertThat(world.populations().signShipped(Staff.LEAD, "none", Set.of(ALONE_20)).faults())
        .hasSize(1);
  }

  @Test
  void the_last_signature_decides_and_an_earlier_one_does_not_come_back() {
    sign(OURS, InventedPopulations.WEAK, ALONE_20, ALONE_40).orThrow();
    sign("another", InventedPopulations.WEAK, ALONE_20).orThrow();
    assertThat(inUse(ALONE_20)).contains("another version 1");
    assertThat(inUse(ALONE_40)).contains("our-men version 1");

    sign(OURS, InventedPopulations.STRONG, ALONE_20).orThrow();
    assertThat(inUse(ALONE_20)).contains("our-men version 2");
    assertThat(inUse(ALONE_40)).as("left out of the newer version").isEmpty();

    withdraw(OURS, 2);
    assertThat(inUse(ALONE_20)).as("neither our-men 1 nor another").isEmpty();
    assertThat(world.populations().withdraw(Staff.LEAD, OURS, 2, "again").faults()).hasSize(1);
  }

  @Test
  void a_stored_decision_names_its_population_and_is_replayed_by_it() {
    CourseId course = world.open();
    assertThat(advice(course).choice()).isEqualTo(BY_RULE);
    sign(OURS, InventedPopulations.WEAK, ALONE_20).orThrow();
    assertThat(advice(course).choice()).isEqualTo("by rule and model our-men version 1");
    world.signProposed(course);
    EntryId signature = world.lastEntry(course);

    sign(OURS, InventedPopulations.STRONG, ALONE_20).orThrow();
    withdraw(OURS, 1);
    withdraw(OURS, 2);

    assertThat(advice(course).choice()).isEqualTo(BY_RULE);
    assertThat(((DoseSigned) world.last(course).fact()).advice().choice())
        .contains("by rule and model our-men version 1");
    assertThat(world.titration().replay(course, signature).orElseThrow().differences()).isEmpty();
  }

  @Test
  void a_decision_by_rule_is_replayed_by_rule_after_a_population_was_signed() {
    CourseId course = world.open();
    world.signProposed(course);
    sign(OURS, InventedPopulations.STRONG, ALONE_20).orThrow();

    assertThat(
            world.titration().replay(course, world.lastEntry(course)).orElseThrow().differences())
        .isEmpty();
  }

  @Test
  void a_protocol_with_limits_is_signed_only_where_a_population_can_keep_them() {
    assertThat(world.written().check(LabelReader.limitedTo(50)).faults())
        .singleElement()
        .asString()
        .startsWith("model: no population");
    sign(OURS, InventedPopulations.WEAK, ALONE_20).orThrow();
    assertThat(world.written().check(LabelReader.limitedTo(50)).faults()).isEmpty();

    withdraw(OURS, 1);
    assertThat(
            world.written().signWritten(Staff.LEAD, LabelReader.limitedTo(50), Set.of()).faults())
        .hasSize(1);
  }

  @Test
  void the_model_lowers_what_the_rule_proposes_and_says_the_chance_and_the_limit() {
    sign(OURS, InventedPopulations.WEAK, ALONE_20).orThrow();
    CourseId course = limitedTo(400);
    assertThat(advice(course).decision()).isInstanceOf(Decision.Start.class);

    sign(OURS, InventedPopulations.STRONG, ALONE_20).orThrow();

    assertThat(advice(course).decision()).isEqualTo(new Decision.Refer());
    assertThat(advice(course).reason().rule()).isEqualTo(TitrationRule.MODEL_FORBIDS);
    assertThat(advice(course).reason().facts().toString()).contains("limit 400 in 1000");
  }

  @Test
  void limits_that_nobody_can_keep_any_more_are_not_dropped() {
    sign(OURS, InventedPopulations.WEAK, ALONE_20).orThrow();
    CourseId course = limitedTo(999);
    world.signProposed(course);
    reportPoor(course);
    assertThat(advice(course).decision()).isInstanceOf(Decision.StepUp.class);

    withdraw(OURS, 1);

    assertThat(advice(course).decision()).isEqualTo(new Decision.Refer());
    assertThat(rules(advice(course)))
        .containsExactly(TitrationRule.MODEL_SILENT, TitrationRule.STEP_AFTER_PARTIAL);
  }

  @Test
  void no_next_step_follows_by_itself_under_a_protocol_with_limits() {
    sign(OURS, InventedPopulations.WEAK, ALONE_20).orThrow();
    CourseId course = limitedTo(999);

    assertThat(
            world
                .sign(course, SignForms.withNextStep(SignForms.atHome(world.proposed(course))))
                .faults())
        .anyMatch(fault -> fault.contains("sign without a next step"));
  }
}
