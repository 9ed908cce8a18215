package rungwise.dosing.response;

import java.util.List;
import rungwise.inference.LogDensity;

/**
 * What a list of trials says of one requirement, times a normal curve.
 *
 * <p>Four parts, each as cheap as it can be. (1) The normal curve and all exact durations are
 * normal curves in the requirement; they multiply to one. (2) A difference of two logistic curves
 * is a product, expit(a) - expit(b) = expit(a) expit(-b) (1 - exp(b - a)), so all grades together
 * are exp(linear) divided by a product of factors 1 + A w with the same w = exp(-beta (eta - from))
 * and constants A: one exponential for a whole history. (3) Durations that are only bounded: see
 * {@link BoundedDurations}. (4) A constant, kept so that the integral is the probability of the
 * history.
 *
 * <p>Each part is log-concave in the requirement, hence so is the whole: it has one top however
 * strongly the reports contradict each other.
 */
final class Likelihood implements LogDensity {

  /** Products are turned into a logarithm before they leave the range of a double. */
  private static final double LARGE = 1e100;

  private static final double LOG_ROOT_TWO_PI = 0.9189385332046728;

  private final Population population;

  /** The requirement from which the exponential is counted. */
  private final double from;

  private final double[] factors;
  private final double linear;
  private final BoundedDurations bounded;
  private final double constant;
  private final double centre;
  private final double precision;

  private Likelihood(
      Population population,
      double from,
      double[] factors,
      double linear,
      BoundedDurations bounded,
      Curve curve) {
    this.population = population;
    this.from = from;
    this.factors = factors;
    this.linear = linear;
    this.bounded = bounded;
    this.constant = curve.constant;
    this.centre = curve.centre;
    this.precision = curve.precision;
  }

  /** The product of normal curves in the requirement, as one; and a constant. */
  private static final class Curve {
    private double centre;
    private double precision;
    private double constant;

    void times(double otherCentre, double otherPrecision) {
      double both = precision + otherPrecision;
      double apart = otherCentre - centre;
      constant -= precision * otherPrecision / both * apart * apart / 2;
      centre += apart * otherPrecision / both;
      precision = both;
    }
  }

  /**
   * The trials of one preparation, times the density of a normal variable.
   *
   * @param mean the mean of the normal variable
   * @param deviation its standard deviation
   */
  static Likelihood of(Population population, List<Trial> trials, double mean, double deviation) {
    var curve = new Curve();
    curve.centre = mean;
    curve.precision = 1 / (deviation * deviation);
    curve.constant = -LOG_ROOT_TWO_PI - Math.log(deviation);
    var grades = new Grades(population, trials, mean);
    curve.constant += grades.constant();
    double slope = population.surplusPerRequirement();
    for (Trial trial : trials) {
      if (trial.grade().isUseful() && trial.lasted() instanceof Lasted.Exactly(double minutes)) {
        double surplus = population.surplus(trial.logDose(), Math.log(minutes));
        curve.constant -= LOG_ROOT_TWO_PI + Math.log(population.tau() * minutes);
        if (slope > 0) {
          curve.times(surplus / slope, slope * slope);
        } else {
          curve.constant -= surplus * surplus / 2;
        }
      }
    }
    return new Likelihood(
        population,
        mean,
        grades.factors(),
        grades.linear(),
        BoundedDurations.of(population, trials),
        curve);
  }

  /** The same times the density of one more normal variable. */
  Likelihood times(double mean, double deviation) {
    var curve = new Curve();
    curve.centre = centre;
    curve.precision = precision;
    curve.constant = constant - LOG_ROOT_TWO_PI - Math.log(deviation);
    curve.times(mean, 1 / (deviation * deviation));
    return new Likelihood(population, from, factors, linear, bounded, curve);
  }

  /** Where the normal part has its top. */
  double centre() {
    return centre;
  }

  /** How wide the normal part is. */
  double deviation() {
    return 1 / Math.sqrt(precision);
  }

  @Override
  public double at(double requirement) {
    double apart = requirement - from;
    double fromCentre = requirement - centre;
    double log = constant + linear * apart - precision * fromCentre * fromCentre / 2;
    double w = Math.exp(-population.beta() * apart);
    double even = 1;
    double odd = 1;
    for (int i = 0; i + 1 < factors.length; i += 2) {
      even *= 1 + factors[i] * w;
      odd *= 1 + factors[i + 1] * w;
      if (even > LARGE || odd > LARGE) {
        log -= Math.log(even) + Math.log(odd);
        even = 1;
        odd = 1;
      }
    }
    return bounded.isEmpty()
        ? log - Math.log(even * odd)
        : log - Math.log(even * odd) + bounded.logAt(requirement);
  }
}
