package rungwise.dosing.strength;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rungwise.dosing.known.Component;
import rungwise.dosing.strength.StrengthLeft.Between;
import rungwise.dosing.strength.StrengthLeft.NotMeasured;
import rungwise.dosing.strength.StrengthLeft.Why;

/** How much a vial may still hold, and where nobody has measured it. */
final class StrengthLeftTest {

  private static StrengthLeft after(Kept... kept) {
    return StrengthLeft.of(StrengthLeft.STUDIED, List.of(kept));
  }

  private static Between range(List<Kept> kept) {
    return (Between) StrengthLeft.of(StrengthLeft.STUDIED, kept);
  }

  /** 88.0 percent after 133 days at 4 degrees (Korean J Androl 2003;21:23), inside the range. */
  @Test
  void what_was_measured_lies_between_the_two_ends() {
    var cold = (Between) after(new Kept(4, 4, 133));
    var warm = (Between) after(new Kept(25, 25, 5));

    assertThat(0.88).isBetween(cold.least(), cold.most());
    assertThat(0.864).isBetween(warm.least(), warm.most());
    assertThat(cold.least()).isCloseTo(0.88 * 0.88, within(1e-12));
    assertThat(warm.most()).isCloseTo(Math.sqrt(0.864), within(1e-12));
  }

  @Test
  void a_new_vial_holds_what_its_label_says() {
    assertThat(after()).isEqualTo(new Between(1, 1));
  }

  /** From 86 to 94 percent if the rates were sure: 8 and 4 degrees for 28 days, worked by hand. */
  @Test
  void a_fridge_that_may_be_colder_than_the_study_may_have_taken_nothing() {
    var fridge = (Between) after(new Kept(2, 8, 28));

    assertThat(fridge.most()).isEqualTo(1);
    assertThat(fridge.least()).isCloseTo(Math.exp(-2 * 28 * 0.001916), within(1e-4));
  }

  @Test
  void outside_of_what_was_studied_nothing_is_said() {
    assertThat(after(new Kept(-1, 4, 1))).isEqualTo(new NotMeasured(Why.FROZEN));
    assertThat(after(new Kept(4, 25.1, 0.1))).isEqualTo(new NotMeasured(Why.TOO_WARM));
    assertThat(after(new Kept(4, 4, 134))).isEqualTo(new NotMeasured(Why.TOO_LONG));
    assertThat(after(new Kept(25, 25, 5.1))).isEqualTo(new NotMeasured(Why.TOO_MUCH_LOST));
    assertThat(
            StrengthLeft.of(
                Set.of(Component.PAPAVERINE, Component.ALPROSTADIL), List.of(new Kept(4, 4, 1))))
        .isEqualTo(new NotMeasured(Why.OTHER_COMPOSITION));
  }

  @Test
  void strength_never_rises_with_time_or_with_warmth() {
    var random = new Random(19);
    int compared = 0;
    for (int i = 0; i < 2000; i++) {
      double cold = random.nextDouble(0, 25);
      double warm = random.nextDouble(cold, 25);
      double days = random.nextDouble(0, 20);
      var kept = List.of(new Kept(cold, warm, days));
      var longer = new ArrayList<>(kept);
      longer.add(new Kept(4, 8, random.nextDouble(0, 20)));
      var warmer =
          List.of(new Kept(random.nextDouble(cold, warm), random.nextDouble(warm, 25), days));
      for (List<Kept> worse : List.of(longer, warmer)) {
        if (StrengthLeft.of(StrengthLeft.STUDIED, worse) instanceof Between less) {
          compared++;
          assertThat(less.least()).isLessThanOrEqualTo(range(kept).least());
          assertThat(less.most()).isLessThanOrEqualTo(range(kept).most());
        }
      }
    }
    assertThat(compared).isGreaterThan(500);
  }
}
