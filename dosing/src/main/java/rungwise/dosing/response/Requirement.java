package rungwise.dosing.response;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import rungwise.dosing.history.Grade;
import rungwise.inference.Features;
import rungwise.inference.Normal;
import rungwise.inference.Quadrature;

/**
 * What is known of one man's requirement after his trials: the posterior, and what it makes of an
 * amount. 0.1 mL times the exponential of the requirement is the volume at which a usable response
 * has probability one half.
 */
public final class Requirement {

  private static final double LOW = 0.05;
  private static final double HIGH = 0.95;
  private static final double HALF = 0.5;
  private static final double NARROWEST_LOG = 1e-9;
  private static final double MOST_LOG_MINUTES = 30;

  private final Population population;
  private final Quadrature quadrature;
  private final double[] nodes;
  private final double[] weights;

  /** The requirement from which the exponentials are counted. */
  private final double from;

  /** exp(beta (node - from)). */
  private final double[] rises;

  /** The requirements of one man in twenty at each end, once somebody has asked. */
  private double[] ends = {};

  private Requirement(Population population, Quadrature quadrature) {
    this.population = population;
    this.quadrature = quadrature;
    nodes = quadrature.nodes();
    weights = quadrature.weights();
    from = quadrature.mean();
    rises = new double[nodes.length];
    double step = Math.exp(population.beta() * (nodes[1] - nodes[0]));
    double rise = Math.exp(population.beta() * (nodes[0] - from));
    for (int i = 0; i < nodes.length; i++) {
      rises[i] = rise;
      rise *= step;
    }
  }

  /**
   * After trials with preparations of which the strength is known.
   *
   * @throws IllegalArgumentException if the population does not hold the group
   */
  public static Requirement of(Population population, String group, List<Trial> trials) {
    return of(population, likelihood(population, group, trials));
  }

  /** The same, where there were trials with other preparations too. */
  static Requirement of(
      Population population, String group, List<Trial> known, List<OtherPreparation> others) {
    Likelihood own = likelihood(population, group, known);
    return new Requirement(
        population,
        Quadrature.of(
            requirement -> own.at(requirement) + ofOthers(population, others, requirement),
            own.centre(),
            own.deviation(),
            featuresOf(population)));
  }

  private static double ofOthers(
      Population population, List<OtherPreparation> others, double requirement) {
    return others.stream().mapToDouble(other -> ofOther(population, other, requirement)).sum();
  }

  private static Likelihood likelihood(Population population, String group, List<Trial> trials) {
    double mean =
        population
            .meanOf(group)
            .orElseThrow(() -> new IllegalArgumentException("bug: no group " + group));
    return Likelihood.of(population, trials, mean, population.omega());
  }

  private static Requirement of(Population population, Likelihood likelihood) {
    return new Requirement(population, integrated(population, likelihood));
  }

  private static Quadrature integrated(Population population, Likelihood likelihood) {
    return Quadrature.of(
        likelihood, likelihood.centre(), likelihood.deviation(), featuresOf(population));
  }

  private static Features featuresOf(Population population) {
    double slope = population.surplusPerRequirement();
    return new Features(
        Math.PI / population.beta(), slope > 0 ? 1 / slope : Double.POSITIVE_INFINITY);
  }

  /**
   * The requirement of one more preparation, after trials with it and with others. It is the
   * requirement less the logarithm of the preparation's strength, so forecasts are asked as if its
   * strength were 1.
   *
   * <p>Given the requirement, preparations are independent, so each of the others is integrated on
   * its own. All these integrals are of products of log-concave functions, and so log-concave.
   */
  public static Requirement of(
      Population population,
      String group,
      List<Trial> known,
      List<OtherPreparation> others,
      OtherPreparation wanted) {
    Likelihood own = likelihood(population, group, known);
    UncertainStrength strength = wanted.strength();
    double mean = own.centre() - strength.centre();
    double deviation = Math.hypot(own.deviation(), strength.deviation());
    // A normal curve so wide that it says nothing, taken away again from what is summed.
    Likelihood trials = Likelihood.of(population, wanted.trials(), mean, deviation);
    Quadrature quadrature =
        Quadrature.of(
            point ->
                trials.at(point)
                    - (Normal.logDensity((point - mean) / deviation) - Math.log(deviation))
                    + fromOthers(population, own, others, strength, point),
            trials.centre(),
            trials.deviation(),
            featuresOf(population));
    return new Requirement(population, quadrature);
  }

  /** What the other preparations say of this one's requirement. */
  private static double fromOthers(
      Population population,
      Likelihood own,
      List<OtherPreparation> others,
      UncertainStrength strength,
      double point) {
    Likelihood joined = own.times(point + strength.centre(), strength.deviation());
    return Quadrature.of(
            requirement -> joined.at(requirement) + ofOthers(population, others, requirement),
            joined.centre(),
            joined.deviation(),
            featuresOf(population))
        .logMass();
  }

  private static double ofOther(Population population, OtherPreparation other, double requirement) {
    UncertainStrength strength = other.strength();
    Likelihood likelihood =
        Likelihood.of(
            population, other.trials(), requirement - strength.centre(), strength.deviation());
    return integrated(population, likelihood).logMass();
  }

  public double mean() {
    return quadrature.mean();
  }

  public double standardDeviation() {
    return quadrature.standardDeviation();
  }

  /** The logarithm of the probability (and density of exact durations) of the trials. */
  public double logProbabilityOfTrials() {
    return quadrature.logMass();
  }

  /** What an amount may do, averaged over what is not known of the requirement. */
  public Forecast forecast(double logDose) {
    double fall = Math.exp(population.beta() * (from - logDose));
    double slope = population.surplusPerRequirement();
    double surplus = population.surplus(logDose, 0);
    double tau = population.tau();
    double surplus60 = surplus - Forecast.LOG_60 / tau;
    double surplus120 = surplus - Forecast.LOG_120 / tau;
    double surplus240 = surplus - Forecast.LOG_240 / tau;
    double useful = 0;
    double useful60 = 0;
    double useful120 = 0;
    double useful240 = 0;
    for (int i = 0; i < nodes.length; i++) {
      double one = weights[i] / (1 + fall * rises[i]);
      double taken = slope * nodes[i];
      useful += one;
      useful60 += one * Normal.cdf(surplus60 - taken);
      useful120 += one * Normal.cdf(surplus120 - taken);
      useful240 += one * Normal.cdf(surplus240 - taken);
    }
    return new Forecast(useful, useful60, useful120, useful240);
  }

  /** Between what the forecast of an amount lies for nine in ten such men. */
  public ForecastRange range(double logDose) {
    if (ends.length == 0) {
      ends = new double[] {quadrature.quantile(LOW), quadrature.quantile(HIGH)};
    }
    return new ForecastRange(
        Forecast.at(population, logDose, ends[1]), Forecast.at(population, logDose, ends[0]));
  }

  /** The minutes that half of the usable responses to an amount pass. */
  public double medianMinutesIfUseful(double logDose) {
    double wanted = HALF * forecast(logDose).useful();
    double low = -MOST_LOG_MINUTES;
    double high = MOST_LOG_MINUTES;
    while (high - low > NARROWEST_LOG) {
      double middle = (low + high) / 2;
      if (usefulAndLonger(logDose, middle) > wanted) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return Math.exp((low + high) / 2);
  }

  /** The smallest probability of a report at least as far to a side as this one. */
  double chanceOfAsExtreme(Trial trial) {
    double x = trial.logDose();
    double least =
        Math.min(atLeastAsFirm(x, trial.grade()), 1 - atLeastAsFirm(x, above(trial.grade())));
    if (!trial.grade().isUseful()) {
      return least;
    }
    double useful = forecast(x).useful();
    double longer =
        switch (trial.lasted()) {
          case Lasted.Exactly(double minutes) -> usefulAndLonger(x, Math.log(minutes)) / useful;
          case Lasted.AtLeast(double minutes) -> usefulAndLonger(x, Math.log(minutes)) / useful;
          case Lasted.Between(double from, double before) ->
              usefulAndLonger(x, Math.log(from)) / useful;
          case Lasted.NotRecorded none -> 1;
        };
    double shorter =
        switch (trial.lasted()) {
          case Lasted.Exactly(double minutes) -> 1 - longer;
          case Lasted.Between(double from, double before) ->
              1 - usefulAndLonger(x, Math.log(before)) / useful;
          case Lasted.AtLeast atLeast -> 1;
          case Lasted.NotRecorded none -> 1;
        };
    return Math.min(least, Math.min(longer, shorter));
  }

  /** The number of the next firmer grade; 5 has no chance. */
  private static int above(Grade grade) {
    return Math.max(1, grade.number()) + 1;
  }

  private double atLeastAsFirm(double logDose, Grade grade) {
    return atLeastAsFirm(logDose, grade.number());
  }

  private double atLeastAsFirm(double logDose, int grade) {
    double threshold = Grades.thresholdOf(population, grade);
    return average(
        requirement -> 1 / (1 + Math.exp(population.beta() * (requirement - logDose) + threshold)));
  }

  private double usefulAndLonger(double logDose, double logMinutes) {
    double surplus = population.surplus(logDose, logMinutes);
    double slope = population.surplusPerRequirement();
    return average(
        requirement ->
            Normal.cdf(surplus - slope * requirement)
                / (1 + Math.exp(population.beta() * (requirement - logDose))));
  }

  private double average(DoubleUnaryOperator function) {
    double sum = 0;
    for (int i = 0; i < nodes.length; i++) {
      sum += weights[i] * function.applyAsDouble(nodes[i]);
    }
    return sum;
  }
}
