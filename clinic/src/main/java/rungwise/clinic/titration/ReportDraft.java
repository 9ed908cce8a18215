package rungwise.clinic.titration;

import java.util.Optional;
import java.util.Set;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.course.EntryId;

/**
 * What the report form holds, as typed.
 *
 * @param barrel the syringe really used; empty for the one of the plan
 * @param mark the number of the line really drawn; on a syringe marked in mL the volume
 * @param grade "0" to "4"
 * @param soft "within_2_hours", "within_4_hours", "not_within_4_hours", "exactly", "at_least",
 *     "between" or "not_known"
 * @param minutes for exactly and at least
 * @param fromMinutes for between
 * @param beforeMinutes for between
 * @param causes a token of the simple causes
 * @param place "clinic", "home", or empty for where the dose was signed for
 * @param corrects the report that this one replaces
 * @param reason why it is replaced
 */
public record ReportDraft(
    String date,
    String time,
    Occurrence occurrence,
    String barrel,
    String mark,
    String grade,
    String soft,
    String minutes,
    String fromMinutes,
    String beforeMinutes,
    String causes,
    String place,
    Details details,
    Optional<EntryId> corrects,
    String reason) {

  /**
   * What is folded away and may all be empty.
   *
   * @param side a name of a side
   * @param hour "1" to "12"
   * @param pain "0" to "10"
   * @param bruise "yes", "no" or "not known", as are aroused and the second dose
   * @param causes names of what went wrong
   * @param vial the entry of the vial it was drawn from
   */
  public record Details(
      String onsetMinutes,
      String usableMinutes,
      String side,
      String hour,
      String pain,
      String bruise,
      String aroused,
      Set<String> causes,
      String vial,
      String otherTablets,
      String secondDose) {

    public static final Details NONE =
        new Details("", "", "", "", "", "", "", Set.of(), "", "", "");

    public Details {
      causes = Set.copyOf(causes);
    }
  }
}
