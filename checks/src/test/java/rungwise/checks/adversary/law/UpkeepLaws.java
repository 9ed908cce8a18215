package rungwise.checks.adversary.law;

import java.util.List;
import rungwise.dosing.guard.GuardRule;

/** The laws about what must be done again from time to time, and about what is recalled. */
public final class UpkeepLaws {

  private final Scene scene;
  private final Judge judge;
  private final Ledger ledger;

  public UpkeepLaws(Scene scene, Judge judge) {
    this.scene = scene;
    this.judge = judge;
    this.ledger = scene.ledger();
  }

  public void check() {
    boolean recalled = ledger.recalled.contains(scene.mix());
    judge.look(Law.RECALLED, recalled);
    if (recalled && scene.leadsAnywhere()) {
      judge.fail(Law.RECALLED, "a dose of what was recalled is open");
    }
    examination();
    lapse();
  }

  private void examination() {
    long since = Math.max(ledger.examined, ledger.plans.getFirst().minute());
    List<Told> run = ledger.runOf(scene.mix());
    if (scene.minute() <= since + Rulebook.EXAMINATION || run.isEmpty()) {
      return;
    }
    for (long rung : scene.rungs()) {
      boolean more = rung > run.getLast().drawn() && scene.allows(rung);
      judge.look(Law.EXAMINATION_FOR_MORE, more);
      if (more && !scene.says(rung, GuardRule.EXAMINATION_OVERDUE)) {
        judge.fail(Law.EXAMINATION_FOR_MORE, rung + " uL is open without a hold");
      }
    }
    boolean late = scene.minute() > since + Rulebook.EXAMINATION + Rulebook.GRACE;
    judge.look(Law.EXAMINATION_FOR_HOME, late);
    if (late && scene.clearAtHome() && !scene.lifted(GuardRule.EXAMINATION_LONG_OVERDUE)) {
      judge.fail(Law.EXAMINATION_FOR_HOME, "clear at home, last examined long ago");
    }
  }

  /** A gap of a year, and nothing proven in the clinic since. */
  private void lapse() {
    List<Told> run = ledger.runOf(scene.mix());
    boolean lapsed = false;
    for (int i = 0; i < run.size(); i++) {
      if (i > 0 && run.get(i).at() - run.get(i - 1).at() > Rulebook.LAPSE) {
        lapsed = true;
      }
      lapsed &= !(run.get(i).observed && run.get(i).proves());
    }
    lapsed |= !run.isEmpty() && scene.minute() - run.getLast().at() > Rulebook.LAPSE;
    judge.look(Law.LAPSE, lapsed);
    long proven =
        run.reversed().stream()
            .filter(Told::proves)
            .mapToLong(Told::drawn)
            .findFirst()
            .orElse(scene.rungs().getFirst());
    for (long rung : scene.rungs()) {
      if (lapsed && rung > proven && (scene.allows(rung) || scene.proposed() == rung)) {
        judge.fail(Law.LAPSE, rung + " uL is open after a year, proven was " + proven);
      }
    }
    if (lapsed && scene.clearAtHome() && !scene.lifted(GuardRule.LAPSED)) {
      judge.fail(Law.LAPSE, "clear at home after a year without an injection");
    }
  }
}
