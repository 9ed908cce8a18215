package rungwise.dosing.fit;

import java.util.function.Consumer;
import java.util.random.RandomGenerator;

/** Finds the posterior of the response model's parameters: see {@link Drawing}. */
public final class Posteriors {

  /** Fewer effective draws than this are not enough, unless {@link #MOST_DRAWS} were made. */
  private static final double WANTED = 4000;

  private static final int FIRST_DRAWS = 600;
  private static final int DRAWS = 5000;
  private static final int MORE_DRAWS = 1000;
  private static final int MOST_DRAWS = 40_000;
  private static final double LEAST_D1 = 0.02;

  private Posteriors() {}

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
    var layout = new Layout(courses.groups(), fit.reference(), Scale.LOG);
    double[] natural = fit.parameters().values().stream().mapToDouble(Estimate::value).toArray();
    int d1 = layout.place(Slopes.D1);
    natural[d1] = Math.max(LEAST_D1, natural[d1]);
    var marginal = new Marginal(courses, layout, workers, /* stride= */ 1);
    Drawing drawing = begun(marginal, workers, random, layout.scaled(natural), progress);
    return drawing.posterior();
  }

  private static Drawing begun(
      Marginal marginal,
      Workers workers,
      RandomGenerator random,
      double[] start,
      Consumer<Pass> progress) {
    var drawing = new Drawing(marginal, workers, random);
    Proposal proposal = drawing.top(start, progress);
    drawing.add(proposal, FIRST_DRAWS);
    drawing.checkNodes();
    proposal = drawing.matched(proposal);
    drawing.add(proposal, DRAWS);
    Posterior posterior = drawing.posterior();
    while (posterior.leastEffective() < WANTED && posterior.draws() < MOST_DRAWS) {
      drawing.add(proposal, MORE_DRAWS);
      posterior = drawing.posterior();
    }
    return drawing;
  }
}
