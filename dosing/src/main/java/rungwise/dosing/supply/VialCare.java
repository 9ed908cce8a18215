package rungwise.dosing.supply;

/** Whether a vial may be drawn from, by how it was kept. */
public enum VialCare {
  /** Nothing is written that speaks against it. */
  AS_LABELLED,
  /** It was warm, frozen, or nobody knows where, and nobody has judged it since. */
  TO_BE_JUDGED,
  /** It was thrown away, taken back, or is empty. */
  GONE
}
