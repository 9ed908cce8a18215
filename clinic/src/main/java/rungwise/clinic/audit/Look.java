package rungwise.clinic.audit;

import java.time.Instant;
import rungwise.clinic.people.AccountId;

/**
 * One view of a course as it stands in the record.
 *
 * @param number of the entry, which rises with every entry of the whole clinic
 */
public record Look(long number, AccountId by, Instant at, Screen screen, Viewed.Outcome outcome) {}
