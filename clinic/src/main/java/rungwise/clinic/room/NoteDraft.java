package rungwise.clinic.room;

import rungwise.clinic.ClinicTime.Occurrence;

/**
 * What was seen during an observation, as typed.
 *
 * @param moment a name of a moment
 * @param grade "0" to "4"; may be empty
 */
public record NoteDraft(
    String date,
    String time,
    Occurrence occurrence,
    String moment,
    String grade,
    String systolic,
    String diastolic,
    String pulse) {}
