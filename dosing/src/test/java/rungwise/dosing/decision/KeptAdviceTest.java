package rungwise.dosing.decision;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rungwise.dosing.Dosing;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.decision.DecisionValues.Kind;
import rungwise.dosing.decision.DecisionValues.Part;
import rungwise.dosing.decision.DecisionValues.Spoken;
import rungwise.dosing.decision.DecisionValues.Steps;
import rungwise.dosing.history.Grade;

/** A decision is compared by its values, and its words only when all of them are the same. */
final class KeptAdviceTest {

  private static final Advice PARTIAL =
      Dosing.advise(
          new LabelWorld()
              .injected("0.12", Grade.FULLER, minutes(20))
              .injected("0.25", Grade.FULLER, minutes(20))
              .question());

  private static final DecisionValues VALUES = DecisionValues.of(PARTIAL);

  private static KeptAdvice kept(DecisionValues values) {
    return new KeptAdvice(PARTIAL.record(), Optional.of(values));
  }

  private static DecisionValues with(List<Spoken> spoken, String engine) {
    return new DecisionValues(
        VALUES.kind(),
        VALUES.volume(),
        spoken,
        VALUES.notBefore(),
        VALUES.choice(),
        VALUES.protocol(),
        engine);
  }

  @Test
  void the_values_say_what_was_proposed_and_which_rules_spoke_of_which_steps() {
    assertThat(VALUES.kind()).isEqualTo(Kind.STEP_UP);
    assertThat(VALUES.volume()).contains(ml("0.5"));
    assertThat(VALUES.spoken().getFirst())
        .isEqualTo(new Spoken(Part.REASON, PARTIAL.reason().rule().name(), Optional.empty()));
    assertThat(VALUES.spoken())
        .contains(
            new Spoken(
                Part.STEP, "MORE_THAN_ONE_STEP_UP", Optional.of(new Steps(ml("0.75"), ml("1")))));
  }

  @Test
  void what_was_kept_today_does_not_differ_today() {
    KeptAdvice kept = KeptAdvice.of(PARTIAL);

    assertThat(kept.differencesTo(PARTIAL)).isEmpty();
    assertThat(kept.proposesTheSameAs(PARTIAL)).isTrue();
  }

  @Test
  void each_value_differs_under_its_own_name() {
    var other =
        new DecisionValues(
            Kind.REPEAT,
            Optional.of(ml("0.25")),
            List.of(),
            Optional.empty(),
            "by another way",
            "another protocol",
            "1");

    assertThat(kept(other).differencesTo(PARTIAL))
        .extracting(Difference::kind)
        .contains(
            Difference.Kind.DECISION,
            Difference.Kind.VOLUME,
            Difference.Kind.REASONS,
            Difference.Kind.VERDICTS,
            Difference.Kind.CHOICE,
            Difference.Kind.PROTOCOL)
        .doesNotContain(Difference.Kind.WORDS);
    assertThat(kept(other).proposesTheSameAs(PARTIAL)).isFalse();
  }

  @Test
  void a_rule_that_only_one_of_them_names_is_told_alone() {
    List<Spoken> fewer = VALUES.spoken().stream().filter(one -> one.part() != Part.STEP).toList();

    assertThat(kept(with(fewer, "5")).differencesTo(PARTIAL))
        .singleElement()
        .satisfies(
            difference -> {
              assertThat(difference.kind()).isEqualTo(Difference.Kind.VERDICTS);
              assertThat(difference.kept()).isEqualTo("nothing");
              assertThat(difference.now())
                  .contains("MORE_THAN_ONE_STEP_UP")
                  .doesNotContain("HOME_NOT_READY");
            });
  }

  @Test
  void another_engine_alone_is_no_difference_and_other_words_alone_are_one_of_words() {
    assertThat(kept(with(VALUES.spoken(), "5")).differencesTo(PARTIAL)).isEmpty();
    assertThat(new KeptAdvice("other words", Optional.of(VALUES)).differencesTo(PARTIAL))
        .extracting(Difference::kind)
        .containsExactly(Difference.Kind.WORDS);
  }

  @Test
  void of_a_text_of_before_the_decision_the_choice_and_the_engine_are_read() {
    var before = new KeptAdvice(PARTIAL.record(), Optional.empty());
    var other =
        new KeptAdvice("decision: Repeat 0.25 mL\nchoice: by rule\nengine: 2", Optional.empty());

    assertThat(before.differencesTo(PARTIAL)).isEmpty();
    assertThat(before.proposesTheSameAs(PARTIAL)).isTrue();
    assertThat(other.engine()).contains("2");
    assertThat(other.choice()).contains("by rule");
    assertThat(other.proposesTheSameAs(PARTIAL)).isFalse();
    assertThat(other.differencesTo(PARTIAL))
        .containsExactly(
            new Difference(Difference.Kind.DECISION, "Repeat 0.25 mL", "StepUp 0.5 mL"));
  }
}
