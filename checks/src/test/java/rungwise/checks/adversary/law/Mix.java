package rungwise.checks.adversary.law;

import java.util.List;
import java.util.SplittableRandom;

/**
 * What a vial holds: picograms of papaverine, phentolamine and alprostadil in each microlitre. Two
 * records may say the same mixture.
 */
public enum Mix {
  A20("adversary-a20", 0, 0, 20_000, /* powder= */ false, /* daysOpen= */ 40),
  A20_AGAIN("adversary-a20-again", 0, 0, 20_000, /* powder= */ false, /* daysOpen= */ 40),
  A40("adversary-a40", 0, 0, 40_000, /* powder= */ false, /* daysOpen= */ 40),
  A10("adversary-a10", 0, 0, 10_000, /* powder= */ false, /* daysOpen= */ 40),
  A20_POWDER("adversary-a20-powder", 0, 0, 20_000, /* powder= */ true, /* daysOpen= */ 1),
  M30_1_10(
      "adversary-m30-1-10", 30_000_000, 1_000_000, 10_000, /* powder= */ false, /* daysOpen= */ 40),
  M30_1_10_AGAIN(
      "adversary-m30-again",
      30_000_000,
      1_000_000,
      10_000,
      /* powder= */ false,
      /* daysOpen= */ 40),
  M15_05_5(
      "adversary-m15-0.5-5", 15_000_000, 500_000, 5_000, /* powder= */ false, /* daysOpen= */ 0),
  M30_2_20(
      "adversary-m30-2-20", 30_000_000, 2_000_000, 20_000, /* powder= */ false, /* daysOpen= */ 40);

  private static final List<Mix> ALL = List.of(values());

  /** The label of alprostadil alone: 60 mcg in one injection. */
  public static final long MOST_ALPROSTADIL = 60_000_000;

  public final String id;
  public final boolean powder;

  /** For how many days it may be used once opened; 0 where nobody has said. */
  public final int daysOpen;

  private final long[] picograms;

  Mix(
      String id,
      long papaverine,
      long phentolamine,
      long alprostadil,
      boolean powder,
      int daysOpen) {
    this.id = id;
    this.powder = powder;
    this.daysOpen = daysOpen;
    this.picograms = new long[] {papaverine, phentolamine, alprostadil};
  }

  /** One of them at random. */
  public static Mix any(SplittableRandom random) {
    return ALL.get(random.nextInt(ALL.size()));
  }

  public int components() {
    return picograms.length;
  }

  /** What a volume holds of one component. */
  public long holds(int component, long microlitres) {
    return picograms[component] * microlitres;
  }

  public boolean has(int component) {
    return picograms[component] > 0;
  }

  /** Alprostadil alone. */
  public boolean isAlone() {
    return picograms[0] == 0 && picograms[1] == 0;
  }

  public boolean isSameAs(Mix other) {
    return java.util.Arrays.equals(picograms, other.picograms);
  }

  /** Whether both hold the same drugs, in whatever strength. */
  public boolean isOfTheSameDrugsAs(Mix other) {
    for (int i = 0; i < picograms.length; i++) {
      if (has(i) != other.has(i)) {
        return false;
      }
    }
    return true;
  }

  /** Whether a volume of this holds at least as much of everything that the other one holds. */
  public boolean reaches(long microlitres, Mix other, long others) {
    for (int i = 0; i < picograms.length; i++) {
      if (other.has(i) && holds(i, microlitres) < other.holds(i, others)) {
        return false;
      }
    }
    return true;
  }

  /** The same, and more of at least one. */
  public boolean passes(long microlitres, Mix other, long others) {
    return reaches(microlitres, other, others) && !other.reaches(others, this, microlitres);
  }

  /** "alprostadil 20 mcg" as a label says it, per mL. */
  public String label() {
    var words = new StringBuilder();
    String[] names = {"papaverine ", "phentolamine ", "alprostadil "};
    for (int i = 0; i < picograms.length; i++) {
      if (has(i)) {
        words.append(words.isEmpty() ? "" : ", ").append(names[i]).append(number(i));
        words.append(i == 2 ? " mcg" : " mg");
      }
    }
    return words + " per mL";
  }

  /** The number of mg, or of mcg of alprostadil, in 1 mL. */
  public String number(int component) {
    long unit = component == 2 ? 1_000 : 1_000_000;
    return new java.math.BigDecimal(picograms[component])
        .divide(new java.math.BigDecimal(unit))
        .stripTrailingZeros()
        .toPlainString();
  }
}
