package rungwise.inference;

/**
 * The standard normal distribution, from tables that are made when the class is loaded.
 *
 * <p>A table holds the Taylor coefficients of a function about points 1/32 apart, so a value is a
 * look-up and one polynomial of degree 5, and the nearest point is at most 1/64 away. What Taylor's
 * theorem leaves is at most (1/64)^6/720 times the sixth derivative: below 1e-13 for the
 * distribution function, whose sixth derivative stays below 3, and below 5e-13 for the tail ratio,
 * whose sixth derivative is largest at 0 and below 24 there.
 *
 * <p>The tail ratio R(z) = P(Z > z) / density(z), known as Mills' ratio, keeps the tail's relative
 * accuracy where the tail itself is too small for a table. It solves R' = z R - 1, which gives all
 * its derivatives. Its values come from the series of the distribution function below 2.5 and from
 * Laplace's continued fraction above (Abramowitz and Stegun, 26.2.10 and 26.2.14).
 */
public final class Normal {

  private static final double LOG_ROOT_TWO_PI = 0.9189385332046728;

  /** The density at 0. */
  private static final double PEAK = 0.3989422804014327;

  private static final int POINTS_IN_ONE = 32;
  private static final int COEFFICIENTS = 6;

  /** Beyond this the distribution function is 0 or 1 to 1e-17. */
  private static final double EDGE = 8.5;

  private static final int LAST_OF_CDF = (int) (2 * EDGE * POINTS_IN_ONE);
  private static final double TAIL_EDGE = 12;
  private static final int LAST_OF_TAIL = (int) (TAIL_EDGE * POINTS_IN_ONE);
  private static final double SERIES_BELOW = 2.5;
  private static final int LEVELS_OF_FRACTION = 300;
  private static final int LEVELS_BEYOND_TABLE = 16;
  private static final double NEGLIGIBLE = 1e-18;
  private static final double HALF = 0.5;

  private static final double[] CDF = cdfTable();
  private static final double[] TAIL = tailTable();

  private Normal() {}

  /** P(Z is at most z), with an absolute error below 1e-12. */
  public static double cdf(double z) {
    if (z >= EDGE) {
      return 1;
    }
    if (!(z > -EDGE)) {
      return 0;
    }
    double steps = (z + EDGE) * POINTS_IN_ONE;
    int point = (int) (steps + HALF);
    return polynomial(CDF, point * COEFFICIENTS, (steps - point) / POINTS_IN_ONE);
  }

  /** P(Z is more than z) divided by the density at z, for z from 0; relative error below 1e-12. */
  public static double tailRatio(double z) {
    if (z >= TAIL_EDGE) {
      return fraction(z, LEVELS_BEYOND_TABLE);
    }
    double steps = z * POINTS_IN_ONE;
    int point = (int) (steps + HALF);
    return polynomial(TAIL, point * COEFFICIENTS, (steps - point) / POINTS_IN_ONE);
  }

  /** The density. */
  public static double density(double z) {
    return PEAK * Math.exp(-HALF * z * z);
  }

  /** The logarithm of the density. */
  public static double logDensity(double z) {
    return -HALF * z * z - LOG_ROOT_TWO_PI;
  }

  private static double polynomial(double[] table, int at, double d) {
    double low = table[at] + d * (table[at + 1] + d * table[at + 2]);
    double high = table[at + 3] + d * (table[at + 4] + d * table[at + 5]);
    return low + d * d * d * high;
  }

  /** Its derivatives are the density times a Hermite polynomial: f'' = -z f' and so on. */
  private static double[] cdfTable() {
    var table = new double[(LAST_OF_CDF + 1) * COEFFICIENTS];
    for (int point = 0; point <= LAST_OF_CDF; point++) {
      double z = (double) point / POINTS_IN_ONE - EDGE;
      double tail = exactTailRatio(Math.abs(z)) * density(z);
      int at = point * COEFFICIENTS;
      table[at] = z < 0 ? tail : 1 - tail;
      double before = 0;
      double derivative = density(z);
      double factorial = 1;
      for (int order = 1; order < COEFFICIENTS; order++) {
        factorial *= order;
        table[at + order] = derivative / factorial;
        double next = -z * derivative - (order - 1) * before;
        before = derivative;
        derivative = next;
      }
    }
    return table;
  }

  private static double[] tailTable() {
    var table = new double[(LAST_OF_TAIL + 1) * COEFFICIENTS];
    for (int point = 0; point <= LAST_OF_TAIL; point++) {
      double z = (double) point / POINTS_IN_ONE;
      int at = point * COEFFICIENTS;
      double before = exactTailRatio(z);
      double derivative = firstDerivative(z, before);
      table[at] = before;
      double factorial = 1;
      for (int order = 1; order < COEFFICIENTS; order++) {
        factorial *= order;
        table[at + order] = derivative / factorial;
        double next = z * derivative + order * before;
        before = derivative;
        derivative = next;
      }
    }
    return table;
  }

  /**
   * z R - 1 loses digits for large z; there the next levels of the fraction say the same. The
   * higher derivatives lose digits too, but their share of the value shrinks faster.
   */
  private static double firstDerivative(double z, double ratio) {
    return z < 1 ? z * ratio - 1 : -ratio * rest(z, LEVELS_OF_FRACTION);
  }

  private static double exactTailRatio(double z) {
    return z < SERIES_BELOW ? HALF / density(z) - series(z) : fraction(z, LEVELS_OF_FRACTION);
  }

  /** (cdf(z) - 1/2) / density(z) = z + z^3/3 + z^5/15 + ...: all terms have one sign. */
  private static double series(double z) {
    double term = z;
    double sum = z;
    for (int odd = 1; term > NEGLIGIBLE; ) {
      odd += 2;
      term *= z * z / odd;
      sum += term;
    }
    return sum;
  }

  /** 1/(z + 1/(z + 2/(z + 3/(z + ...)))). */
  private static double fraction(double z, int levels) {
    return 1 / (z + rest(z, levels));
  }

  private static double rest(double z, int levels) {
    double rest = 0;
    for (int level = levels; level > 0; level--) {
      rest = level / (z + rest);
    }
    return rest;
  }
}
