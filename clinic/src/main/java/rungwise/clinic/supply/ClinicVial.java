package rungwise.clinic.supply;

import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.Vial;

/**
 * A vial that the clinic keeps for injections at a visit.
 *
 * @param id the entry that wrote it down first; what is corrected stays the same vial
 * @param vial as its last addendum says
 */
public record ClinicVial(EntryId id, Vial vial) {}
