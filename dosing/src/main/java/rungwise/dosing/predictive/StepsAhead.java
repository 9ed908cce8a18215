package rungwise.dosing.predictive;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.response.Population;
import rungwise.dosing.response.Trial;
import rungwise.inference.Features;
import rungwise.inference.Normal;
import rungwise.inference.TruncatedNormal;

/**
 * Each report of one course, foreseen from the earlier ones of the same course.
 *
 * <p>One pass over the trials with nodes that stay: the density of the requirement begins as that
 * of the man's group and is multiplied by what each report says, after the report was foreseen. The
 * trapezoid rule on even nodes converges exponentially (see {@code Quadrature}); the distance suits
 * the narrowest density on the way, and the stretch grows until every density has died down at both
 * of its ends.
 *
 * <p>With u = exp(beta (eta - x)) a grade of k or more has the probability 1 / (1 + u exp(c_k)),
 * and grade k the product of this and of u exp(c_k+1) / (1 + u exp(c_k+1)), up to a constant.
 */
final class StepsAhead {

  /** In deviations of the group: at first the stretch goes so far to both sides. */
  private static final double REACH = 8;

  /** At the ends a density is below e^-30 = 1e-13 of its largest value. */
  private static final double FALL = 30;

  private static final int MOST_WIDENINGS = 8;
  private static final int MOST_NODES = 1 << 20;
  private static final int GRADE_2 = 2;
  private static final int GRADE_4 = 4;

  /** The curvature of the logarithm of a logistic curve is at most a quarter. */
  private static final double STEEPEST = 0.25;

  private final Population population;
  private final double mean;
  private final List<Trial> trials;
  private final double factor2;
  private final double factor4;

  private double[] nodes = {};

  /** exp(beta (node - mean)). */
  private double[] rises = {};

  /** The logarithm of the density of the requirement at each node, up to a constant. */
  private double[] logs = {};

  private double[] weights = {};

  private StepsAhead(Population population, double mean, List<Trial> trials) {
    this.population = population;
    this.mean = mean;
    this.trials = trials;
    factor2 = Math.exp(population.c2());
    factor4 = Math.exp(population.c4());
  }

  /**
   * What was foreseen before each trial, in their order.
   *
   * @throws IllegalArgumentException if the population does not hold the group
   */
  static List<Ahead> of(Population population, String group, List<Trial> trials) {
    double mean =
        population
            .meanOf(group)
            .orElseThrow(() -> new IllegalArgumentException("bug: no group " + group));
    return new StepsAhead(population, mean, trials).walk();
  }

  private List<Ahead> walk() {
    double reach = REACH * population.omega();
    for (int widening = 0; widening < MOST_WIDENINGS; widening++) {
      spread(reach);
      List<Ahead> foreseen = pass();
      if (foreseen.size() == trials.size()) {
        return foreseen;
      }
      reach *= 2;
    }
    throw new IllegalStateException("bug: a course that cannot be summed with " + population);
  }

  private void spread(double reach) {
    int half = (int) Math.min(MOST_NODES, Math.ceil(reach / distance()));
    nodes = new double[2 * half + 1];
    Arrays.setAll(nodes, i -> mean + reach * (i - half) / half);
    rises = new double[nodes.length];
    Arrays.setAll(rises, i -> Math.exp(population.beta() * (nodes[i] - mean)));
    logs = new double[nodes.length];
    Arrays.setAll(logs, i -> Normal.logDensity((nodes[i] - mean) / population.omega()));
    weights = new double[nodes.length];
  }

  private double distance() {
    double slope = population.d1() / population.tau();
    double precision = 1 / (population.omega() * population.omega());
    int bounded = 1;
    for (Trial trial : trials) {
      precision += 2 * STEEPEST * population.beta() * population.beta();
      if (trial.grade().isUseful()) {
        switch (trial.lasted()) {
          case Lasted.Exactly exactly -> precision += slope * slope;
          case Lasted.AtLeast atLeast -> bounded++;
          case Lasted.Between between -> bounded++;
          case Lasted.NotRecorded none -> {}
        }
      }
    }
    double kernel = slope > 0 ? 1 / (slope * Math.sqrt(bounded)) : Double.POSITIVE_INFINITY;
    return new Features(Math.PI / population.beta(), kernel).nodeDistance(1 / Math.sqrt(precision));
  }

  /** Fewer than the trials, if a density does not die down within the stretch. */
  private List<Ahead> pass() {
    var foreseen = new ArrayList<Ahead>();
    for (Trial trial : trials) {
      if (!weigh()) {
        return foreseen;
      }
      foreseen.add(foresee(trial));
      learn(trial);
    }
    return foreseen;
  }

  private boolean weigh() {
    double highest = Arrays.stream(logs).max().orElseThrow();
    double sum = 0;
    for (int i = 0; i < logs.length; i++) {
      weights[i] = Math.exp(logs[i] - highest);
      sum += weights[i];
    }
    for (int i = 0; i < logs.length; i++) {
      weights[i] /= sum;
    }
    return Math.max(logs[0], logs[logs.length - 1]) < highest - FALL;
  }

  private Ahead foresee(Trial trial) {
    double logDose = trial.logDose();
    double fall = Math.exp(population.beta() * (mean - logDose));
    double slope = population.d1() / population.tau();
    double over60 = surplus(logDose, Limit.HOUR);
    double over120 = surplus(logDose, Limit.TWO_HOURS);
    double over240 = surplus(logDose, Limit.EMERGENCY);
    double atLeast2 = 0;
    double useful = 0;
    double atLeast4 = 0;
    double to60 = 0;
    double to120 = 0;
    double to240 = 0;
    for (int i = 0; i < nodes.length; i++) {
      double u = fall * rises[i];
      double one = weights[i] / (1 + u);
      double taken = slope * nodes[i];
      atLeast2 += weights[i] / (1 + u * factor2);
      useful += one;
      atLeast4 += weights[i] / (1 + u * factor4);
      to60 += one * Normal.cdf(over60 - taken);
      to120 += one * Normal.cdf(over120 - taken);
      to240 += one * Normal.cdf(over240 - taken);
    }
    double shortest = longer(trial, Reported.shortest(trial));
    double longest = Reported.isExact(trial) ? shortest : longer(trial, Reported.longest(trial));
    return new Ahead(atLeast2, useful, atLeast4, to60, to120, to240, shortest, longest);
  }

  /** Of the grade that was reported, and longer than so many minutes; 0 without any. */
  private double longer(Trial trial, OptionalDouble minutes) {
    return minutes.isPresent() ? longer(trial, minutes.getAsDouble()) : 0;
  }

  private double longer(Trial trial, double minutes) {
    double fall = Math.exp(population.beta() * (mean - trial.logDose()));
    double slope = population.d1() / population.tau();
    double over = surplus(trial.logDose(), Math.log(minutes));
    boolean isFirmest = trial.grade().number() == GRADE_4;
    double sum = 0;
    for (int i = 0; i < nodes.length; i++) {
      double u = fall * rises[i];
      double firmer = 1 / (1 + u * factor4);
      double grade = isFirmest ? firmer : 1 / (1 + u) - firmer;
      sum += weights[i] * grade * Normal.cdf(over - slope * nodes[i]);
    }
    return sum;
  }

  private double surplus(double logDose, Limit limit) {
    return surplus(logDose, Math.log(limit.minutes()));
  }

  /** The standardised surplus of ln minutes over a limit for a requirement of 0. */
  private double surplus(double logDose, double logMinutes) {
    return (population.d0() + population.d1() * logDose - logMinutes) / population.tau();
  }

  private void learn(Trial trial) {
    learnGrade(trial.logDose(), Math.max(1, trial.grade().number()));
    if (trial.grade().isUseful()) {
      learnDuration(trial);
    }
  }

  private void learnGrade(double logDose, int grade) {
    double fall = Math.exp(population.beta() * (mean - logDose));
    double passed = grade == 1 ? 0 : factor(grade);
    double next = grade == GRADE_4 ? 0 : factor(grade + 1);
    double linear = grade == GRADE_4 ? 0 : population.beta();
    for (int i = 0; i < nodes.length; i++) {
      double u = fall * rises[i];
      logs[i] += linear * nodes[i] - Math.log((1 + u * passed) * (1 + u * next));
    }
  }

  private double factor(int grade) {
    return grade == GRADE_2 ? factor2 : grade == GRADE_4 ? factor4 : 1;
  }

  private void learnDuration(Trial trial) {
    double slope = population.d1() / population.tau();
    double x = trial.logDose();
    switch (trial.lasted()) {
      case Lasted.Exactly(double minutes) -> {
        double surplus = surplus(x, Math.log(minutes));
        for (int i = 0; i < nodes.length; i++) {
          double e = surplus - slope * nodes[i];
          logs[i] -= e * e / 2;
        }
      }
      case Lasted.AtLeast(double minutes) ->
          learnBounds(Double.NEGATIVE_INFINITY, surplus(x, Math.log(minutes)), slope);
      case Lasted.Between(double from, double before) ->
          learnBounds(surplus(x, Math.log(before)), surplus(x, Math.log(from)), slope);
      case Lasted.NotRecorded none -> {}
    }
  }

  /** A longer time leaves a smaller surplus: it is the lower bound. */
  private void learnBounds(double low, double high, double slope) {
    if (Double.isInfinite(low) && Double.isInfinite(high)) {
      return;
    }
    for (int i = 0; i < nodes.length; i++) {
      double shift = slope * nodes[i];
      logs[i] += TruncatedNormal.logMass(low - shift, high - shift);
    }
  }
}
