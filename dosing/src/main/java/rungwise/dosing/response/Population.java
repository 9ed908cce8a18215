package rungwise.dosing.response;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The parameters that a population of men has in common.
 *
 * <p>With x the logarithm of the given amount as a multiple of the reference amount and eta = mu +
 * gamma + omega z a man's requirement, z standard normal:
 *
 * <pre>
 * P(grade is k or more) = expit(beta (x - eta) - c_k),  k = 2, 3, 4,  c_3 = 0
 * ln minutes            = d0 + d1 (x - eta) + tau e,    e standard normal, where grade is 3 or 4
 * </pre>
 *
 * @param mu the mean requirement of the reference group
 * @param gammas what each other group has more; the reference group has 0
 * @param omega the standard deviation of the requirement within a group
 * @param beta how steep firmness rises with x
 * @param c2 below 0
 * @param c4 above 0
 * @param d0 the mean of ln minutes where a usable response has probability one half
 * @param d1 how much ln minutes rise with x, 0 or more
 * @param tau the standard deviation of ln minutes
 */
public record Population(
    double mu,
    Map<String, Double> gammas,
    double omega,
    double beta,
    double c2,
    double c4,
    double d0,
    double d1,
    double tau) {

  /** What the computation is made for; far outside what any data have shown. */
  private static final double MOST_MU = 6;

  private static final double MOST_OMEGA = 2.5;
  private static final double MOST_BETA = 8;
  private static final double MOST_C = 40;
  private static final double MOST_D0 = 12;
  private static final double MOST_D1 = 4;
  private static final double LEAST_SPREAD = 0.05;
  private static final double MOST_TAU = 3;

  public Population {
    gammas = Map.copyOf(new TreeMap<>(gammas));
    require("mu", mu, -MOST_MU, MOST_MU);
    gammas.forEach((group, gamma) -> require("gamma of " + group, gamma, -MOST_MU, MOST_MU));
    require("omega", omega, LEAST_SPREAD, MOST_OMEGA);
    require("beta", beta, LEAST_SPREAD, MOST_BETA);
    require("c2", c2, -MOST_C, -Double.MIN_NORMAL);
    require("c4", c4, Double.MIN_NORMAL, MOST_C);
    require("d0", d0, -MOST_D0, MOST_D0);
    require("d1", d1, 0, MOST_D1);
    require("tau", tau, LEAST_SPREAD, MOST_TAU);
  }

  private static void require(String name, double value, double least, double most) {
    if (!(value >= least && value <= most)) {
      throw new IllegalArgumentException(
          name + " is " + value + ": give a number from " + least + " to " + most);
    }
  }

  /** The mean requirement of a group; nothing if the population does not hold it. */
  public Optional<Double> meanOf(String group) {
    return Optional.ofNullable(gammas.get(group)).map(gamma -> mu + gamma);
  }

  /** The standardised surplus of ln minutes over a limit, less what the requirement takes. */
  double surplus(double logDose, double logMinutes) {
    return (d0 + d1 * logDose - logMinutes) / tau;
  }

  /** How much of the standardised surplus one of the requirement takes. */
  double surplusPerRequirement() {
    return d1 / tau;
  }
}
