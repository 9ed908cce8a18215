package rungwise.clinic.protocols;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseFact.PlanChosen;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.InMemoryRecord;
import rungwise.clinic.course.NewEntry;
import rungwise.clinic.course.Plan;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.known.SamplePreparations;

/** Protocols that were signed before a floor was, or before a composition was asked for. */
final class EarlierProtocolTest {

  private static final Plan ON_EARLIER_MIXTURE =
      new Plan(SamplePreparations.THREE_DRUG.id(), "u100-0.5", "earlier", 2);

  private TitrationWorld world;

  @BeforeEach
  void begin() {
    world = new TitrationWorld(InMemoryRecord.ports(), new LabelReader());
    signedEarlier(LabelReader.EARLIER, 1);
    signedEarlier(LabelReader.EARLIER_MIXTURE, 2);
  }

  private void signedEarlier(String document, int version) {
    world
        .stored()
        .run(
            () ->
                world
                    .stored()
                    .shelf()
                    .append(
                        new ProtocolShelf.Signed(
                            "earlier",
                            version,
                            document,
                            List.of(),
                            Staff.LEAD.id(),
                            world.now())));
  }

  private SignedProtocol signed(int version) {
    return world.written().find("earlier", version).orElseThrow();
  }

  /** The record has him on it from before: nobody could choose it now. */
  private CourseId onEarlierMixture() {
    CourseId id = world.openWith(SamplePreparations.THREE_DRUG, "u100-0.5");
    world
        .stored()
        .run(
            () ->
                world
                    .stored()
                    .courses()
                    .append(
                        NewEntry.of(
                            id,
                            new PlanChosen(ON_EARLIER_MIXTURE),
                            Staff.PRESCRIBER.id(),
                            world.now())));
    return id;
  }

  @Test
  void each_says_why_it_waits_and_what_holds_meanwhile() {
    assertThat(signed(1).waits()).singleElement().asString().contains("at least 24 h between");
    assertThat(signed(2).waits()).singleElement().asString().contains("for no preparation");
    assertThat(world.written().signed().stream().filter(one -> !one.isWaiting())).hasSize(3);
  }

  @Test
  void no_course_begins_by_one_that_waits_and_none_changes_to_it() {
    assertThat(world.written().holdingOn(LabelReader.LATER))
        .noneMatch(one -> one.protocol().name().equals("earlier"));

    CourseId id = world.open();
    var plan = new Plan(SamplePreparations.ALPROSTADIL_20.id(), "u100-0.5", "earlier", 1);
    var changed =
        world.titration().choosePlan(Staff.PRESCRIBER, id, plan, one -> true, "to try it");

    assertThat(changed.faults()).singleElement().asString().contains("signed anew");
  }

  @Test
  void a_course_on_a_protocol_without_a_composition_gets_no_dose_and_says_what_to_do() {
    CourseId id = onEarlierMixture();
    var state = world.state(id);

    assertThat(state.advice().decision()).isEqualTo(new Decision.Pause());
    assertThat(state.advice().reason().rule()).isEqualTo(TitrationRule.PROTOCOL_FIRST);
    assertThat(state.advice().courseVerdicts().stream().map(Verdict::rule))
        .contains(GuardRule.PROTOCOL_NOT_FOR);
    assertThat(world.blocks(id)).contains(GuardRule.PROTOCOL_NOT_FOR);
    assertThat(state.protocolWaits()).isEqualTo(signed(2).waits());
  }

  @Test
  void the_course_goes_on_once_a_protocol_for_its_composition_is_chosen() {
    CourseId id = onEarlierMixture();
    world.choosePreparation(id, SamplePreparations.THREE_DRUG).orThrow();

    assertThat(world.state(id).protocolWaits()).isEmpty();
    assertThat(world.blocks(id)).doesNotContain(GuardRule.PROTOCOL_NOT_FOR);
  }
}
