package rungwise.checks.adversary;

import java.util.SplittableRandom;
import rungwise.checks.adversary.law.Ledger;
import rungwise.checks.adversary.law.Watch;
import rungwise.clinic.people.Account;
import rungwise.clinic.running.EndDraft;
import rungwise.quantities.Reading;

/** Pauses, resumes, ends and opens again, in any order and by whoever tries it. */
final class Stander {

  private static final Account[] ANYBODY = {House.EDUCATOR, House.ON_CALL, House.PRESCRIBER};

  private static final EndDraft END =
      new EndDraft("HIS_WISH", "", "NONE_LEFT", "NOTHING", "", "he wants no more");

  private final House house;
  private final Ledger ledger;
  private long lastSeen;

  Stander(Actor actor) {
    this.house = actor.house;
    this.ledger = actor.ledger;
  }

  /** What the page showed: now and then somebody wrote something since. */
  private long shown(SplittableRandom random) {
    lastSeen = house.file().basis();
    return random.nextInt(4) == 0 ? lastSeen - 1 : lastSeen;
  }

  private void tried(long shown, Reading<Long> read) {
    ledger.watch.stand.triedUnseen |= shown < lastSeen;
    ledger.watch.stand.isUnseen |= shown < lastSeen && read.found().isPresent();
  }

  String stand(SplittableRandom random) {
    Watch.Stand stand = ledger.watch.stand;
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
        long shown = shown(random);
        Reading<Long> read = house.running.resume(actor, house.course(), shown, "he is well");
        tried(shown, read);
        if (read.found().isPresent()) {
          stand.paused = false;
          stand.isWrongHand |= !isPrescriber;
        }
        yield "resumes" + Actor.outcome(read);
      }
      case 4 -> {
        Reading<Long> read = house.running.end(actor, house.course(), END);
        read.found().ifPresent(entry -> stand.end(entry));
        stand.isWrongHand |= read.found().isPresent() && !isPrescriber;
        yield "ends" + Actor.outcome(read);
      }
      default -> {
        long shown = shown(random);
        Reading<Long> read =
            house.running.reopen(actor, house.course(), shown, "he wants it again");
        tried(shown, read);
        if (read.found().isPresent()) {
          stand.ended = false;
          stand.isWrongHand |= !isPrescriber;
        }
        yield "opens again" + Actor.outcome(read);
      }
    };
  }
}
