package rungwise.dosing.strength;

/**
 * How a vial was kept for some days.
 *
 * @param coldest the least it can have been, in degrees Celsius
 * @param warmest the most it can have been, not less
 * @param days 0 or more
 */
public record Kept(double coldest, double warmest, double days) {

  public Kept {
    if (!(coldest <= warmest && days >= 0)) {
      throw new IllegalArgumentException("bug: " + days + " days " + coldest + " to " + warmest);
    }
  }
}
