package rungwise.quantities;

/**
 * How far a drawn volume lies from the one that was meant, as when a dose is rounded down to a
 * printed line, or when a line is mistaken for another.
 *
 * @param meant more than 0
 * @param drawn 0 or more
 */
public record Deviation(ExactVolume meant, ExactVolume drawn) {

  private static final double PERCENT = 100;

  public Deviation {
    if (!(meant.picograms() > 0)) {
      throw new IllegalArgumentException("bug: a deviation from nothing");
    }
  }

  /** The drawn volume as a multiple of the one that was meant: 10 is a ten-fold overdose. */
  public double factor() {
    double drawnTimesMeant = (double) drawn.picograms() * meant.picogramsPerMicrolitre();
    return drawnTimesMeant / ((double) meant.picograms() * drawn.picogramsPerMicrolitre());
  }

  /** The difference as a percentage of the volume that was meant; below 0 for less. */
  public double percent() {
    return (factor() - 1) * PERCENT;
  }
}
