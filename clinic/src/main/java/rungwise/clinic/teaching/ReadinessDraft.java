package rungwise.clinic.teaching;

import java.util.Map;

/**
 * The form of something that home use needs, as typed.
 *
 * @param item a name of a readiness item
 * @param day the day on which it was done
 * @param hospital for the emergency plan, as are the next two
 * @param more the answers to what the protocol asks the plan for, by its question
 * @param note what was shown, taught or agreed; may be empty
 */
public record ReadinessDraft(
    String item,
    String day,
    String hospital,
    String afterHoursNumber,
    String transport,
    Map<String, String> more,
    String note) {

  public ReadinessDraft {
    more = Map.copyOf(more);
  }

  /** The form of something that asks for nothing but what every clinic asks for. */
  public ReadinessDraft(
      String item,
      String day,
      String hospital,
      String afterHoursNumber,
      String transport,
      String note) {
    this(item, day, hospital, afterHoursNumber, transport, Map.of(), note);
  }
}
