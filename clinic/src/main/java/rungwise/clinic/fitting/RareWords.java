package rungwise.clinic.fitting;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import rungwise.dosing.predictive.Predicted;

/** How surprising reports are after the same man's earlier ones, in words. */
public final class RareWords {

  private static final double MOST = 1e9;
  private static final MathContext DIGITS = new MathContext(2, RoundingMode.FLOOR);

  private RareWords() {}

  /** "41 of 11820 grades and times are as rare as 1 in 100 ...; by chance up to about 62 are." */
  public static String of(Predicted.Surprise surprise) {
    return surprise.rare()
        + " of "
        + surprise.reported()
        + " grades and times are as rare as 1 in 100 after the same man's earlier reports; by"
        + " chance alone up to about "
        + Math.round(surprise.byChance())
        + " are.";
  }

  /** "1 in 3400": how rarely the reports of a man are so far from the model by chance. */
  public static String of(Predicted.Man man) {
    double one = 1 / man.chance();
    return one < MOST
        ? "1 in " + BigDecimal.valueOf(one).round(DIGITS).toBigInteger()
        : "rarer than 1 in " + BigDecimal.valueOf(MOST).toBigInteger();
  }
}
