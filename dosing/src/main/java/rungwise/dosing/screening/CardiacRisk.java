package rungwise.dosing.screening;

import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;

/** How risky sexual activity is for the heart, from the lowest class up. */
public enum CardiacRisk {
  LOW("low", "no further test is asked for"),
  INTERMEDIATE("intermediate", "test first; ask a cardiologist"),
  HIGH("high", "defer sexual activity and injections until stabilised");

  /** The table that the classes were read in. */
  public static final Source SOURCE =
      Source.read(Citation.CARDIAC_RISK_2016, "Table 1, third Princeton consensus");

  private static final int TWO_WEEKS = 14;
  private static final int SIX_WEEKS = 42;

  private final String words;
  private final String action;

  CardiacRisk(String words, String action) {
    this.words = words;
    this.action = action;
  }

  public String words() {
    return words;
  }

  /** What the table asks for. */
  public String action() {
    return action;
  }

  /**
   * The class so many days after a myocardial infarction.
   *
   * @throws IllegalArgumentException if it is still to come
   */
  public static CardiacRisk afterInfarction(int days) {
    if (days < 0) {
      throw new IllegalArgumentException("bug: an infarction in " + -days + " days");
    }
    if (days < TWO_WEEKS) {
      return HIGH;
    }
    return days > SIX_WEEKS ? LOW : INTERMEDIATE;
  }
}
