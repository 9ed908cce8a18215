package rungwise.clinic.people;

import java.time.Instant;

/**
 * What an administrator hands to a person so that he or she can set a password.
 *
 * @param code to be shown once; only its hash is kept
 * @param goodUntil the first instant at which the code no longer counts
 */
public record Invitation(Account account, OneTimeCode code, Instant goodUntil) {}
