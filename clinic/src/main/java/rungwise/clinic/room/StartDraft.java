package rungwise.clinic.room;

import rungwise.clinic.ClinicTime.Occurrence;

/**
 * The form of an injection in the clinic, as typed.
 *
 * @param mark the line to which the stopper was drawn
 * @param side a name of a side; may be empty
 * @param hour "1" to "12"; may be empty
 * @param systolic before the injection, as are the next two; may all be empty
 * @param alreadyGiven whether it has happened already, so that it is recorded whatever the safety
 *     checks say
 * @param vial the entry of a vial of his or of the clinic's; {@link #VIAL_NOT_KNOWN} where it has
 *     happened and nobody knows; empty for his own, where the labels of all say the same
 */
public record StartDraft(
    String date,
    String time,
    Occurrence occurrence,
    String mark,
    String side,
    String hour,
    String systolic,
    String diastolic,
    String pulse,
    boolean alreadyGiven,
    String vial) {

  /** What stands in place of a vial that nobody knows. */
  public static final String VIAL_NOT_KNOWN = "not_known";

  /** Drawn from his own vial, of which all labels say the same. */
  public StartDraft(
      String date,
      String time,
      Occurrence occurrence,
      String mark,
      String side,
      String hour,
      String systolic,
      String diastolic,
      String pulse,
      boolean alreadyGiven) {
    this(date, time, occurrence, mark, side, hour, systolic, diastolic, pulse, alreadyGiven, "");
  }

  /** The same, drawn from a vial of his or of the clinic's. */
  public StartDraft from(String drawnFrom) {
    return new StartDraft(
        date,
        time,
        occurrence,
        mark,
        side,
        hour,
        systolic,
        diastolic,
        pulse,
        alreadyGiven,
        drawnFrom);
  }
}
