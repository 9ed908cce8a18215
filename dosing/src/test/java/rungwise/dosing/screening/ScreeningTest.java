package rungwise.dosing.screening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static rungwise.dosing.LabelWorld.START;
import static rungwise.dosing.LabelWorld.minutes;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import rungwise.dosing.Dosing;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.guard.CourseGuards;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Grade;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;

/** Each answer, for alprostadil alone and for a mixture with phentolamine. */
final class ScreeningTest {

  private static final Preparation ALONE = SamplePreparations.ALPROSTADIL_20;
  private static final Preparation MIXTURE = SamplePreparations.THREE_DRUG;

  private static List<GuardRule> rules(LabelWorld world) {
    return CourseGuards.ask(world.question()).stream().map(Verdict::rule).toList();
  }

  @ParameterizedTest
  @EnumSource(Condition.class)
  void each_condition_does_with_alprostadil_alone_what_its_row_says(Condition condition) {
    List<GuardRule> yes = rules(new LabelWorld().screened(condition, Answer.YES));
    List<GuardRule> open = rules(new LabelWorld().screened(condition, Answer.NOT_KNOWN));

    switch (condition.findingFor(ALONE)) {
      case NOTHING -> assertThat(yes).isEmpty();
      case CAUTION -> assertThat(yes).containsExactly(GuardRule.CAUTION);
      case DECISION -> assertThat(yes).containsExactly(GuardRule.DECISION_MISSING);
      case CONTRAINDICATION -> assertThat(yes).containsExactly(GuardRule.CONTRAINDICATED);
    }
    assertThat(open)
        .isEqualTo(
            condition.findingFor(ALONE).mustBeKnown()
                ? List.of(GuardRule.SCREENING_OPEN)
                : List.of());
  }

  /** US label of phentolamine: coronary disease of any kind, although the cardiac class is low. */
  @Test
  void coronary_disease_of_a_low_class_needs_a_decision_only_where_phentolamine_is_given() {
    for (Condition condition :
        Set.of(Condition.PAST_INFARCTION, Condition.STABLE_ANGINA, Condition.CORONARY_DISEASE)) {
      Screening screening = Screening.all(Answer.NO, START).with(condition, Answer.YES, START);

      assertThat(screening.cardiacRisk()).contains(CardiacRisk.LOW);
      assertThat(screening.undecided(ALONE)).isEmpty();
      assertThat(screening.undecided(MIXTURE)).containsExactly(condition);
    }
  }

  @Test
  void a_written_decision_opens_its_own_condition_and_no_other() {
    Screening both =
        Screening.all(Answer.NO, START)
            .with(Condition.MAO_INHIBITOR, Answer.YES, START)
            .with(Condition.VENOUS_LEAK, Answer.YES, START);
    Screening decided = new Screening(both.answers(), Set.of(Condition.MAO_INHIBITOR));

    assertThat(decided.undecided(ALONE)).containsExactly(Condition.VENOUS_LEAK);
  }

  @Test
  void no_decision_opens_a_contraindication() {
    Screening sickle =
        Screening.all(Answer.NO, START).with(Condition.SICKLE_CELL, Answer.YES, START);
    Screening decided = new Screening(sickle.answers(), EnumSet.allOf(Condition.class));

    assertThat(rules(new LabelWorld().screened(decided)))
        .containsExactly(GuardRule.CONTRAINDICATED);
  }

  @Test
  void what_was_never_asked_counts_as_not_known() {
    assertThat(Screening.NOT_ASKED.open(ALONE))
        .containsExactlyElementsOf(
            Arrays.stream(Condition.values())
                .filter(condition -> condition.findingFor(ALONE).mustBeKnown())
                .toList());
    assertThat(Screening.NOT_ASKED.cardiacRisk()).isEmpty();
    assertThat(new Screening(Map.of(), Set.of()).answerTo(Condition.TRAZODONE))
        .isEqualTo(Answer.NOT_KNOWN);
  }

  @Test
  void an_open_heart_question_leaves_the_class_open_unless_it_is_high_already() {
    Screening open =
        Screening.all(Answer.NO, START).with(Condition.HEART_FAILURE_2, Answer.NOT_KNOWN, START);

    assertThat(open.cardiacRisk()).isEmpty();
    assertThat(open.with(Condition.UNSTABLE_ANGINA, Answer.YES, START).cardiacRisk())
        .contains(CardiacRisk.HIGH);
  }

  @Test
  void answers_hold_for_the_protocols_months_and_not_a_millisecond_longer() {
    var end = Instant.parse("2027-03-02T20:00:00Z");

    assertThat(rules(new LabelWorld().at(end.minusMillis(1)))).isEmpty();
    assertThat(rules(new LabelWorld().at(end))).containsExactly(GuardRule.SCREENING_EXPIRED);
  }

  @Test
  void the_oldest_answer_that_matters_decides_whether_they_have_expired() {
    Screening renewed =
        Screening.all(Answer.NO, START.plus(Duration.ofDays(300)))
            .with(Condition.PAST_INFARCTION, Answer.NO, START);

    assertThat(renewed.oldest(ALONE)).contains(START.plus(Duration.ofDays(300)));
    assertThat(renewed.oldest(MIXTURE)).contains(START);
  }

  @Test
  void the_hours_after_a_pde5_inhibitor_are_the_clinics_own_and_say_so() {
    Verdict verdict =
        CourseGuards.ask(new LabelWorld().screened(Condition.PDE5_INHIBITOR, Answer.YES).question())
            .getFirst();

    assertThat(verdict.facts())
        .contains(Fact.said("the clinic's own hours between the two", 72))
        .anyMatch(fact -> fact.toString().contains("no published figure"));
  }

  @Test
  void scarring_found_later_stops_the_treatment() {
    Advice advice =
        Dosing.advise(
            new LabelWorld()
                .injected("0.25", Grade.USABLE, minutes(40))
                .screened(Condition.CURVATURE_OR_SCARRING, Answer.YES)
                .question());

    assertThat(advice.decision()).isEqualTo(new Decision.Stop());
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.NOT_SAFE_TO_START);
  }

  @Test
  void a_missing_decision_waits_and_does_not_stop() {
    Advice advice =
        Dosing.advise(new LabelWorld().screened(Condition.HEART_FAILURE_2, Answer.YES).question());

    assertThat(advice.decision()).isEqualTo(new Decision.Pause());
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.DECISION_FIRST);
  }

  /** Rhoden, Int J Impot Res 2002;14:245. */
  @ParameterizedTest
  @CsvSource({
    "4, BELOW_THE_BANDS",
    "5, SEVERE",
    "7, SEVERE",
    "8, MODERATE",
    "11, MODERATE",
    "12, MILD_TO_MODERATE",
    "16, MILD_TO_MODERATE",
    "17, MILD",
    "21, MILD",
    "22, NONE",
    "25, NONE"
  })
  void a_total_lies_in_its_published_band(int total, ErectileScore.Band band) {
    assertThat(ErectileScore.of(total).orElseThrow().band()).isEqualTo(band);
  }

  @Test
  void no_total_lies_outside_1_to_25() {
    assertThat(ErectileScore.of(0)).isEmpty();
    assertThat(ErectileScore.of(26)).isEmpty();
    assertThatThrownBy(() -> new ErectileScore(26)).isInstanceOf(IllegalArgumentException.class);
  }
}
