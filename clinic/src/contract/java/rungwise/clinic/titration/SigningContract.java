package rungwise.clinic.titration;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rungwise.clinic.audit.Screen;
import rungwise.clinic.audit.Viewed;
import rungwise.clinic.coded.ChangeReason;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.people.Account;
import rungwise.clinic.protocols.LabelReader;
import rungwise.dosing.decision.KeptAdvice;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Place;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** Signing a dose, over any store. */
public abstract class SigningContract {

  private TitrationWorld world;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.open();
  }

  private static Volume volume(long microlitres) {
    return Volume.ofMicrolitres(microlitres);
  }

  private Optional<DoseSigned> inForce() {
    return world.file(course).signedDose().map(written -> written.fact());
  }

  private void assertRefused(SignDraft draft, String words) {
    long before = world.file(course).basis();

    assertThat(world.sign(course, draft).faults()).singleElement().asString().contains(words);

    assertThat(world.file(course).basis()).isEqualTo(before);
  }

  /** The first dose was signed and went well, two days ago. */
  private void settle() {
    world.signProposed(course);
    world.pass(Duration.ofHours(12));
    world.report(course, ReportForm.at("2026-03-02", "11:00")).orThrow();
    world.pass(Duration.ofHours(36));
  }

  private SignDraft draft(long microlitres, Place place, String changed, String reason) {
    return new SignDraft(
        microlitres,
        place,
        world.file(course).basis(),
        changed,
        Set.of(),
        reason,
        /* withNextStep= */ false);
  }

  @Test
  void the_signed_dose_is_in_force_with_its_ladder_and_the_whole_advice() {
    KeptAdvice advice = KeptAdvice.of(world.state(course).advice());
    long basis = world.file(course).basis();

    long number = world.sign(course, world.proposed(course)).orThrow();

    assertThat(inForce())
        .contains(
            new DoseSigned(
                world.file(course).plan(),
                volume(120),
                Place.CLINIC,
                List.of(volume(120), volume(250), volume(500), volume(750), volume(1000)),
                volume(1000),
                Set.of(),
                Optional.empty(),
                basis,
                world.now(),
                advice,
                Optional.empty(),
                Optional.empty()));
    assertThat(number).isEqualTo(world.file(course).basis()).isGreaterThan(basis);
    assertThat(world.last(course).recordedBy()).isEqualTo(Staff.PRESCRIBER.id());
    assertThat(world.state(course).mayInject().isClear()).isTrue();
  }

  @Test
  void nothing_is_signed_when_the_record_has_changed_since_the_page_was_opened() {
    SignDraft read = world.proposed(course);
    world.answer(course, Condition.TRAZODONE, Answer.YES);

    assertRefused(read, "The record has changed since this page was opened");

    assertThat(world.sign(course, world.proposed(course)).faults()).isEmpty();
  }

  @Test
  void a_mere_look_by_somebody_else_does_not_change_the_record_for_the_signer() {
    SignDraft read = world.proposed(course);
    var viewed =
        new Viewed(
            Staff.AUDITOR.id(), world.now(), Screen.COURSE, Viewed.Outcome.SHOWN, List.of(course));
    world.stored().run(() -> world.stored().audit().append(viewed));

    world.sign(course, read).orThrow();

    var replay = world.titration().replay(course, world.lastEntry(course)).orElseThrow();
    assertThat(replay.differences()).isEmpty();
  }

  @Test
  void another_dose_than_the_proposed_one_needs_a_coded_reason() {
    settle();

    assertThat(world.state(course).advice().decision().proposed()).contains(volume(120));
    assertRefused(draft(250, Place.CLINIC, "", "words"), "This is not the proposed dose");
    assertRefused(draft(250, Place.CLINIC, "BECAUSE", "words"), "This is not the proposed dose");
    world.sign(course, draft(250, Place.CLINIC, "PATIENT_WISH", "")).orThrow();

    assertThat(inForce()).map(DoseSigned::volume).contains(volume(250));
    assertThat(inForce()).map(DoseSigned::changed).contains(Optional.of(ChangeReason.PATIENT_WISH));
    assertThat(world.last(course).reason()).isEmpty();
  }

  @Test
  void another_reason_than_the_listed_ones_is_written_down() {
    settle();

    assertRefused(draft(250, Place.CLINIC, "OTHER", "  "), "Write the reason");
    world.sign(course, draft(250, Place.CLINIC, "OTHER", " his own words ")).orThrow();

    assertThat(world.last(course).reason()).contains("his own words");
  }

  @Test
  void no_signature_opens_a_hard_stop() {
    SignDraft twoStepsUp = draft(500, Place.CLINIC, "MORE_CAUTION", "words");
    SignDraft overridden =
        new SignDraft(
            500,
            Place.CLINIC,
            twoStepsUp.basis(),
            "MORE_CAUTION",
            Set.of(GuardRule.MORE_THAN_ONE_STEP_UP),
            "words",
            /* withNextStep= */ false);

    assertRefused(
        twoStepsUp, "Not possible: This is more than one step above the last dose that went in.");
    assertThat(world.sign(course, overridden).faults())
        .containsExactly(
            "Not possible: This is more than one step above the last dose that went in.",
            "Only a hold can be overridden.");
  }

  @Test
  void nothing_is_signed_for_a_man_with_a_contraindication_or_an_open_screening() {
    world.answer(course, Condition.PENILE_IMPLANT, Answer.NOT_KNOWN);
    assertRefused(world.instead(course, 120), "Not possible: It is not known whether");
    world.answer(course, Condition.PENILE_IMPLANT, Answer.NO);
    world.answer(course, Condition.SICKLE_CELL, Answer.YES);
    assertRefused(world.instead(course, 120), "Not possible: A contraindication is on record.");
    world.overturn(course, Condition.SICKLE_CELL);

    assertThat(world.sign(course, world.proposed(course)).faults()).isEmpty();
  }

  @Test
  void a_volume_that_is_no_step_is_refused() {
    assertRefused(draft(130, Place.CLINIC, "MORE_CAUTION", ""), "is not a step of the schedule");
    assertRefused(draft(0, Place.CLINIC, "MORE_CAUTION", ""), "is not a step of the schedule");
    assertRefused(draft(-1, Place.CLINIC, "MORE_CAUTION", ""), "one of the steps");
  }

  @Test
  void a_dose_for_home_waits_until_everything_home_use_needs_is_on_record() {
    settle();
    assertRefused(
        SignForms.atHome(world.proposed(course)),
        "Not possible: Something that must come before home use");
    world.makeReady(course);

    world.sign(course, SignForms.atHome(world.proposed(course))).orThrow();

    assertThat(inForce()).map(DoseSigned::place).contains(Place.HOME);
    assertThat(world.state(course).mayInject().isClear()).isTrue();
  }

  @Test
  void every_fault_of_a_signature_is_told_at_once() {
    assertThat(world.sign(course, draft(500, Place.HOME, "", "")).faults())
        .hasSize(4)
        .anyMatch(fault -> fault.contains("more than one step"))
        .anyMatch(fault -> fault.contains("home use"))
        .anyMatch(fault -> fault.contains(GuardRule.FIRST_IN_CLINIC.wording()))
        .anyMatch(fault -> fault.contains("not the proposed dose"));
  }

  @Test
  void a_hold_is_overridden_only_by_name_and_with_a_reason() {
    course = world.open("unknown", "u100-1");

    assertRefused(world.proposed(course), "On hold: The drawing error");
    assertRefused(world.overriding(course, "", GuardRule.HARD_TO_MEASURE), "Write the reason");
    world
        .sign(course, world.overriding(course, "drawn by a nurse", GuardRule.HARD_TO_MEASURE))
        .orThrow();

    assertThat(inForce())
        .map(DoseSigned::overridden)
        .hasValueSatisfying(
            holds ->
                assertThat(holds)
                    .singleElement()
                    .satisfies(
                        hold -> {
                          assertThat(hold.rule()).isEqualTo(GuardRule.HARD_TO_MEASURE);
                          assertThat(hold.facts()).isNotEmpty();
                          assertThat(hold.until()).isEmpty();
                        }));
    assertThat(world.last(course).reason()).contains("drawn by a nurse");
    assertThat(world.state(course).mayInject().isClear()).isTrue();
  }

  @Test
  void only_a_hold_that_is_on_the_dose_now_is_overridden() {
    for (GuardRule rule : List.of(GuardRule.NO_VIAL, GuardRule.NEW_STOCK, GuardRule.SPACING)) {
      assertRefused(
          world.overriding(course, "considered", rule),
          "Not on this dose now, so it is not overridden: " + rule.wording());
    }
    assertThat(inForce()).isEmpty();
  }

  @Test
  void a_hold_of_time_is_overridden_in_the_clinic_and_never_for_home() {
    settle();
    world.makeReady(course);
    world.pass(Duration.ofDays(4));
    world.report(course, ReportForm.at("2026-03-04", "20:00").exactly("10")).orThrow();
    world.report(course, ReportForm.at("2026-03-06", "20:00").exactly("10")).orThrow();
    assertThat(world.blocks(course)).contains(GuardRule.WEEKLY_COUNT);
    SignDraft draft = world.overriding(course, "seen in the room", GuardRule.WEEKLY_COUNT);

    assertRefused(SignForms.atHome(draft), "Never overridden for home: There are already");
    world.sign(course, draft).orThrow();

    assertThat(world.blocks(course)).doesNotContain(GuardRule.WEEKLY_COUNT);
    world.pass(Duration.ofMinutes(1));
    world.report(course, ReportForm.at("2026-03-08", "09:00").exactly("10")).orThrow();
    assertThat(world.blocks(course)).contains(GuardRule.WEEKLY_COUNT);
  }

  @Test
  void a_dose_that_lasted_over_an_hour_waits_and_may_be_accepted_up_to_so_many_minutes() {
    settle();
    world.report(course, ReportForm.at("2026-03-03", "20:00").exactly("75")).orThrow();
    world.pass(Duration.ofDays(1));
    SignDraft anew = world.instead(course, 120);
    SignDraft accepted =
        new SignDraft(
            120,
            Place.CLINIC,
            anew.basis(),
            "MORE_CAUTION",
            Set.of(GuardRule.SIGN_ANEW),
            "he wants it so",
            /* withNextStep= */ false);

    assertRefused(anew, "On hold: " + GuardRule.SIGN_ANEW.wording());
    assertRefused(accepted.accepting("120"), "from 61 to 119 can");
    assertRefused(accepted.accepting("60"), "from 61 to 119 can");
    assertRefused(accepted.accepting("an hour"), "an hour");
    world.sign(course, accepted.accepting("90")).orThrow();

    assertThat(inForce().orElseThrow().accepted()).contains(TimeSpan.ofMinutes(90));
    assertThat(world.state(course).advice().verdictsOn(volume(120)))
        .extracting(Verdict::rule)
        .doesNotContain(GuardRule.SIGN_ANEW);
    world.report(course, ReportForm.at("2026-03-04", "21:00").exactly("91")).orThrow();
    assertThat(world.blocks(course)).contains(GuardRule.SIGN_ANEW);
  }

  @Test
  void nothing_is_accepted_where_nothing_was_long() {
    SignDraft overriding = world.overriding(course, "considered");

    assertRefused(overriding.accepting("90"), "there is nothing to accept");
  }

  @Test
  void within_a_day_of_a_useful_response_no_signature_overrides_the_spacing() {
    settle();
    world.report(course, ReportForm.at("2026-03-04", "09:00").exactly("10")).orThrow();
    world.pass(Duration.ofHours(1));

    world.sign(course, world.overriding(course, "seen in the room", GuardRule.SPACING)).orThrow();

    assertThat(world.blocks(course)).containsExactly(GuardRule.SPACING);
  }

  @Test
  void only_a_prescriber_signs_or_chooses_a_syringe() {
    SignDraft draft = world.proposed(course);

    for (Account other : List.of(Staff.EDUCATOR, Staff.ON_CALL, Staff.AUDITOR)) {
      assertThat(world.titration().sign(other, course, draft).faults())
          .containsExactly("Only a prescriber can do that.");
      assertThat(
              world
                  .titration()
                  .choosePlan(other, course, world.file(course).plan(), id -> true, "words")
                  .faults())
          .containsExactly("Only a prescriber can do that.");
    }
    assertThat(inForce()).isEmpty();
  }

  @Test
  void another_syringe_ends_the_dose_in_force() {
    world.signProposed(course);

    world.chooseBarrel(course, "u100-0.5").orThrow();

    assertThat(inForce()).isEmpty();
    assertThat(world.blocks(course)).containsExactly(GuardRule.NO_ORDER);
    world.signProposed(course);
    assertThat(world.state(course).mayInject().isClear()).isTrue();
  }

  @Test
  void a_syringe_that_is_chosen_already_or_not_known_or_unmarked_changes_nothing() {
    world.signProposed(course);

    for (String token : List.of("u100-1", "u100-9", "cartridge-1")) {
      assertThat(world.chooseBarrel(course, token).faults()).as(token).hasSize(1);
    }
    assertThat(world.state(course).mayInject().isClear()).isTrue();
  }

  @Test
  void a_stored_decision_is_asked_again_as_the_record_was_then() {
    settle();
    EntryId first = world.file(course).signedDose().orElseThrow().entry().id();
    KeptAdvice then = inForce().orElseThrow().advice();
    world.report(course, ReportForm.at("2026-03-04", "09:00").exactly("10")).orThrow();
    world.answer(course, Condition.SICKLE_CELL, Answer.YES);

    Replay replay = world.titration().replay(course, first).orElseThrow();

    assertThat(replay.stored()).isEqualTo(then).isEqualTo(KeptAdvice.of(replay.again()));
    assertThat(replay.differences()).isEmpty();
    assertThat(then.differencesTo(world.state(course).advice())).isNotEmpty();
    assertThat(world.titration().replay(course, world.lastEntry(course))).isEmpty();
  }

  @Test
  void choosing_the_first_syringe_again_does_not_bring_its_dose_back() {
    world.signProposed(course);
    world.chooseBarrel(course, "u100-0.5").orThrow();

    world.chooseBarrel(course, "u100-1").orThrow();

    assertThat(inForce()).isEmpty();
    assertThat(world.blocks(course)).containsExactly(GuardRule.NO_ORDER);
  }

  @ParameterizedTest
  @ValueSource(longs = {-1, 1_000_001, Long.MAX_VALUE})
  void a_volume_that_no_syringe_draws_is_refused_in_words(long microlitres) {
    assertRefused(SignForms.of(world.proposed(course), microlitres), "No syringe draws");
  }
}
