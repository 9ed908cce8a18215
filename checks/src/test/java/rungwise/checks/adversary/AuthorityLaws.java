package rungwise.checks.adversary;

import rungwise.dosing.guard.GuardRule;

/** What one entry changed: nobody but a prescriber ends an emergency or opens a volume. */
final class AuthorityLaws {

  private final Scene before;
  private final Scene after;
  private final Judge judge;
  private final Ledger ledger;

  AuthorityLaws(Scene before, Scene after, Judge judge) {
    this.before = before;
    this.after = after;
    this.judge = judge;
    this.ledger = after.ledger();
  }

  /**
   * Compares the two.
   *
   * @param told how many reports were on record before
   */
  void check(Act act, int told) {
    if (isPrescribers(act)) {
      return;
    }
    boolean fewer = after.emergenciesTold() < before.emergenciesTold();
    judge.look(Law.NOBODY_ELSE_ENDS, before.emergenciesTold() > 0);
    if (fewer && !endsByB1(told)) {
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

  private boolean isPrescribers(Act act) {
    return switch (act.kind()) {
      case REPORT, CORRECT, WITHDRAW -> ledger.lastByPrescriber;
      case SIGN, REVIEW, REOPEN, PLAN, DECIDE, CONFIRM -> true;
      default -> false;
    };
  }

  /** A correction to a known end below 4 hours of what had not said 4 hours. */
  private boolean endsByB1(int told) {
    return ledger.told.size() > told
        && ledger.told.getLast().endsBeforeFourHours()
        && ledger.told.stream()
            .filter(one -> one.replacedBy.filter(ledger.told.getLast()::equals).isPresent())
            .noneMatch(Told::saysFourHours);
  }

  private boolean completes(int told) {
    return ledger.told.size() > told
        && ledger.told.stream()
            .filter(one -> one.replacedBy.filter(ledger.told.getLast()::equals).isPresent())
            .anyMatch(ledger.told.getLast()::completes);
  }
}
