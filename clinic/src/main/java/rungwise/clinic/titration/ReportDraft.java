package rungwise.clinic.titration;

import java.util.Optional;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.course.EntryId;

/**
 * What the report form holds, as typed.
 *
 * @param mark the number of the line really drawn; on a syringe marked in mL the volume
 * @param grade "0" to "4"
 * @param soft "exactly", "at_least", "between" or "not_known"
 * @param minutes for exactly and at least
 * @param fromMinutes for between
 * @param beforeMinutes for between
 * @param causes a token of the simple causes
 * @param corrects the report that this one replaces
 * @param reason why it is replaced
 */
public record ReportDraft(
    String date,
    String time,
    Occurrence occurrence,
    String mark,
    String grade,
    String soft,
    String minutes,
    String fromMinutes,
    String beforeMinutes,
    String causes,
    Optional<EntryId> corrects,
    String reason) {}
