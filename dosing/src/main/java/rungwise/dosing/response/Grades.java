package rungwise.dosing.response;

import java.util.List;
import rungwise.dosing.history.Grade;

/**
 * What all grades of a history say of one requirement: exp(constant + linear (eta - from)) divided
 * by the product of 1 + factor exp(-beta (eta - from)).
 */
final class Grades {

  private final double[] factors;
  private final double linear;
  private final double constant;

  Grades(Population population, List<Trial> trials, double from) {
    factors = factors(population, trials, from);
    linear = linear(population, trials);
    constant = constant(population, trials, from);
  }

  double[] factors() {
    return factors;
  }

  double linear() {
    return linear;
  }

  double constant() {
    return constant;
  }

  /** Two for each trial; one of them is 0 at the lowest and the highest grade. */
  private static double[] factors(Population population, List<Trial> trials, double from) {
    var factors = new double[2 * trials.size()];
    for (int i = 0; i < trials.size(); i++) {
      Grade grade = trials.get(i).grade();
      double rise = Math.exp(population.beta() * (trials.get(i).logDose() - from));
      factors[2 * i] = reaches(grade) ? rise * Math.exp(-threshold(population, grade)) : 0;
      factors[2 * i + 1] =
          grade == Grade.FULLY_FIRM ? 0 : rise * Math.exp(-nextThreshold(population, grade));
    }
    return factors;
  }

  private static double linear(Population population, List<Trial> trials) {
    return -population.beta() * trials.stream().filter(one -> reaches(one.grade())).count();
  }

  private static double constant(Population population, List<Trial> trials, double from) {
    double sum = 0;
    for (Trial trial : trials) {
      Grade grade = trial.grade();
      if (reaches(grade)) {
        double threshold = threshold(population, grade);
        sum += population.beta() * (trial.logDose() - from) - threshold;
        if (grade != Grade.FULLY_FIRM) {
          sum += Math.log(-Math.expm1(threshold - nextThreshold(population, grade)));
        }
      }
    }
    return sum;
  }

  /** Whether a threshold was passed at all: grade 0 is read as 1. */
  private static boolean reaches(Grade grade) {
    return grade != Grade.NONE && grade != Grade.FULLER;
  }

  /** The threshold of a grade by its number; infinite where every or no response reaches it. */
  static double thresholdOf(Population population, int grade) {
    return Grade.of(grade).map(one -> threshold(population, one)).orElse(Double.POSITIVE_INFINITY);
  }

  /** The threshold that this grade has passed. */
  private static double threshold(Population population, Grade grade) {
    return switch (grade) {
      case NONE, FULLER -> Double.NEGATIVE_INFINITY;
      case FIRM_NOT_USABLE -> population.c2();
      case USABLE -> 0;
      case FULLY_FIRM -> population.c4();
    };
  }

  /** The threshold that this grade has not passed. */
  private static double nextThreshold(Population population, Grade grade) {
    return switch (grade) {
      case NONE, FULLER -> population.c2();
      case FIRM_NOT_USABLE -> 0;
      case USABLE -> population.c4();
      case FULLY_FIRM -> Double.POSITIVE_INFINITY;
    };
  }
}
