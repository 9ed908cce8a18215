package rungwise.checks.adversary.law;

import java.util.List;
import java.util.Map;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.screening.Condition;

/** The laws about the man, whatever the dose. */
public final class CourseLaws {

  private static final long YEAR_AND_A_DAY = 367 * Ledger.DAY;

  private final Scene scene;
  private final Judge judge;
  private final Ledger ledger;

  public CourseLaws(Scene scene, Judge judge) {
    this.scene = scene;
    this.judge = judge;
    this.ledger = scene.ledger();
  }

  public void check() {
    emergencies();
    stops(
        Law.UNFINISHED,
        !ledger.openWorries().isEmpty(),
        "what may mean 4 hours is asked back and not answered");
    stops(Law.OPEN_CALL, ledger.watch.call.stops(ledger.reviews), "a call is open or was long");
    stand();
    stops(Law.UNDER_OBSERVATION, !ledger.watched.isEmpty(), "under observation");
    screening();
    past();
  }

  private void stops(Law law, boolean holds, String words) {
    judge.look(law, holds);
    if (holds && scene.leadsAnywhere()) {
      judge.fail(law, words + ", and a dose is open");
    }
  }

  /** A paused or ended course leads nowhere, and no order of before an end comes back. */
  private void stand() {
    Watch.Stand stand = ledger.watch.stand;
    stops(Law.AT_A_STAND, stand.stops(), "the course is paused or has ended");
    judge.look(Law.PRESCRIBER_ONLY, stand.lastEnd > 0);
    if (stand.isWrongHand) {
      judge.fail(Law.PRESCRIBER_ONLY, "somebody else lifted a pause, ended or opened a course");
    }
    judge.look(Law.LIFTED_AS_SEEN, stand.triedUnseen);
    if (stand.isUnseen) {
      judge.fail(Law.LIFTED_AS_SEEN, "a pause or an end was lifted from an older page");
    }
    boolean before =
        stand.lastEnd > 0
            && ledger.order().filter(order -> order.entry() < stand.lastEnd).isPresent();
    judge.look(Law.NO_ORDER_AFTER_END, before);
    if (before && !scene.hasNoOrder()) {
      judge.fail(Law.NO_ORDER_AFTER_END, "a dose that was signed before the end is in force");
    }
  }

  private void emergencies() {
    List<Told> open = ledger.emergencies();
    boolean any = !open.isEmpty();
    stops(Law.EMERGENCY_STOPS, any, any ? open.getFirst().words() : "");
    judge.look(Law.EMERGENCY_IS_COUNTED, any);
    if (scene.emergenciesTold() < open.size()) {
      judge.fail(
          Law.EMERGENCY_IS_COUNTED,
          open.size() + " are open, " + scene.emergenciesTold() + " are told");
    }
  }

  private void screening() {
    for (Map.Entry<Condition, Long> one : ledger.standing.entrySet()) {
      Condition condition = one.getKey();
      if (Needed.isContraindication(condition)) {
        stops(Law.CONTRAINDICATION, true, condition + " stands");
      }
      boolean undecided =
          Needed.isDecision(condition, scene.mix())
              && ledger.decided.getOrDefault(condition, 0L) < one.getValue();
      stops(Law.DECISION, undecided, condition + " is not decided");
    }
    finding();
    for (Condition condition : Condition.values()) {
      boolean matters =
          Needed.isContraindication(condition) || Needed.isDecision(condition, scene.mix());
      Ledger.Answered answered = ledger.answers.get(condition);
      boolean open =
          matters
              && !ledger.standing.containsKey(condition) // a "yes" stands whatever is said later
              && (answered == null || answered.answer().equals("not known"));
      stops(Law.NOT_KNOWN_IS_NO, open, condition + " is not known");
    }
    Ledger.Answered oldest = ledger.answers.get(Condition.HYPERSENSITIVITY);
    boolean old = oldest != null && scene.minute() > oldest.minute() + YEAR_AND_A_DAY;
    judge.look(Law.SCREENING_AGE, old);
    if (old && scene.clearAtHome() && !scene.lifted(GuardRule.SCREENING_EXPIRED)) {
      judge.fail(Law.SCREENING_AGE, "clear at home on answers of over a year ago");
    }
  }

  /** Only a later examination and a new signature bring a dose back. */
  private void finding() {
    boolean stands = ledger.found > 0 && ledger.foundNoMore == 0;
    stops(Law.FINDING, stands, "an examination found curvature or scarring");
    boolean before =
        ledger.foundNoMore > 0
            && ledger.order().filter(order -> order.entry() < ledger.foundNoMore).isPresent();
    judge.look(Law.FINDING, before);
    if (before && scene.clear()) {
      judge.fail(Law.FINDING, "a dose of before the finding is clear");
    }
  }

  private void past() {
    for (Ledger.Before one : ledger.before) {
      boolean reviewed = ledger.reviews.stream().anyMatch(review -> review.entry() > one.entry());
      stops(
          Law.PAST_COUNTS,
          one.lasted() >= 240 && !reviewed,
          one.lasted() + " min are told from before, without a time");
    }
  }
}
