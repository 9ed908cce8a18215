package rungwise.clinic.screening;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.people.Account;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.titration.SignDraft;
import rungwise.clinic.titration.SignForms;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.screening.Screening.Answered;
import rungwise.quantities.Reading;

/** Answers, decisions and how long they hold, over any store. */
public abstract class ScreeningContract {

  private static final Condition DECIDED = Condition.STROKE_OR_ARTERIAL_DISEASE;
  private static final Duration A_YEAR = Duration.ofDays(365);

  private TitrationWorld world;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /** He answered no to everything at the start. */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.open();
  }

  private Answered answered(Condition condition) {
    return Objects.requireNonNull(world.file(course).screening().answers().get(condition));
  }

  private Reading<Long> answer(ScreeningDraft draft) {
    return world.screenings().answer(Staff.EDUCATOR, course, draft);
  }

  private Reading<Long> decide(String reason) {
    return world.screenings().decide(Staff.PRESCRIBER, course, DECIDED.name(), reason);
  }

  private void assertRefused(Reading<Long> reading, String words) {
    assertThat(reading.faults()).singleElement().asString().contains(words);
  }

  @Test
  void a_changed_answer_has_its_own_date_and_the_others_keep_theirs() {
    world.pass(Duration.ofDays(9));
    Instant later = world.now();

    world.answer(course, Condition.TRAZODONE, Answer.YES);
    world.pass(Duration.ofDays(1));
    world.answer(course, Condition.ANTICOAGULANT, Answer.YES);

    assertThat(answered(Condition.TRAZODONE)).isEqualTo(new Answered(Answer.YES, later));
    assertThat(answered(Condition.ANTICOAGULANT))
        .isEqualTo(new Answered(Answer.YES, later.plus(Duration.ofDays(1))));
    assertThat(answered(Condition.SICKLE_CELL))
        .isEqualTo(new Answered(Answer.NO, TitrationWorld.START));
  }

  @Test
  void still_true_renews_every_answer_and_changes_none() {
    world.answer(course, Condition.TRAZODONE, Answer.YES);
    world.pass(Duration.ofDays(9));

    answer(ScreeningForm.stillTrue()).orThrow();

    for (Condition condition : Condition.values()) {
      Answer same = condition == Condition.TRAZODONE ? Answer.YES : Answer.NO;
      assertThat(answered(condition)).isEqualTo(new Answered(same, world.now()));
    }
  }

  @Test
  void the_same_answers_given_again_and_words_that_are_none_write_nothing() {
    long before = world.file(course).basis();

    assertRefused(answer(ScreeningForm.all(Answer.NO)), "Nothing was answered");
    for (Map<String, String> wrong : List.of(Map.of("TRAZODONE", "No"), Map.of("GOUT", "no"))) {
      assertRefused(answer(new ScreeningDraft(wrong, /* stillTrue= */ false)), "is no answer to");
    }

    assertThat(world.file(course).basis()).isEqualTo(before);
  }

  @Test
  void what_nobody_asked_stops_every_dose_until_it_is_answered() {
    course = world.openUnprepared("vasculogenic", "u100-1");
    assertThat(world.blocks(course)).contains(GuardRule.SCREENING_OPEN);

    answer(ScreeningForm.all(Answer.NO)).orThrow();
    assertThat(world.blocks(course)).doesNotContain(GuardRule.SCREENING_OPEN);

    world.answer(course, Condition.PENILE_IMPLANT, Answer.NOT_KNOWN);
    assertThat(world.blocks(course)).contains(GuardRule.SCREENING_OPEN);
  }

  @Test
  void a_caution_that_nobody_asked_about_stops_nothing() {
    world.signProposed(course);

    world.answer(course, Condition.TRAZODONE, Answer.NOT_KNOWN);

    assertThat(world.blocks(course)).isEmpty();
  }

  @Test
  void a_condition_that_asks_for_a_decision_waits_for_a_prescriber_and_a_reason() {
    world.answer(course, DECIDED, Answer.YES);
    assertThat(world.blocks(course)).contains(GuardRule.DECISION_MISSING);

    for (Account other : List.of(Staff.EDUCATOR, Staff.ON_CALL, Staff.AUDITOR)) {
      assertRefused(
          world.screenings().decide(other, course, DECIDED.name(), "seen"),
          "Only a prescriber can do that.");
    }
    assertRefused(decide("  "), "Write the reason: it stays on record.");
    assertThat(world.blocks(course)).contains(GuardRule.DECISION_MISSING);
    decide("his cardiologist agrees").orThrow();

    assertThat(world.last(course).reason()).contains("his cardiologist agrees");
    world.signProposed(course);
    assertThat(world.blocks(course)).isEmpty();
  }

  @Test
  void only_what_he_has_is_decided_upon() {
    assertRefused(decide("seen"), "He has no such condition on record");
    assertRefused(
        world.screenings().decide(Staff.PRESCRIBER, course, "GOUT", "seen"),
        "He has no such condition on record");
  }

  @Test
  void no_decision_opens_a_contraindication() {
    world.answer(course, Condition.SICKLE_CELL, Answer.YES);

    world
        .screenings()
        .decide(Staff.PRESCRIBER, course, Condition.SICKLE_CELL.name(), "seen")
        .orThrow();

    assertThat(world.blocks(course)).contains(GuardRule.CONTRAINDICATED);
  }

  @Test
  void a_decision_lasts_as_long_as_the_yes_that_it_was_about_and_no_longer() {
    world.answer(course, DECIDED, Answer.YES);
    decide("his cardiologist agrees").orThrow();
    world.pass(Duration.ofDays(9));
    answer(ScreeningForm.stillTrue()).orThrow();
    world.answer(course, DECIDED, Answer.NO);
    assertThat(world.blocks(course)).doesNotContain(GuardRule.DECISION_MISSING);

    world.overturn(course, DECIDED);
    world.answer(course, DECIDED, Answer.YES);

    assertThat(world.blocks(course)).contains(GuardRule.DECISION_MISSING);
  }

  /** Sickle cell, heart, scarring: whatever may forbid a dose, and not known as well as no. */
  @ParameterizedTest
  @EnumSource(Condition.class)
  void a_later_answer_of_an_educator_is_kept_and_lifts_nothing(Condition condition) {
    var before = condition.findingFor(SamplePreparations.ALPROSTADIL_20);
    world.answer(course, condition, Answer.YES);
    List<GuardRule> said = world.blocks(course);

    for (Answer later : List.of(Answer.NO, Answer.NOT_KNOWN, Answer.NO)) {
      world.answer(course, condition, later);
      assertThat(world.blocks(course)).isEqualTo(said);
      assertThat(world.file(course).answers().last().get(condition))
          .extracting(Answered::answer)
          .isEqualTo(later);
    }
    assertThat(said.size() > 1).isEqualTo(before.mustBeKnown());
  }

  @Test
  void only_a_prescriber_writes_that_a_yes_was_wrong_with_what_shows_it_and_in_words() {
    String name = Condition.SICKLE_CELL.name();
    world.answer(course, Condition.SICKLE_CELL, Answer.YES);
    Screenings screenings = world.screenings();

    for (Account other : List.of(Staff.EDUCATOR, Staff.ON_CALL, Staff.AUDITOR)) {
      assertRefused(
          screenings.overturn(other, course, name, "TEST", "negative"),
          "Only a prescriber can do that.");
    }
    assertThat(screenings.overturn(Staff.PRESCRIBER, course, name, "HEARSAY", " ").faults())
        .containsExactly(
            "Choose what shows that the yes was wrong.", "Write the reason: it stays on record.");
    assertRefused(
        screenings.overturn(
            Staff.PRESCRIBER, course, Condition.PENILE_IMPLANT.name(), "TEST", "words"),
        "He gave no yes to that question");
    assertThat(world.blocks(course)).contains(GuardRule.CONTRAINDICATED);
    screenings.overturn(Staff.PRESCRIBER, course, name, "WRONG_MAN", "his brother's").orThrow();

    assertThat(world.blocks(course)).doesNotContain(GuardRule.CONTRAINDICATED);
    assertThat(world.last(course).reason()).contains("his brother's");
    world.pass(Duration.ofDays(1));
    answer(ScreeningForm.stillTrue()).orThrow();
    assertThat(world.blocks(course)).doesNotContain(GuardRule.CONTRAINDICATED);
    world.answer(course, Condition.SICKLE_CELL, Answer.YES);
    assertThat(world.blocks(course)).contains(GuardRule.CONTRAINDICATED);
  }

  /** Whose answer it was then nobody can tell: of this man the question is open again. */
  @Test
  void another_mans_yes_leaves_the_question_open_and_a_test_answers_it() {
    world.answer(course, Condition.SICKLE_CELL, Answer.YES);
    overturn("WRONG_MAN");
    assertThat(world.blocks(course)).contains(GuardRule.SCREENING_OPEN);
    world.answer(course, Condition.SICKLE_CELL, Answer.YES);
    world.answer(course, Condition.SICKLE_CELL, Answer.NOT_KNOWN);
    overturn("WRONG_MAN");
    assertThat(world.blocks(course)).contains(GuardRule.SCREENING_OPEN);
    world.answer(course, Condition.SICKLE_CELL, Answer.YES);
    world.answer(course, Condition.SICKLE_CELL, Answer.NO);
    overturn("WRONG_MAN");
    assertThat(world.blocks(course)).doesNotContain(GuardRule.SCREENING_OPEN);

    world.answer(course, Condition.SICKLE_CELL, Answer.YES);
    world.answer(course, Condition.SICKLE_CELL, Answer.NOT_KNOWN);
    overturn("TEST");
    assertThat(world.blocks(course))
        .doesNotContain(GuardRule.SCREENING_OPEN, GuardRule.CONTRAINDICATED);
  }

  private void overturn(String shownBy) {
    world
        .screenings()
        .overturn(Staff.PRESCRIBER, course, Condition.SICKLE_CELL.name(), shownBy, "asked again")
        .orThrow();
  }

  @Test
  void answers_expire_after_the_months_of_the_protocol_and_not_a_millisecond_before() {
    world.signProposed(course);
    Instant end = TitrationWorld.START.plus(A_YEAR);

    world.setClock(end.minusMillis(1));
    assertThat(world.blocks(course)).isEmpty();
    world.setClock(end);
    assertThat(world.blocks(course)).containsExactly(GuardRule.SCREENING_EXPIRED);

    answer(ScreeningForm.stillTrue()).orThrow();
    assertThat(world.blocks(course)).isEmpty();
  }

  @Test
  void one_old_answer_makes_the_whole_screening_old() {
    world.pass(Duration.ofDays(200));
    answer(ScreeningForm.stillTrue()).orThrow();
    world.signProposed(course);
    world.setClock(TitrationWorld.START.plus(A_YEAR));
    assertThat(world.blocks(course)).isEmpty();

    world.answer(course, Condition.SICKLE_CELL, Answer.NOT_KNOWN);
    world.answer(course, Condition.SICKLE_CELL, Answer.NO);
    world.pass(Duration.ofDays(200));

    assertThat(world.blocks(course)).containsExactly(GuardRule.SCREENING_EXPIRED);
  }

  @Test
  void expired_answers_are_overridden_until_a_day_within_the_grace_of_the_protocol() {
    world.setClock(TitrationWorld.START.plus(A_YEAR));
    SignDraft draft = world.overriding(course, "asked by phone", GuardRule.SCREENING_EXPIRED);

    assertRefused(world.sign(course, world.proposed(course)), "On hold: The answers");
    for (String day : List.of("", "2027-03-01", "2027-04-02")) {
      assertRefused(
          world.sign(course, SignForms.until(draft, day)),
          "Choose a day from 2 March 2027 to 1 April 2027");
    }
    world.sign(course, SignForms.until(draft, "2027-03-09")).orThrow();

    assertThat(world.blocks(course)).isEmpty();
    Instant midnightInNewYork = Instant.parse("2027-03-10T05:00:00Z");
    world.setClock(midnightInNewYork.minusMillis(1));
    assertThat(world.blocks(course)).isEmpty();
    world.setClock(midnightInNewYork);
    assertThat(world.blocks(course)).containsExactly(GuardRule.SCREENING_EXPIRED);
  }

  @Test
  void coronary_disease_of_a_low_class_matters_with_phentolamine_only() {
    world.signProposed(course);
    world.answer(course, Condition.CORONARY_DISEASE, Answer.YES);
    assertThat(world.blocks(course)).isEmpty();

    course = world.openWith(SamplePreparations.THREE_DRUG, "u100-0.5");
    world.answer(course, Condition.CORONARY_DISEASE, Answer.YES);

    assertThat(world.blocks(course)).contains(GuardRule.DECISION_MISSING);
    assertThat(world.state(course).advice().decision()).isEqualTo(new Decision.Pause());
    assertThat(world.sign(course, world.instead(course, 100)).faults())
        .contains(
            "Not possible: He has a condition that asks for a prescriber's written decision, and"
                + " none is on record.");
    world
        .screenings()
        .decide(Staff.PRESCRIBER, course, Condition.CORONARY_DISEASE.name(), "agreed")
        .orThrow();
    world.signProposed(course);
    assertThat(world.blocks(course)).isEmpty();
  }

  @Test
  void an_auditor_writes_nothing_of_a_screening() {
    String only = "Only a prescriber, a nurse educator or an on-call";

    assertRefused(
        world.screenings().answer(Staff.AUDITOR, course, ScreeningForm.stillTrue()), only);
    assertRefused(world.screenings().examine(Staff.AUDITOR, course, "2026-03-02", "no", ""), only);
    assertRefused(
        world
            .screenings()
            .baseline(Staff.AUDITOR, course, new BaselineDraft("", "good", "good", "partner")),
        only);
  }
}
