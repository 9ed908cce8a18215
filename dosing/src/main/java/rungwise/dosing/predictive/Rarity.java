package rungwise.dosing.predictive;

import java.util.Arrays;

/**
 * How rarely something so unlikely comes if the model is right.
 *
 * <p>A rarity of a report, given the ones before it, is at most a with a probability of at most a,
 * whatever was reported before and whatever rule chose the dose. So rarities of one man can be
 * multiplied as if they were independent (Rosenblatt, Annals of Mathematical Statistics 23 (1952)
 * 470; Fisher's sum of logarithms), and the sums over men are bounded by sums of chances.
 */
final class Rarity {

  private static final double HALF = 0.5;

  /** Two chances are the same if they differ by an error of sums alone. */
  private static final double SAME = 1 + 1e-9;

  /** Where the terms of a sum that falls no longer add to it. */
  private static final double NEGLIGIBLE = 1e-17;

  private Rarity() {}

  /**
   * The chance of a grade that is as unlikely or more so.
   *
   * @param chances of grades 1 to 4
   * @param grade from 1 to 4
   */
  static double ofGrade(double[] chances, int grade) {
    double own = chances[grade - 1] * SAME;
    return Math.min(1, Arrays.stream(chances).filter(chance -> chance <= own).sum());
  }

  /** How likely a grade of that rarity or a smaller one is: never more than it. */
  static double chanceOfGrades(double[] chances, double rarity) {
    double sum = 0;
    for (int grade = 1; grade <= chances.length; grade++) {
      sum += ofGrade(chances, grade) <= rarity ? chances[grade - 1] : 0;
    }
    return sum;
  }

  /**
   * The chance of a time as far out, to both sides. Where a report leaves it open, the least rare
   * of what it allows.
   *
   * @param overShortest the chance of more than the shortest time that the report allows
   * @param overLongest the same of the longest
   */
  static double ofTime(double overShortest, double overLongest) {
    double nearest = Math.clamp(HALF, Math.min(overShortest, overLongest), overShortest);
    return Math.min(1, 2 * Math.min(nearest, 1 - nearest));
  }

  /**
   * The chance that so many independent rarities have so small a product: the tail of a chi-squared
   * variable of twice as many degrees of freedom.
   *
   * @param logs the sum of their logarithms
   */
  static double ofProduct(double logs, int count) {
    double term = 1;
    double sum = 0;
    for (int i = 0; i < count; i++) {
      sum += term;
      term *= -logs / (i + 1);
    }
    return count == 0 ? 1 : Math.min(1, Math.exp(logs + Math.log(sum)));
  }

  /**
   * The chance of so many or more where so many are expected, as a Poisson variable counts: never
   * less spread than a sum of chances (Hoeffding, Annals of Mathematical Statistics 27 (1956) 713).
   */
  static double ofCount(int found, double expected) {
    if (found <= expected) {
      return 1;
    }
    double log = -expected;
    for (int i = 1; i <= found; i++) {
      log += Math.log(expected / i);
    }
    double part = 1;
    double sum = 0;
    for (int next = found + 1; part > NEGLIGIBLE; next++) {
      sum += part;
      part *= expected / next;
    }
    return Math.exp(log) * sum;
  }
}
