package rungwise.dosing.screening;

/** What a condition means for treatment, from the mildest to the gravest. */
public enum Finding {
  /** It changes nothing with this preparation. */
  NOTHING,
  /** It is said at every dose. */
  CAUTION,
  /** No dose before a prescriber has written down a decision. */
  DECISION,
  /** No dose. */
  CONTRAINDICATION;

  /** Whether it must be known before any dose. */
  public boolean mustBeKnown() {
    return this == DECISION || this == CONTRAINDICATION;
  }
}
