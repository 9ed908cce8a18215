package rungwise.clinic.teaching;

/**
 * The form of something that home use needs, as typed.
 *
 * @param item a name of a readiness item
 * @param day the day on which it was done
 * @param hospital for the emergency plan, as are the next two
 * @param note what was shown, taught or agreed; may be empty
 */
public record ReadinessDraft(
    String item,
    String day,
    String hospital,
    String afterHoursNumber,
    String transport,
    String note) {}
