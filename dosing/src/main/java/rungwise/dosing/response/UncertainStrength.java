package rungwise.dosing.response;

/**
 * The strength of a preparation relative to another one where no table says it: its logarithm is
 * normal.
 *
 * @param centre the mean of the logarithm
 * @param deviation its standard deviation, more than 0
 */
public record UncertainStrength(double centre, double deviation) {

  private static final double MOST_CENTRE = 7;
  private static final double LEAST_DEVIATION = 0.01;
  private static final double MOST_DEVIATION = 3;

  public UncertainStrength {
    boolean isSound =
        Math.abs(centre) <= MOST_CENTRE
            && deviation >= LEAST_DEVIATION
            && deviation <= MOST_DEVIATION;
    if (!isSound) {
      throw new IllegalArgumentException(
          "the logarithm of a strength is " + centre + " with a deviation of " + deviation);
    }
  }
}
