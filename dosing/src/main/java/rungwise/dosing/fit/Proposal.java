package rungwise.dosing.fit;

import java.util.random.RandomGenerator;
import rungwise.inference.SymmetricSystem;

/**
 * A multivariate t distribution, from which draws are proposed.
 *
 * @param spread of its scale matrix
 * @param freedom its degrees of freedom, a whole number
 */
@SuppressWarnings("ArrayRecordComponent")
record Proposal(double[] centre, SymmetricSystem spread, int freedom) {

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
