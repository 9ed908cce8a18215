package rungwise.web.access;

/** Whether a route asks for the second factor, once a shift. */
public enum Proof {
  /** It does not. */
  NONE,
  /** It asks whoever has set one up: what only its owner should change. */
  IF_SET_UP,
  /** A signature: it asks as the clinic's rule says. */
  TO_SIGN
}
