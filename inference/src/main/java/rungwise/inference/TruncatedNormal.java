package rungwise.inference;

/**
 * A standard normal variable of which it is known that it lies between two bounds: how probable
 * that is, and its first four moments given that. One object is filled again and again, because a
 * fit asks for millions of them.
 *
 * <p>With p(a) the density at a bound divided by the probability of the stretch, the moments are
 * m(k) = (k - 1) m(k - 2) + a^(k-1) p(a) - b^(k-1) p(b). The probability is taken relative to the
 * density at the bound nearer to 0, so that it keeps its digits far out. Where the stretch is so
 * narrow that a difference would lose them, all of it is integrated by Gauss and Legendre's rule.
 */
public final class TruncatedNormal {

  /** A stretch over which the density changes by less than this factor, as a logarithm. */
  private static final double NARROW = 0.3;

  /** Points and weights of the rule with 8 points, as numpy 2 computes them. */
  private static final double[] POINTS = {
    0.18343464249564984, 0.5255324099163290, 0.7966664774136267, 0.9602898564975362
  };

  private static final double[] WEIGHTS = {
    0.36268378337836193, 0.3137066458778873, 0.22238103445337445, 0.10122853629037630
  };

  private double logMass;
  private double first;
  private double second;
  private double third;
  private double fourth;

  /**
   * Sets the bounds.
   *
   * @param low perhaps minus infinity
   * @param high more than the lower bound, perhaps infinite, but not both
   */
  public void between(double low, double high) {
    if (low + high < 0) {
      fill(-high, -low);
      first = -first;
      third = -third;
    } else {
      fill(low, high);
    }
  }

  /** The logarithm of the probability alone. */
  public static double logMass(double low, double high) {
    return low + high < 0 ? logMassOfRight(-high, -low) : logMassOfRight(low, high);
  }

  public double logMass() {
    return logMass;
  }

  public double first() {
    return first;
  }

  public double second() {
    return second;
  }

  public double third() {
    return third;
  }

  public double fourth() {
    return fourth;
  }

  private static boolean isNarrow(double low, double high) {
    return (high - low) * Math.max(1, high) < NARROW;
  }

  private static double logMassOfRight(double low, double high) {
    if (isNarrow(low, high)) {
      return logOfNarrow(low, high);
    }
    return low < 0
        ? Math.log(Normal.cdf(high) - Normal.cdf(low))
        : Normal.logDensity(low) + Math.log(ratio(low, high, fall(low, high)));
  }

  private static double logOfNarrow(double low, double high) {
    double middle = (low + high) / 2;
    double half = (high - low) / 2;
    double sum = 0;
    for (int i = 0; i < POINTS.length; i++) {
      double s = half * POINTS[i];
      sum += WEIGHTS[i] * (Math.exp(-s * (s / 2 + middle)) + Math.exp(-s * (s / 2 - middle)));
    }
    return Normal.logDensity(middle) + Math.log(half * sum);
  }

  /** The density at the upper bound as a part of that at the lower. */
  private static double fall(double low, double high) {
    return Math.exp((low - high) * (low + high) / 2);
  }

  /** The probability divided by the density at the lower bound, which is 0 or more. */
  private static double ratio(double low, double high, double fall) {
    return fall == 0
        ? Normal.tailRatio(low)
        : Normal.tailRatio(low) - Normal.tailRatio(high) * fall;
  }

  /** For bounds of which the upper is farther from 0. */
  private void fill(double low, double high) {
    if (isNarrow(low, high)) {
      fillNarrow(low, high);
    } else if (low < 0) {
      double mass = Normal.cdf(high) - Normal.cdf(low);
      logMass = Math.log(mass);
      fillFrom(low, high, Normal.density(low) / mass, Normal.density(high) / mass);
    } else {
      double fall = fall(low, high);
      double ratio = ratio(low, high, fall);
      logMass = Normal.logDensity(low) + Math.log(ratio);
      fillFrom(low, high, 1 / ratio, fall / ratio);
    }
  }

  private void fillFrom(double low, double high, double atLow, double atHigh) {
    double a = Double.isInfinite(low) ? 0 : low;
    double b = atHigh == 0 ? 0 : high;
    first = atLow - atHigh;
    second = 1 + a * atLow - b * atHigh;
    third = 2 * first + a * a * atLow - b * b * atHigh;
    fourth = (2 + 1) * second + a * a * a * atLow - b * b * b * atHigh;
  }

  private void fillNarrow(double low, double high) {
    double middle = (low + high) / 2;
    double half = (high - low) / 2;
    double mass = 0;
    first = 0;
    second = 0;
    third = 0;
    fourth = 0;
    for (int i = 0; i < 2 * POINTS.length; i++) {
      double s = half * (i < POINTS.length ? POINTS[i] : -POINTS[i - POINTS.length]);
      double weight = WEIGHTS[i % POINTS.length] * Math.exp(-s * (s / 2 + middle));
      double z = middle + s;
      mass += weight;
      first += weight * z;
      second += weight * z * z;
      third += weight * z * z * z;
      fourth += weight * z * z * z * z;
    }
    first /= mass;
    second /= mass;
    third /= mass;
    fourth /= mass;
    logMass = Math.log(half * mass) + Normal.logDensity(middle);
  }
}
