package rungwise.checks.adversary;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import rungwise.checks.adversary.law.Ledger;

/**
 * One thing that somebody does. It refers to what is on record only by its dice, so that it can be
 * done in a shorter record too.
 *
 * @param after minutes since the one before
 */
record Act(Kind kind, long after, long dice) {

  /** Everything that may be done, with how often it is done among a hundred or so. */
  enum Kind {
    OPEN(0),
    SCREEN_ALL(0),
    PAST(0),
    REPORT(24),
    CORRECT(12),
    WITHDRAW(5),
    CONFIRM(3),
    VISIT(9),
    VISIT_START(2),
    VISIT_END(3),
    SIGN(26),
    REVIEW(4),
    REOPEN(3),
    VIAL(7),
    AMEND_VIAL(2),
    VIAL_FATE(3),
    PLAN(5),
    ANSWER(4),
    STILL_TRUE(1),
    DECIDE(2),
    OVERTURN(2),
    EXAMINE(2),
    READY(4),
    RECALL(1),
    NOT_ALLOWED(3),
    TABLET(2),
    SEE_FLAGS(3),
    SOUNDNESS(1),
    HAND_OVER(2),
    CLOSE_DAY(3),
    UNDO(1),
    CALL(6),
    STAND(3),
    TRANSFER(3),
    REACH(3);

    final int weight;

    Kind(int weight) {
      this.weight = weight;
    }
  }

  private static final Kind[] KINDS = Kind.values();
  private static final int ALL = weights();
  private static final int FEWEST = 3;
  private static final int MOST = 12;

  private static int weights() {
    int all = 0;
    for (Kind kind : KINDS) {
      all += kind.weight;
    }
    return all;
  }

  /** A whole record of a seed. */
  static List<Act> record(long seed) {
    var random = new SplittableRandom(seed);
    var acts = new ArrayList<Act>();
    acts.add(new Act(Kind.OPEN, 0, random.nextLong()));
    if (random.nextInt(12) == 0) {
      acts.add(new Act(Kind.PAST, 0, random.nextLong()));
    }
    if (random.nextInt(8) == 0) {
      acts.add(new Act(Kind.TRANSFER, 0, random.nextLong()));
      acts.add(new Act(Kind.TRANSFER, 0, random.nextLong()));
    }
    if (random.nextInt(25) > 0) {
      acts.add(new Act(Kind.SCREEN_ALL, 1, random.nextLong()));
    }
    for (int i = random.nextInt(8) == 0 ? 1 : 0; i < 1; i++) {
      acts.add(new Act(Kind.VIAL, 1, random.nextLong()));
    }
    for (int i = random.nextInt(4) == 0 ? 3 : 0; i < 4; i++) {
      acts.add(new Act(Kind.READY, 0, i));
    }
    if (random.nextInt(5) > 0) {
      acts.add(new Act(Kind.SIGN, 5, random.nextLong()));
      acts.add(new Act(Kind.VISIT, 5, random.nextLong()));
      acts.add(new Act(Kind.SIGN, wait(random), random.nextLong()));
    }
    int more = FEWEST + random.nextInt(MOST - FEWEST);
    for (int i = 0; i < more; i++) {
      switch (random.nextInt(12)) {
        case 0 -> secondInVisit(acts, random);
        case 1 -> afterEmergency(acts, random);
        default -> acts.add(new Act(kind(random), wait(random), random.nextLong()));
      }
    }
    return acts;
  }

  /** Two doses in one visit, and what is signed after them. */
  private static void secondInVisit(List<Act> acts, SplittableRandom random) {
    add(acts, Kind.SIGN, Ledger.DAY * (2 + random.nextInt(3)), random);
    add(acts, Kind.VISIT, 1, random);
    add(acts, Kind.SIGN, random.nextInt(50), random);
    add(acts, Kind.VISIT, random.nextInt(10), random);
    add(acts, Kind.SIGN, Ledger.DAY + random.nextInt(3000), random);
  }

  /** What a prescriber does after an emergency, or what nobody did of it. */
  private static void afterEmergency(List<Act> acts, SplittableRandom random) {
    add(acts, Kind.REVIEW, 60L * random.nextInt(40), random);
    if (random.nextInt(3) > 0) {
      add(acts, Kind.EXAMINE, Ledger.DAY, random);
    }
    add(acts, Kind.SIGN, Ledger.DAY, random);
    if (random.nextInt(3) > 0) {
      add(acts, Kind.VISIT, 1, random);
    }
    add(acts, Kind.SIGN, Ledger.DAY * 2, random);
  }

  private static void add(List<Act> acts, Kind kind, long after, SplittableRandom random) {
    acts.add(new Act(kind, after, random.nextLong()));
  }

  private static Kind kind(SplittableRandom random) {
    int left = random.nextInt(ALL);
    for (Kind kind : KINDS) {
      left -= kind.weight;
      if (left < 0) {
        return kind;
      }
    }
    throw new IllegalStateException("bug: no kind");
  }

  private static long wait(SplittableRandom random) {
    return switch (random.nextInt(16)) {
      case 0, 1, 2 -> 0;
      case 3 -> 1 + random.nextInt(30);
      case 4 -> 20 + random.nextInt(50);
      case 5 -> 60L * (1 + random.nextInt(12));
      case 6 -> Ledger.DAY - 1 + random.nextInt(3);
      case 7, 8, 9, 10 -> Ledger.DAY * (1 + random.nextInt(3)) + random.nextInt(180);
      case 11, 12 -> Ledger.DAY * (2 + random.nextInt(5));
      case 13 -> Ledger.WEEK;
      case 14 -> Ledger.DAY * (20 + random.nextInt(40));
      default -> Ledger.DAY * (60 + random.nextInt(400));
    };
  }
}
