package rungwise.web.access;

/** Whether a route waits while it is not known what time it is. */
public enum ByClock {
  /** A signature, or anything else that may open something until a date: it waits. */
  HELD,
  /** It is taken at any time: a page, a report, a call, what only stops, and accounts. */
  ALWAYS
}
