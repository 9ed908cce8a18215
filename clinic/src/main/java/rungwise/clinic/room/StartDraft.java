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
 * @param clinicVial the id of a vial of the clinic's; empty for his own
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
    String clinicVial) {

  /** Drawn from his own vial. */
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

  /** The same, drawn from a vial of the clinic's. */
  public StartDraft from(String clinicVialId) {
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
        clinicVialId);
  }
}
