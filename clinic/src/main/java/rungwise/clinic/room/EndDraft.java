package rungwise.clinic.room;

import java.util.Set;
import rungwise.clinic.ClinicTime.Occurrence;

/**
 * How an observation ended, as typed.
 *
 * @param left whether he left before he was soft; the time is then when he was last seen
 * @param grade the firmest that it was, "0" to "4"
 * @param causes a token of the simple causes
 * @param whatWentWrong names of causes
 * @param pain "0" to "10"; may be empty
 * @param systolic after, as are the next two; may all be empty
 */
public record EndDraft(
    String date,
    String time,
    Occurrence occurrence,
    boolean left,
    String grade,
    String causes,
    Set<String> whatWentWrong,
    String pain,
    String systolic,
    String diastolic,
    String pulse,
    String note) {

  public EndDraft {
    whatWentWrong = Set.copyOf(whatWentWrong);
  }
}
