package rungwise.clinic.titration;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.Plan;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.standing.ReportFlag;
import rungwise.clinic.standing.ReportFlag.Kind;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/** The one step that may follow at home without a new signature, over any store. */
public abstract class NextStepContract {

  private TitrationWorld world;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /** He was fine on 0.12 mL in the clinic and is ready for home. */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.open();
    world.makeReady(course);
    world.signProposed(course);
    world.pass(Duration.ofDays(2));
    world.report(course, evening("2026-03-02")).orThrow();
  }

  private static ReportForm evening(String date) {
    return ReportForm.at(date, "20:00");
  }

  private SignDraft withNextStep(SignDraft draft) {
    return SignForms.withNextStep(SignForms.atHome(draft));
  }

  private void signWithNextStep() {
    world.sign(course, withNextStep(world.proposed(course))).orThrow();
  }

  private DoseSigned inForce() {
    return world.file(course).signedDose().orElseThrow().fact();
  }

  private List<GuardRule> nextStepBlocks() {
    return world.state(course).mayTakeNextStep().orElseThrow().blocks().stream()
        .map(Verdict::rule)
        .toList();
  }

  private InjectionReported lastReport() {
    return world.file(course).reports().getLast().fact();
  }

  private List<Kind> flags() {
    return world.state(course).flagsToSee().stream().map(ReportFlag::kind).toList();
  }

  private void reportTwoDaysLater(ReportForm form) {
    world.pass(Duration.ofDays(2));
    world.report(course, form).orThrow();
  }

  private void assertRefused(Reading<Long> reading, String words) {
    assertThat(reading.faults()).singleElement().asString().contains(words);
  }

  @Test
  void the_next_step_is_the_one_step_above_the_signed_dose() {
    signWithNextStep();

    assertThat(inForce().volume()).isEqualTo(Volume.ofMicrolitres(120));
    assertThat(inForce().nextStep()).contains(Volume.ofMicrolitres(250));
  }

  @Test
  void without_being_asked_for_no_next_step_is_signed() {
    world.sign(course, SignForms.atHome(world.proposed(course))).orThrow();

    assertThat(inForce().nextStep()).isEmpty();
    assertThat(world.state(course).mayTakeNextStep()).isEmpty();
  }

  @Test
  void in_the_clinic_each_dose_is_signed_by_itself() {
    assertRefused(
        world.sign(course, SignForms.withNextStep(world.proposed(course))),
        "A next step is for home only: in the clinic each dose is signed.");
  }

  @Test
  void above_the_last_step_there_is_none() {
    course = world.openWith(TitrationWorld.WEAK, "u100-1");
    world.makeReady(course);
    world.signProposed(course);
    reportTwoDaysLater(evening("2026-03-04").mark("50").grade("1").exactly("20"));

    assertRefused(
        world.sign(course, withNextStep(world.proposed(course))), "There is no step above 1 mL");
  }

  @Test
  void a_step_that_a_guard_forbids_is_not_signed_as_the_next_one() {
    reportTwoDaysLater(evening("2026-03-04").mark("25").exactly("150"));
    assertRefused(
        world.sign(course, withNextStep(world.proposed(course))),
        "Next step 0.25 mL: At this dose or less an erection lasted");
  }

  @Test
  void over_an_hour_on_a_dose_allows_no_step_above_it() {
    reportTwoDaysLater(evening("2026-03-04").grade("2").exactly("61"));

    assertThat(world.sign(course, withNextStep(world.proposed(course))).faults())
        .contains("Next step 0.25 mL: " + GuardRule.HIGHER_AFTER_LONG.wording());
  }

  @Test
  void the_next_step_waits_for_a_poor_response_to_the_signed_dose_that_was_over_in_time() {
    signWithNextStep();
    assertThat(nextStepBlocks()).containsExactly(GuardRule.NEXT_STEP_NOT_YET);

    ReportForm poor = evening("2026-03-04").grade("1").exactly("20");
    reportTwoDaysLater(poor.causes("not_asked"));
    assertThat(nextStepBlocks()).containsExactly(GuardRule.NEXT_STEP_NOT_YET);
    correct(poor.exactly("61"));
    assertThat(nextStepBlocks()).contains(GuardRule.NEXT_STEP_NOT_YET);
    correct(poor.mark("10"));
    assertThat(nextStepBlocks()).contains(GuardRule.NEXT_STEP_NOT_YET);
    correct(poor);
    assertThat(nextStepBlocks()).containsExactly(GuardRule.HIGHER_AFTER_LONG, GuardRule.SIGN_ANEW);
    world
        .lifting()
        .confirmCorrection(Staff.PRESCRIBER, course, world.lastEntry(course), "61 was his age")
        .orThrow();

    assertThat(nextStepBlocks()).isEmpty();
  }

  private void correct(ReportForm form) {
    world.report(course, form.correcting(world.lastEntry(course), "asked again")).orThrow();
  }

  @Test
  void the_next_step_that_was_due_was_ordered_like_the_dose_before_it() {
    signWithNextStep();
    reportTwoDaysLater(evening("2026-03-04").grade("1").exactly("20"));

    reportTwoDaysLater(evening("2026-03-06").mark("25"));

    assertThat(lastReport().ordered()).contains(Volume.ofMicrolitres(250));
    assertThat(flags()).doesNotContain(Kind.MORE_THAN_SIGNED);
    assertThat(world.state(course).advice().decision())
        .isEqualTo(new Decision.Repeat(Volume.ofMicrolitres(250)));
    correct(evening("2026-03-06").mark("25").exactly("45"));
    assertThat(lastReport().ordered()).contains(Volume.ofMicrolitres(250));
  }

  @Test
  void a_next_step_that_was_not_due_was_not_ordered() {
    signWithNextStep();

    reportTwoDaysLater(evening("2026-03-04").mark("25"));

    assertThat(lastReport().ordered()).contains(Volume.ofMicrolitres(120));
    assertThat(flags()).contains(Kind.MORE_THAN_SIGNED);
    assertThat(world.state(course).advice().decision())
        .isEqualTo(new Decision.StepDown(Volume.ofMicrolitres(120)));
  }

  @Test
  void the_next_step_waits_for_as_many_partial_responses_as_the_protocol_says() {
    world.written().signWritten(Staff.PRESCRIBER, LabelReader.waitingFor(2), Set.of()).orThrow();
    var plan = new Plan(SamplePreparations.ALPROSTADIL_20.id(), "u100-1", "waiting", 1);
    world.titration().choosePlan(Staff.PRESCRIBER, course, plan, world::isInUse, "").orThrow();
    signWithNextStep();
    reportTwoDaysLater(evening("2026-03-04").grade("2").exactly("20"));
    assertThat(nextStepBlocks()).containsExactly(GuardRule.NEXT_STEP_NOT_YET);

    reportTwoDaysLater(evening("2026-03-06").mark("25"));
    assertThat(lastReport().ordered()).contains(Volume.ofMicrolitres(120));
    correct(evening("2026-03-06").grade("2").exactly("20"));
    assertThat(nextStepBlocks()).doesNotContain(GuardRule.NEXT_STEP_NOT_YET);
    reportTwoDaysLater(evening("2026-03-08").mark("25"));

    assertThat(lastReport().ordered()).contains(Volume.ofMicrolitres(250));
  }

  @Test
  void of_two_who_sign_the_same_advice_the_second_is_refused_and_told_what_is_new() {
    SignDraft read = world.proposed(course);
    world.sign(course, read).orThrow();
    long after = world.file(course).basis();

    assertRefused(world.sign(course, read), "New: Dose signed in the clinic: 0.12 mL");

    assertThat(world.file(course).basis()).isEqualTo(after);
    assertThat(world.file(course).signedDose().map(signed -> signed.entry().number()))
        .isEqualTo(Optional.of(after));
  }

  @Test
  void what_may_have_been_wrong_has_to_be_said_only_where_too_little_happened() {
    signWithNextStep();
    world.pass(Duration.ofDays(2));
    assertRefused(
        world.report(course, evening("2026-03-04").grade("2").causes("")),
        "Choose whether anything went wrong");

    world.report(course, evening("2026-03-04").grade("3").causes("")).orThrow();
    assertThat(world.file(course).reports().getLast().fact().causes())
        .isEqualTo(SimpleCauses.NOT_ASKED);
  }
}
