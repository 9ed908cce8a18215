package rungwise.checks.adversary;

import java.util.Optional;
import java.util.SplittableRandom;
import rungwise.clinic.people.Account;
import rungwise.clinic.reaching.ReachDraft;
import rungwise.clinic.reaching.ReachDraft.What;
import rungwise.quantities.Reading;

/**
 * Calls him, reaches him or not, and writes down how he wants to be called. None of it is told to
 * the ledger, as nothing of it says anything of a dose: every law holds as it did.
 */
final class Telephonist {

  private static final Account[] ANYBODY = {House.EDUCATOR, House.ON_CALL, House.PRESCRIBER};
  private static final String NUMBER = "555 0100";

  private final House house;

  Telephonist(Actor actor) {
    this.house = actor.house;
  }

  String reach(SplittableRandom random) {
    Account actor = ANYBODY[random.nextInt(ANYBODY.length)];
    house.reaching.write(actor, house.course(), ReachDraft.number(NUMBER, "HIS", "", "", "NONE"));
    ReachDraft draft =
        switch (random.nextInt(6)) {
          case 0 -> ReachDraft.wishes("NOBODY", "NONE", "", "NOT_NEEDED");
          case 1 -> onNumber(What.GONE);
          case 2, 3 -> onNumber(What.REACHED);
          default -> onNumber(What.NOT_REACHED);
        };
    Reading<Long> read = house.reaching.write(actor, house.course(), draft);
    return "calls him, " + draft.what().orElseThrow() + Actor.outcome(read);
  }

  private static ReachDraft onNumber(What what) {
    return new ReachDraft(Optional.of(what), "", NUMBER, "", "", "", "", "", "", "", "", "");
  }
}
