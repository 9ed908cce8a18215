package rungwise.clinic.room;

import rungwise.clinic.ClinicTime.Occurrence;

/**
 * To whom a man who left while it was firm is handed, as typed.
 *
 * @param to the id of an account
 * @param tries how often it was tried to reach him
 * @param date of the last try, as is the time
 * @param words who was tried, and what came of it
 */
public record HandOverDraft(
    String to, String tries, String date, String time, Occurrence occurrence, String words) {}
