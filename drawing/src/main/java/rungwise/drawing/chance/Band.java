package rungwise.drawing.chance;

/**
 * A chance and between what it lies, each from 0 to 1.
 *
 * @param low not above high
 * @param middle the mean, which may lie outside the two where few cases decide it
 */
public record Band(double low, double middle, double high) {

  public Band {
    if (!(isChance(low) && isChance(middle) && isChance(high) && low <= high)) {
      throw new IllegalArgumentException(
          "bug: a chance of " + middle + " between " + low + " and " + high);
    }
  }

  private static boolean isChance(double value) {
    return value >= 0 && value <= 1;
  }

  double most() {
    return Math.max(middle, high);
  }
}
