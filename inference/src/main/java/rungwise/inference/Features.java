package rungwise.inference;

/**
 * How fine the functions are that will be averaged over a density, so that the nodes can be set
 * close enough for them.
 *
 * @param pole the distance from the real line to the nearest singularity of these functions
 * @param kernel the standard deviation of the narrowest normal curve by which they rise or fall
 */
public record Features(double pole, double kernel) {

  /** e^-25 is 1e-11. */
  private static final double EXPONENT = 25;

  public Features {
    if (!(pole > 0 && kernel > 0)) {
      throw new IllegalArgumentException("bug: features " + pole + ", " + kernel);
    }
  }

  /**
   * The largest distance of nodes at which the trapezoid rule still averages such functions over a
   * density about as wide as a normal one with that standard deviation.
   *
   * <p>The rule's error is the Fourier transform of the integrand at w = 2 pi / distance. The
   * transform of a product is the convolution of the transforms, here exp(-pole u) and exp(-s^2 v^2
   * / 2) with u + v = w, where 1/s^2 sums 1/kernel^2 and 1/deviation^2. The slower split of w
   * decides: v = pole / s^2 if w is larger than that, else all of it.
   */
  public double nodeDistance(double deviation) {
    double precision = 1 / (kernel * kernel) + 1 / (deviation * deviation);
    double slowest = pole * precision;
    double frequency = Math.sqrt(2 * EXPONENT * precision);
    if (frequency > slowest) {
      frequency = (EXPONENT + slowest * pole / 2) / pole;
    }
    return 2 * Math.PI / frequency;
  }
}
