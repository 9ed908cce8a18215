package rungwise.dosing.urgent.rescue;

import rungwise.quantities.Concentration;
import rungwise.quantities.MassUnit;

/** A strength of the rescue as it is read. */
public final class StrengthWords {

  private StrengthWords() {}

  /**
   * "100 mcg/mL" or "1,000 mcg/mL (1 mg/mL)": always in micrograms, so that two strengths are
   * compared by their numbers, and as a label has it.
   */
  public static String of(Concentration strength) {
    String micrograms = strength.in(MassUnit.MICROGRAM);
    String usual = strength.toString();
    return usual.equals(micrograms) ? micrograms : micrograms + " (" + usual + ")";
  }
}
