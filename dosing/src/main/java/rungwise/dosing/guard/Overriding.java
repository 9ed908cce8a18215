package rungwise.dosing.guard;

/** Whether a signature may override a rule, and how long it then does. */
public enum Overriding {
  /** Never. */
  NEVER,
  /** It is a hold of time: for a dose in the clinic only. */
  IN_THE_CLINIC,
  /** Until a date, which lies within the grace of the protocol. */
  UNTIL_A_DATE,
  /** For as long as the rule reads the same facts. */
  WHILE_THE_SAME;

  static Overriding of(GuardRule rule) {
    return switch (rule) {
      case SPACING, WEEKLY_COUNT, PDE5_HOURS -> IN_THE_CLINIC;
      case SCREENING_EXPIRED,
          READINESS_EXPIRED,
          EXAMINATION_OVERDUE,
          EXAMINATION_LONG_OVERDUE,
          LAPSED ->
          UNTIL_A_DATE;
      default -> rule.guardClass() == GuardClass.HOLD ? WHILE_THE_SAME : NEVER;
    };
  }
}
