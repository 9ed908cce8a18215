package rungwise.checks.adversary;

import java.util.SplittableRandom;
import rungwise.checks.adversary.law.Ledger;
import rungwise.checks.adversary.law.Stand;
import rungwise.clinic.people.Account;
import rungwise.clinic.running.EndDraft;
import rungwise.quantities.Reading;

/** Pauses, resumes, ends and opens again, in any order and by whoever tries it. */
final class Stander {

  private static final Account[] ANYBODY = {House.EDUCATOR, House.ON_CALL, House.PRESCRIBER};

  private final House house;
  private final Ledger ledger;

  Stander(Actor actor) {
    this.house = actor.house;
    this.ledger = actor.ledger;
  }

  String stand(SplittableRandom random) {
    Stand stand = ledger.watch.stand;
    Account actor = ANYBODY[random.nextInt(ANYBODY.length)];
    boolean isPrescriber = actor.equals(House.PRESCRIBER);
    int what = stand.ended ? 5 - random.nextInt(3) : random.nextInt(6);
    return switch (what) {
      case 0, 1 -> {
        Reading<Long> read = house.running.pause(actor, house.course(), "he is ill");
        read.found().ifPresent(entry -> stand.paused = true);
        yield "pauses" + Actor.outcome(read);
      }
      case 2, 3 -> {
        Reading<Long> read = house.running.resume(actor, house.course(), "he is well");
        if (read.found().isPresent()) {
          stand.paused = false;
          stand.isWrongHand |= !isPrescriber;
        }
        yield "resumes" + Actor.outcome(read);
      }
      case 4 -> {
        var draft = new EndDraft("HIS_WISH", "", "NONE_LEFT", "NOTHING", "", "he wants no more");
        Reading<Long> read = house.running.end(actor, house.course(), draft);
        read.found().ifPresent(entry -> stand.end(entry));
        stand.isWrongHand |= read.found().isPresent() && !isPrescriber;
        yield "ends" + Actor.outcome(read);
      }
      default -> {
        Reading<Long> read = house.running.reopen(actor, house.course(), "he wants it again");
        if (read.found().isPresent()) {
          stand.ended = false;
          stand.isWrongHand |= !isPrescriber;
        }
        yield "opens again" + Actor.outcome(read);
      }
    };
  }
}
