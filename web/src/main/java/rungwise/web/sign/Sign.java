package rungwise.web.sign;

/** The shapes that stand before a word. Each says the same as its word, in print and in grey. */
public enum Sign {
  /** A filled octagon: stopped, or firm now. */
  STOP,

  /** An octagon with a question: the end is not known. */
  NOT_KNOWN,

  /** An octagon with a tick: over, to be reviewed. */
  OVER,

  /** A square with two bars: wait. */
  WAIT,

  /** A square with a dot: in the clinic only. */
  CLINIC,

  /** A ring with a tick: yes. */
  YES,

  /** A hollow triangle: proposed, not signed. */
  PROPOSED,

  /** A comb: something to know. */
  NOTE;

  /** Whether it is drawn in the colour of danger. */
  public boolean isDanger() {
    return this == STOP || this == NOT_KNOWN || this == OVER;
  }
}
