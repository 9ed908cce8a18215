package rungwise.dosing.fit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import rungwise.dosing.draws.WeightedDraws;
import rungwise.dosing.response.Population;
import rungwise.inference.Ascent;
import rungwise.inference.Curved;
import rungwise.inference.ParetoSmoothing;
import rungwise.inference.SymmetricSystem;

/**
 * Draws from the posterior of the parameters, with each man's requirement integrated out, so that
 * about a dozen numbers are left to draw.
 *
 * <p>The top of the posterior is found as that of the likelihood is. Draws come from a t
 * distribution about it, are weighed by what the posterior has over it, and the weights are
 * smoothed ({@link ParetoSmoothing}). A first round of few draws only moves and stretches the t
 * distribution to what they show of the posterior's mean and spread (moment matching); where the
 * posterior is skewed, the top and its curvature alone would miss part of it.
 */
public final class Posteriors {

  /** Fewer effective draws than this are not enough, unless {@link #MOST_DRAWS} were made. */
  private static final double WANTED = 4000;

  private static final int FIRST_DRAWS = 600;
  private static final int DRAWS = 5000;
  private static final int MORE_DRAWS = 1000;
  private static final int MOST_DRAWS = 40_000;
  private static final double LEAST_D1 = 0.02;

  private static final double ENOUGH = 1e-6;
  private static final int FREEDOM_OF_FIRST = 5;
  private static final int FREEDOM = 12;
  private static final int IN_ONE_TASK = 8;

  /** How many draws are checked, and a difference that changes no weight to speak of. */
  private static final int CHECKED = 24;

  private static final double NEGLIGIBLE = 1e-3;

  /** Where in its step of the sum of weights a draw of the sample is taken. */
  private static final double MIDDLE = 0.5;

  private final Marginal marginal;
  private final Layout layout;
  private final Priors priors;
  private final Workers workers;
  private final RandomGenerator random;

  /** The nodes at the top of the posterior, while they are near enough for all draws. */
  private Optional<StayingNodes> nodes = Optional.empty();

  private final List<double[]> draws = new ArrayList<>();
  private final List<Double> logRatios = new ArrayList<>();

  private Posteriors(Marginal marginal, Workers workers, RandomGenerator random) {
    this.marginal = marginal;
    this.workers = workers;
    this.random = random;
    layout = marginal.layout();
    priors = new Priors(layout);
  }

  /**
   * The posterior, the same for the same generator and any workers.
   *
   * @param fit where the search begins
   * @param progress is told after each look at the courses
   * @throws IllegalArgumentException if no duration of the courses is known
   */
  public static Posterior of(
      Courses courses, Fit fit, Workers workers, RandomGenerator random, Consumer<Pass> progress) {
    if (fit.population().isEmpty()) {
      throw new IllegalArgumentException("bug: a posterior without durations");
    }
    var layout = new Layout(courses.groups(), fit.reference(), Layout.Scale.LOG);
    double[] natural =
        fit.parameters().values().stream().mapToDouble(Fit.Estimate::value).toArray();
    int d1 = layout.place(Point.D1);
    natural[d1] = Math.max(LEAST_D1, natural[d1]);
    var marginal = new Marginal(courses, layout, workers, /* stride= */ 1);
    var drawing = new Posteriors(marginal, workers, random);
    Proposal proposal = drawing.propose(layout.scaled(natural), progress);
    while (drawing.draws.size() < DRAWS || drawing.wantsMore()) {
      drawing.add(proposal, MORE_DRAWS);
      progress.accept(new Pass.Drawn(drawing.draws.size(), DRAWS));
    }
    return drawing.posterior();
  }

  /** Draws for a test: as many as it asks for, with their weights. */
  static Weighed weighed(Marginal marginal, RandomGenerator random, double[] start, int count) {
    var drawing = new Posteriors(marginal, Workers.alone(), random);
    drawing.add(drawing.propose(start, pass -> {}), count);
    return new Weighed(List.copyOf(drawing.draws), drawing.smoothing());
  }

  /** Draws on their scales. */
  record Weighed(List<double[]> draws, ParetoSmoothing smoothing) {}

  /** The top, and a first round of draws that moves the proposal. */
  private Proposal propose(double[] start, Consumer<Pass> progress) {
    Proposal first = top(start, progress);
    add(first, FIRST_DRAWS);
    checkNodes();
    return matched(first);
  }

  /** The top of the posterior, and its curvature there as the first proposal. */
  private Proposal top(double[] start, Consumer<Pass> progress) {
    double[] low = new double[layout.size()];
    double[] high = new double[layout.size()];
    for (int i = 0; i < low.length; i++) {
      low[i] = priors.mean(i) - Priors.FARTHEST * priors.deviation(i);
      high[i] = priors.mean(i) + Priors.FARTHEST * priors.deviation(i);
    }
    int[] passes = {0};
    Ascent.Top top =
        Ascent.search(
            scaled -> {
              Curved curved = priors.added(marginal.curved(scaled), scaled);
              passes[0]++;
              progress.accept(new Pass.Look(marginal.count(), passes[0], curved.value()));
              return curved;
            },
            start,
            low,
            high,
            ENOUGH);
    nodes = Optional.of(marginal.near(top.point()));
    return new Proposal(top.point(), spreadAt(top), FREEDOM_OF_FIRST);
  }

  /** Where the curvature is not that of a top, the spread of the beliefs before the courses. */
  private SymmetricSystem spreadAt(Ascent.Top top) {
    int size = layout.size();
    double[][] information = new double[size][size];
    double[][] before = new double[size][size];
    for (int row = 0; row < size; row++) {
      before[row][row] = priors.deviation(row) * priors.deviation(row);
      for (int column = 0; column < size; column++) {
        information[row][column] = -top.curved().hessian()[row][column];
      }
    }
    return SymmetricSystem.of(information)
        .map(SymmetricSystem::inverse)
        .flatMap(SymmetricSystem::of)
        .or(() -> SymmetricSystem.of(before))
        .orElseThrow();
  }

  /** Adds draws from a proposal. */
  private void add(Proposal proposal, int count) {
    double[][] points = new double[count][];
    for (int i = 0; i < count; i++) {
      points[i] = proposal.draw(random);
    }
    double[] ratios = new double[count];
    int tasks = (count + IN_ONE_TASK - 1) / IN_ONE_TASK;
    workers.share(
        tasks,
        () ->
            task -> {
              for (int i = task * IN_ONE_TASK; i < Math.min(count, (task + 1) * IN_ONE_TASK); i++) {
                ratios[i] = logRatio(points[i], proposal);
              }
            });
    draws.addAll(List.of(points));
    for (double ratio : ratios) {
      logRatios.add(ratio);
    }
  }

  private double logRatio(double[] point, Proposal proposal) {
    return priors.isConceivable(point)
        ? likelihood(point) + priors.log(point) - proposal.log(point)
        : Double.NEGATIVE_INFINITY;
  }

  private double likelihood(double[] point) {
    return nodes.isPresent() ? nodes.get().log(layout.point(point)) : marginal.log(point);
  }

  /**
   * Gives the nodes of the top up if they are not right for some of the draws so far: with few
   * courses draws lie far apart, and finding the nodes anew is cheap.
   */
  private void checkNodes() {
    if (nodes.isPresent()) {
      StayingNodes staying = nodes.get();
      double worst = 0;
      for (int i = 0; i < Math.min(CHECKED, draws.size()); i++) {
        double[] draw = draws.get(i);
        if (priors.isConceivable(draw)) {
          double apart = staying.log(layout.point(draw)) - marginal.log(draw);
          worst = Math.max(worst, Math.abs(apart));
        }
      }
      if (!(worst < NEGLIGIBLE)) {
        nodes = Optional.empty();
      }
    }
  }

  /** Forgets all draws; the answer is a proposal with their mean and spread. */
  private Proposal matched(Proposal before) {
    double[] weights = smoothing().weights();
    double[] mean = new double[layout.size()];
    for (int i = 0; i < weights.length; i++) {
      for (int j = 0; j < mean.length; j++) {
        mean[j] += weights[i] * draws.get(i)[j];
      }
    }
    double[][] spread = new double[mean.length][mean.length];
    for (int i = 0; i < weights.length; i++) {
      double[] draw = draws.get(i);
      for (int row = 0; row < mean.length; row++) {
        for (int column = 0; column < mean.length; column++) {
          spread[row][column] +=
              weights[i] * (draw[row] - mean[row]) * (draw[column] - mean[column]);
        }
      }
    }
    draws.clear();
    logRatios.clear();
    Optional<SymmetricSystem> system = SymmetricSystem.of(spread);
    return system.isPresent() ? new Proposal(mean, system.get(), FREEDOM) : before;
  }

  private ParetoSmoothing smoothing() {
    return ParetoSmoothing.of(logRatios.stream().mapToDouble(Double::doubleValue).toArray());
  }

  /** Whether the draws so far are worth too few independent ones. */
  private boolean wantsMore() {
    WeightedDraws weighed = weighed(smoothing());
    return draws.size() < MOST_DRAWS
        && IntStream.range(0, layout.size())
            .anyMatch(place -> spread(weighed, place).effective() < WANTED);
  }

  /** The draws on the natural scales. */
  private WeightedDraws weighed(ParetoSmoothing smoothing) {
    double[][] natural = new double[draws.size()][layout.size()];
    for (int i = 0; i < natural.length; i++) {
      for (int place = 0; place < layout.size(); place++) {
        natural[i][place] = layout.scale(place).natural(draws.get(i)[place]);
      }
    }
    return new WeightedDraws(layout.names(), natural, smoothing.weights());
  }

  /** What all draws say. */
  Posterior posterior() {
    ParetoSmoothing smoothing = smoothing();
    WeightedDraws weighed = weighed(smoothing);
    Map<String, Posterior.Known> known = new LinkedHashMap<>();
    for (int place = 0; place < layout.size(); place++) {
      known.put(layout.names().get(place), known(weighed, place));
    }
    return new Posterior(known, smoothing.shape(), weighed, sample(smoothing.weights()));
  }

  /** Systematic resampling (Kitagawa, JCGS 5 (1996) 1), of what a population may be. */
  private List<Population> sample(double[] weights) {
    var ranges = new Ranges(layout);
    double[] sums = new double[weights.length];
    double sum = 0;
    for (int i = 0; i < weights.length; i++) {
      sum += ranges.holds(draws.get(i)) ? weights[i] : 0;
      sums[i] = sum;
    }
    var sample = new ArrayList<Population>();
    for (int i = 0; i < weights.length && sample.size() < Posterior.SAMPLE; i++) {
      while (sample.size() < Posterior.SAMPLE
          && sums[i] > sum * (sample.size() + MIDDLE) / Posterior.SAMPLE) {
        sample.add(layout.population(draws.get(i)));
      }
    }
    return sample;
  }

  private static Posterior.Known known(WeightedDraws weighed, int place) {
    Spread spread = spread(weighed, place);
    return new Posterior.Known(
        spread.mean(),
        Math.sqrt(spread.variance()),
        Posterior.PARTS.stream().map(part -> weighed.quantile(place, part)).toList(),
        spread.effective());
  }

  /** Of one parameter; how many independent draws would know its mean as well. */
  private record Spread(double mean, double variance, double effective) {}

  private static Spread spread(WeightedDraws weighed, int place) {
    double mean = weighed.mean(place);
    double variance = 0;
    double ofMean = 0;
    for (int draw = 0; draw < weighed.count(); draw++) {
      double weight = weighed.weight(draw);
      double apart = weighed.value(draw, place) - mean;
      variance += weight * apart * apart;
      ofMean += weight * weight * apart * apart;
    }
    return new Spread(mean, variance, variance / ofMean);
  }

  /**
   * A multivariate t distribution, from which draws are proposed.
   *
   * @param spread of its scale matrix
   * @param freedom its degrees of freedom, a whole number
   */
  @SuppressWarnings("ArrayRecordComponent")
  private record Proposal(double[] centre, SymmetricSystem spread, int freedom) {

    double[] draw(RandomGenerator random) {
      double[] normal = new double[centre.length];
      for (int i = 0; i < normal.length; i++) {
        normal[i] = random.nextGaussian();
      }
      double squares = 0;
      for (int i = 0; i < freedom; i++) {
        double one = random.nextGaussian();
        squares += one * one;
      }
      double widening = Math.sqrt(freedom / squares);
      double[] drawn = spread.timesLower(normal);
      for (int i = 0; i < drawn.length; i++) {
        drawn[i] = centre[i] + widening * drawn[i];
      }
      return drawn;
    }

    /** The logarithm of its density, up to a constant. */
    double log(double[] point) {
      double[] apart = new double[point.length];
      for (int i = 0; i < apart.length; i++) {
        apart[i] = point[i] - centre[i];
      }
      double squares = 0;
      for (double z : spread.divideByLower(apart)) {
        squares += z * z;
      }
      return -(freedom + point.length) / 2.0 * Math.log1p(squares / freedom);
    }
  }
}
