package rungwise.checks.adversary.law;

import rungwise.dosing.guard.GuardRule;

/** What one entry changed: nobody but a prescriber ends an emergency or opens a volume. */
public final class AuthorityLaws {

  private final Scene before;
  private final Scene after;
  private final Judge judge;
  private final Ledger ledger;

  public AuthorityLaws(Scene before, Scene after, Judge judge) {
    this.before = before;
    this.after = after;
    this.judge = judge;
    this.ledger = after.ledger();
  }

  /**
   * Compares the two.
   *
   * @param byPrescriber whether a prescriber did it
   * @param told how many reports were on record before
   */
  public void check(boolean byPrescriber, int told) {
    if (byPrescriber) {
      return;
    }
    boolean fewer = after.emergenciesTold() < before.emergenciesTold();
    judge.look(Law.NOBODY_ELSE_ENDS, before.emergenciesTold() > 0);
    if (fewer && !endsWhatWasPossible(told)) {
      judge.fail(Law.NOBODY_ELSE_ENDS, "an emergency is no longer told");
    }
    for (long rung : before.rungs()) {
      boolean was = before.says(rung, GuardRule.VOLUME_CLOSED);
      judge.look(Law.NOBODY_ELSE_OPENS, was);
      boolean opened =
          was && after.rungs().contains(rung) && !after.says(rung, GuardRule.VOLUME_CLOSED);
      if (opened && !completes(told)) {
        judge.fail(Law.NOBODY_ELSE_OPENS, rung + " uL was closed and is open");
      }
    }
  }

  /** A correction to a known end below 4 hours of what had not said 4 hours. */
  private boolean endsWhatWasPossible(int told) {
    return ledger.told.size() > told
        && ledger.told.getLast().endsBeforeFourHours()
        && ledger.earlierThan(ledger.told.getLast()).stream()
            .anyMatch(one -> one.mayReach(240) && !one.saysFourHours());
  }

  private boolean completes(int told) {
    return ledger.told.size() > told
        && ledger.earlierThan(ledger.told.getLast()).stream()
            .anyMatch(one -> one.mayReach(120) && ledger.told.getLast().completes(one));
  }
}
