package rungwise.dosing.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.START;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rungwise.dosing.LabelSheet;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Question;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Form;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;

/**
 * Doses of less than a day are held together against every limit of one dose; each limit may be
 * reached and not passed. That the limits hold for the sum is an assumption of ours.
 */
final class SumOfADayTest {

  private static final Preparation WEAKER = LabelWorld.ALPROSTADIL_10;

  /** 20 mcg/mL with a limit of the clinic's own; the ladders of these tests go beyond. */
  private static Preparation limitedTo(String mass, String maximum) {
    Ingredient limited =
        new Ingredient(
            Component.ALPROSTADIL,
            Concentration.parse("20 mcg/mL").orThrow(),
            Optional.of(Mass.parse(mass).orThrow()));
    return new Preparation(
        new PreparationId("limited"),
        "Limited",
        new Form.Solution(),
        List.of(limited),
        ml(maximum),
        Optional.empty());
  }

  /** Two hours after 0.25 mL. */
  private static LabelWorld soonAfter(Preparation preparation) {
    return new LabelWorld()
        .with(preparation)
        .injected("0.25", Grade.FULLER, minutes(20))
        .at(START.plus(Duration.ofHours(2)));
  }

  private static Ladder ladder(Preparation preparation, String ceiling) {
    return new Ladder(
        preparation, Barrels.U100_1, List.of(ml("0.1"), ml("0.12"), ml("0.25")), ml(ceiling));
  }

  private static List<List<Fact>> facts(Question question, String volume) {
    return Together.ask(question, ml(volume)).stream().map(Verdict::facts).toList();
  }

  @Test
  void a_limit_of_the_preparation_is_held_against_the_sum() {
    Preparation limited = limitedTo("7 mcg", "0.35");
    Question question = soonAfter(limited).question(ladder(limited, "1"));

    assertThat(facts(question, "0.1")).isEmpty();
    assertThat(facts(question, "0.12"))
        .containsExactly(
            List.of(
                Fact.said("both together", "0.37 mL: alprostadil 7.4 mcg"),
                Fact.said("limit", "7 mcg")));
  }

  @Test
  void a_limit_of_the_protocol_is_held_against_the_sum() {
    LabelWorld world =
        new LabelWorld()
            .by(LabelSheet.label().componentLimit(Component.ALPROSTADIL, "7").protocol())
            .injected("0.25", Grade.FULLER, minutes(20))
            .at(START.plus(Duration.ofHours(2)));
    Preparation preparation = new LabelWorld().ladder().preparation();
    Question question = world.question(ladder(preparation, "1"));

    assertThat(facts(question, "0.1")).isEmpty();
    assertThat(facts(question, "0.12"))
        .containsExactly(
            List.of(
                Fact.said("both together", "0.37 mL: alprostadil 7.4 mcg"),
                Fact.said(
                    "limit of the protocol", question.protocol().componentLimits().getFirst())));
  }

  @Test
  void a_maximum_volume_is_held_against_what_is_of_this_preparation_only() {
    Preparation preparation = new LabelWorld().ladder().preparation();
    Question same = soonAfter(preparation).question(ladder(preparation, "0.36"));
    LabelWorld another =
        new LabelWorld()
            .injectedWith(WEAKER, "0.25", minutes(20))
            .at(START.plus(Duration.ofHours(2)));
    Question other = another.question(ladder(preparation, "0.36"));

    assertThat(facts(same, "0.1")).isEmpty();
    assertThat(facts(same, "0.12"))
        .containsExactly(
            List.of(
                Fact.said("both together", "0.37 mL: alprostadil 7.4 mcg"),
                Fact.said("maximum volume", "0.36 mL")));
    assertThat(facts(other, "0.12")).isEmpty();
  }

  @Test
  void of_two_preparations_the_content_is_told_together_and_no_volume() {
    Preparation preparation = new LabelWorld().ladder().preparation();
    LabelWorld world =
        new LabelWorld()
            .injectedWith(WEAKER, "0.25", minutes(20))
            .at(START.plus(Duration.ofHours(2)));

    assertThat(Together.of(world.question(ladder(preparation, "1")), ml("0.1")).words())
        .isEqualTo("alprostadil 4.5 mcg");
  }
}
