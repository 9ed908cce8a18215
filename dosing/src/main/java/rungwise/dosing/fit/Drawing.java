package rungwise.dosing.fit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.random.RandomGenerator;
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
final class Drawing {

  private static final double ENOUGH = 1e-6;
  private static final int FREEDOM_OF_FIRST = 5;
  private static final int FREEDOM = 12;
  private static final int IN_ONE_TASK = 8;

  /** How many draws are checked, and a difference that changes no weight to speak of. */
  private static final int CHECKED = 24;

  private static final double NEGLIGIBLE = 1e-3;

  private final Marginal marginal;
  private final Layout layout;
  private final Priors priors;
  private final Workers workers;
  private final RandomGenerator random;

  /** The nodes at the top of the posterior, while they are near enough for all draws. */
  private Optional<StayingNodes> nodes = Optional.empty();

  private final List<double[]> draws = new ArrayList<>();
  private final List<Double> logRatios = new ArrayList<>();

  Drawing(Marginal marginal, Workers workers, RandomGenerator random) {
    this.marginal = marginal;
    this.workers = workers;
    this.random = random;
    layout = marginal.layout();
    priors = new Priors(layout);
  }

  /** The top of the posterior, and its curvature there as the first proposal. */
  Proposal top(double[] start, Consumer<Pass> progress) {
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
              progress.accept(new Pass(marginal.count(), passes[0], curved.value()));
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
  void add(Proposal proposal, int count) {
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
    return nodes.isPresent()
        ? nodes.get().log(layout.point(point))
        : marginal.log(point);
  }

  /**
   * Gives the nodes of the top up if they are not right for some of the draws so far: with few
   * courses draws lie far apart, and finding the nodes anew is cheap.
   */
  void checkNodes() {
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
  Proposal matched(Proposal before) {
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

  /** What all draws say. */
  Posterior posterior() {
    ParetoSmoothing smoothing = smoothing();
    double[] weights = smoothing.weights();
    Map<String, Posterior.Known> known = new LinkedHashMap<>();
    for (int place = 0; place < layout.size(); place++) {
      known.put(layout.names().get(place), known(place, weights));
    }
    return new Posterior(known, smoothing.shape(), draws.size());
  }

  private Posterior.Known known(int place, double[] weights) {
    Scale scale = layout.scale(place);
    double mean = 0;
    for (int i = 0; i < weights.length; i++) {
      mean += weights[i] * scale.natural(draws.get(i)[place]);
    }
    double variance = 0;
    double ofMean = 0;
    for (int i = 0; i < weights.length; i++) {
      double apart = scale.natural(draws.get(i)[place]) - mean;
      variance += weights[i] * apart * apart;
      ofMean += weights[i] * weights[i] * apart * apart;
    }
    return new Posterior.Known(mean, Math.sqrt(variance), variance / ofMean);
  }

  /** The draws with their weights, which sum to 1. */
  Weighed weighed() {
    return new Weighed(List.copyOf(draws), smoothing().weights());
  }

  /** Draws on their scales. */
  @SuppressWarnings("ArrayRecordComponent")
  record Weighed(List<double[]> draws, double[] weights) {}
}
