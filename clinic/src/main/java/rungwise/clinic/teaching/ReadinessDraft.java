package rungwise.clinic.teaching;

import java.util.Map;

/**
 * The form of something that home use needs, as typed, with the names of its fields as a fault
 * gives them.
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

  public static final String DAY = "day";
  public static final String HOSPITAL = "hospital";
  public static final String AFTER_HOURS = "afterHours";
  public static final String TRANSPORT = "transport";
  public static final String NOTE = "note";

  /** The field that answers a question of the protocol, the first one being 1. */
  public static String answerTo(int number) {
    return "answer-" + number;
  }

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
