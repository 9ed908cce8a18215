package rungwise.clinic.factor;

import rungwise.clinic.people.AccountId;

/**
 * The secret that is in use for an account.
 *
 * @param lastStep the step whose code was accepted last: only a later one counts
 */
public record TimeSecret(AccountId holder, FactorSecret secret, long lastStep) {

  TimeSecret usedAt(long step) {
    return new TimeSecret(holder, secret, step);
  }
}
