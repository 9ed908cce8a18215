package rungwise.clinic.day;

/** How urgent an erection is of which nobody has said how it ended, the most urgent first. */
public enum Urgency {
  /** 4 hours have passed since the injection, or it is not known when that was. */
  EMERGENCY_DEPARTMENT,

  /** 2 hours have passed, or he left the clinic while it was firm. */
  CALL_NOW,

  /** 2 hours have not passed yet. */
  CALL_AT_TWO_HOURS
}
