package rungwise.dosing.predictive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.response.Trial;

final class RarityTest {

  /** Sums of doubles, against scipy.stats 1.17.1. */
  private static Offset<Double> nearly(double expected) {
    return within(1e-12 + 1e-9 * expected);
  }

  @Test
  void a_product_of_rarities_is_judged_as_scipy_does() {
    assertProduct(0.03669597485852449, 0.02, 0.3);
    assertProduct(0.005629223251149618, 0.001, 0.5, 0.04, 1.0);
    assertThat(Rarity.ofProduct(-50.65687204586901, 3) / 1.3347162147816331e-19)
        .isCloseTo(1, within(1e-9));
    assertThat(Rarity.ofProduct(0, 0)).isEqualTo(1);
    assertThat(Rarity.ofProduct(-1e9, 40)).isEqualTo(0);
  }

  private static void assertProduct(double expected, double... rarities) {
    double logs = 0;
    for (double one : rarities) {
      logs += Math.log(one);
    }
    assertThat(Rarity.ofProduct(logs, rarities.length)).isCloseTo(expected, nearly(expected));
  }

  @Test
  void a_count_is_judged_as_scipy_does() {
    assertThat(Rarity.ofCount(8, 2.5))
        .isCloseTo(0.004246695489344507, nearly(0.004246695489344507));
    assertThat(Rarity.ofCount(120, 80)).isCloseTo(1.8190216415756687e-05, nearly(1.8e-5));
    assertThat(Rarity.ofCount(3000, 2500) / 1.7368408303344774e-22).isCloseTo(1, within(1e-9));
    assertThat(Rarity.ofCount(1, 0.01)).isCloseTo(0.009950166250831952, nearly(0.01));
    assertThat(Rarity.ofCount(3, 3)).isEqualTo(1);
    assertThat(Rarity.ofCount(0, 0)).isEqualTo(1);
    assertThat(Rarity.ofCount(1, 0)).isEqualTo(0);
  }

  /** Enumerated for chances at random: at most a with a probability of at most a. */
  @Test
  void the_rarity_of_a_grade_is_small_no_oftener_than_it_says() {
    var random = new Random(1);
    for (int attempt = 0; attempt < 1000; attempt++) {
      double[] chances = random.doubles(4, 0, 1).map(one -> one * one * one).toArray();
      double sum = chances[0] + chances[1] + chances[2] + chances[3];
      for (int i = 0; i < chances.length; i++) {
        chances[i] /= sum;
      }
      for (double rarity : new double[] {0.001, 0.01, 0.1, 0.5, 0.9}) {
        assertThat(Rarity.chanceOfGrades(chances, rarity)).isLessThanOrEqualTo(rarity);
      }
      assertThat(Rarity.chanceOfGrades(chances, 1)).isCloseTo(1, within(1e-12));
    }
    assertThat(Rarity.ofGrade(new double[] {0.5, 0.3, 0.15, 0.05}, 3)).isCloseTo(0.2, within(1e-9));
  }

  @Test
  void a_time_is_rare_at_both_ends_and_what_is_open_is_taken_as_the_least_rare() {
    assertThat(Rarity.ofTime(0.002, 0.002)).isCloseTo(0.004, within(1e-12));
    assertThat(Rarity.ofTime(0.999, 0.999)).isCloseTo(0.002, within(1e-12));
    assertThat(Rarity.ofTime(0.9, 0.3)).isEqualTo(1);
    assertThat(Rarity.ofTime(0.02, 0)).isCloseTo(0.04, within(1e-12));
    assertThat(Rarity.ofTime(1, 0.98)).isCloseTo(0.04, within(1e-12));
  }

  /** What is longer than a limit at grade 3 and at grade 4 is together what a limit's sum says. */
  @Test
  void the_time_is_foreseen_for_the_very_grade() {
    Trial before = new Trial(0.4, Grade.USABLE, new Lasted.Exactly(70));
    double useful60 = 0;
    double over = 0;
    for (Grade grade : List.of(Grade.USABLE, Grade.FULLY_FIRM)) {
      Trial next = new Trial(0.2, grade, new Lasted.Between(60, 240));
      Ahead ahead =
          StepsAhead.of(PredictiveCheckTest.TRUTH, "vasculogenic", List.of(before, next)).getLast();
      useful60 = ahead.useful60();
      over += ahead.overShortest();
      assertThat(ahead.overLongest()).isLessThan(ahead.overShortest()).isPositive();
    }

    assertThat(over).isCloseTo(useful60, within(1e-12));
  }
}
