package rungwise.dosing.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Simulation-based calibration (Talts, Betancourt, Simpson, Vehtari and Gelman 2018): parameters
 * are drawn from the beliefs, courses from the parameters, and the parameters' ranks among draws of
 * the posterior are then uniform.
 */
final class CalibrationTest {

  private static final int WORLDS = 128;
  private static final int COURSES = 30;
  private static final int TRIALS = 5;
  private static final int DRAWS = 800;
  private static final int RANKED = 63;
  private static final int BINS = 8;
  private static final int MOST_HEAVY = 8;

  /**
   * Of chi-square with 7 degrees of freedom, passed with probability 0.001 (NIST handbook 1.3.6).
   */
  private static final double CRITICAL = 24.322;

  private static final double[] START = {0, 0, -0.4, 0.7, 0.7, 0.7, 3.7, -0.7, -0.7};

  private static final Layout LAYOUT =
      new Layout(List.of("mixed", "other"), "mixed", Layout.Scale.LOG);

  @Test
  @Tag("long")
  void ranks_of_the_true_parameters_are_uniform() {
    int[][] counts = new int[LAYOUT.size()][BINS];
    int heavy = 0;
    for (int world = 0; world < WORLDS; world++) {
      var random = new Random(1000 + world);
      double[] truth = fromBeliefs(random);
      Courses courses = courses(truth, world);
      var layout = new Layout(courses.groups(), "mixed", Layout.Scale.LOG);
      var marginal = new Marginal(courses, layout, Workers.alone(), /* stride= */ 1);
      Posteriors.Weighed weighed = Posteriors.weighed(marginal, random, START, DRAWS);
      heavy += weighed.smoothing().shape() > Posterior.MOST_PARETO_K ? 1 : 0;
      List<double[]> drawn = resampled(weighed, random);
      for (int place = 0; place < truth.length; place++) {
        int at = place;
        long rank = drawn.stream().filter(draw -> draw[at] < truth[at]).count();
        counts[place][(int) rank * BINS / (RANKED + 1)]++;
      }
    }
    for (int place = 0; place < counts.length; place++) {
      double expected = (double) WORLDS / BINS;
      double chiSquare =
          Arrays.stream(counts[place]).mapToDouble(n -> (n - expected) * (n - expected)).sum()
              / expected;

      assertThat(chiSquare)
          .as("%s %s", LAYOUT.names().get(place), Arrays.toString(counts[place]))
          .isLessThan(CRITICAL);
    }
    // Thirty courses from beliefs so wide may leave a posterior that no t distribution covers: 3 of
    // 128 were seen. With beliefs moved by half a deviation the ranks of c2 fail.
    assertThat(heavy).isLessThan(MOST_HEAVY);
  }

  private static double[] fromBeliefs(Random random) {
    var priors = new Priors(LAYOUT);
    double[] scaled = new double[LAYOUT.size()];
    for (int place = 0; place < scaled.length; place++) {
      scaled[place] = priors.mean(place) + priors.deviation(place) * random.nextGaussian();
    }
    return scaled;
  }

  private static Courses courses(double[] truth, int seed) {
    double mean = truth[0];
    var made =
        new MadeCourses(seed, LAYOUT.point(truth), Map.of("mixed", mean, "other", mean + truth[1]));
    for (int i = 0; i < COURSES; i++) {
      made.addOf(i % 2 == 0 ? "mixed" : "other", TRIALS);
    }
    return made.courses();
  }

  private static List<double[]> resampled(Posteriors.Weighed weighed, Random random) {
    double[] weights = weighed.smoothing().weights();
    double[][] drawn = new double[RANKED][];
    for (int i = 0; i < RANKED; i++) {
      double left = random.nextDouble();
      int at = 0;
      while (at < weights.length - 1 && left >= weights[at]) {
        left -= weights[at];
        at++;
      }
      drawn[i] = weighed.draws().get(at);
    }
    return List.of(drawn);
  }
}
