package rungwise.dosing.history;

/**
 * A prescriber's written review of an emergency. It covers what the record held when it was
 * written: a report entered later is not covered, whenever the injection was.
 *
 * @param entry the number of the record's entry that says so
 */
public record EmergencyReview(long entry) {}
