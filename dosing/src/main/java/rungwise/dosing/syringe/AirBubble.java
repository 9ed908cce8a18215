package rungwise.dosing.syringe;

/**
 * A bubble of air in the barrel, which stands where drug should be. What it takes is at most this:
 * a bubble that is flattened holds less. It is worked out from its size; no study was found.
 *
 * @param millimetres across, 0 or more
 */
public record AirBubble(double millimetres) {

  private static final double SPHERE = Math.PI / 6;
  private static final int CUBE = 3;

  public AirBubble {
    if (!(millimetres >= 0 && millimetres < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException("bug: a bubble of " + millimetres + " mm");
    }
  }

  /** What it holds: a cubic millimetre is a microlitre. */
  public double microlitres() {
    return SPHERE * Math.pow(millimetres, CUBE);
  }

  /** How many units of a scale it covers. */
  public double units(UnitScale scale) {
    return microlitres() / scale.perUnit().microlitres();
  }
}
