package rungwise.checks.adversary.law;

import java.util.List;
import java.util.Optional;
import rungwise.dosing.guard.GuardRule;

/** The laws about "may he inject now?". */
public final class NowLaws {

  private static final long ONSET = 20;
  private static final long VISIT = 60;
  private static final long PARTIAL_UP_TO = 2_500_000;

  private final Scene scene;
  private final Judge judge;
  private final Ledger ledger;
  private final long minute;

  public NowLaws(Scene scene, Judge judge) {
    this.scene = scene;
    this.judge = judge;
    this.ledger = scene.ledger();
    this.minute = scene.minute();
  }

  /** What the clock says; asked at earlier minutes too. */
  public void time() {
    boolean clear = scene.clear();
    boolean two = ledger.mostAround(Ledger.DAY, minute) >= 2;
    judge.look(Law.TWO_IN_A_DAY, two);
    if (two && (clear || scene.nextClear())) {
      judge.fail(Law.TWO_IN_A_DAY, "a third dose in 24 h is clear");
    }
    boolean home = ledger.order().filter(Ledger.Signed::atHome).isPresent();
    boolean near = !ledger.within(Rulebook.SPACING, minute).isEmpty();
    judge.look(Law.SPACING, near && home);
    if (near && home && (clear || scene.nextClear())) {
      judge.fail(Law.SPACING, "clear at home within 24 h of another injection");
    }
    boolean full = ledger.mostAround(Ledger.WEEK, minute) >= Rulebook.IN_SEVEN_DAYS;
    judge.look(Law.THREE_IN_A_WEEK, full);
    if (full && clear && (home || !scene.overrode(GuardRule.WEEKLY_COUNT))) {
      judge.fail(Law.THREE_IN_A_WEEK, "a fourth in 168 h is clear");
    }
  }

  public void check() {
    time();
    hold();
    second();
    home();
    vial();
    answer();
  }

  private void answer() {
    Optional<Ledger.Signed> order = ledger.order();
    judge.look(Law.ONE_ANSWER, scene.clear());
    if (scene.clear() && (order.isEmpty() || !scene.allows(order.get().volume()))) {
      judge.fail(Law.ONE_ANSWER, "clear, and the dose that is signed is not allowed");
    }
    judge.look(Law.NEXT_STEP, scene.next().isPresent());
    if (scene.nextClear() && order.filter(this::nextIsDue).isEmpty()) {
      judge.fail(Law.NEXT_STEP, "the next step is clear");
    }
  }

  private boolean nextIsDue(Ledger.Signed order) {
    List<Told> run = ledger.runOf(order.mix());
    if (run.isEmpty()) {
      return false;
    }
    Told last = run.getLast();
    return last.drawn() == order.volume()
        && !last.isUseful()
        && !last.isLong()
        && last.said.asked().equals("none_found");
  }

  private void hold() {
    Optional<Ledger.Signed> order = ledger.order();
    if (order.isEmpty()) {
      return;
    }
    for (Told one : ledger.counting()) {
      boolean holds =
          one.entry > order.get().entry()
              && ((one.mayPass(60) && !one.mayReach(120))
                  || (!one.heard() && one.said.grade() >= 2))
              && order.get().mix().reaches(order.get().volume(), one.mix, one.drawn());
      judge.look(Law.HOLD_AFTER_LONG, holds);
      if (holds && scene.clear()) {
        judge.fail(Law.HOLD_AFTER_LONG, "clear, though signed before " + one.words());
      }
    }
  }

  private void second() {
    List<Told> today =
        ledger.counting().stream().filter(one -> Math.abs(one.at() - minute) < Ledger.DAY).toList();
    boolean clinic = ledger.order().filter(one -> !one.atHome()).isPresent();
    boolean asked =
        clinic && today.size() == 1 && !scene.overrodeAfter(GuardRule.SPACING, today.getFirst());
    judge.look(Law.SECOND_DOSE, asked);
    if (asked && scene.clear() && !maySecond(today.getFirst(), ledger.order().orElseThrow())) {
      judge.fail(Law.SECOND_DOSE, "clear in the clinic after " + today.getFirst().words());
    }
  }

  private boolean maySecond(Told first, Ledger.Signed order) {
    long passed = minute - first.at();
    long both = first.mix.holds(2, first.drawn() + order.volume());
    boolean poor =
        first.said.grade() <= 1
            || (first.said.grade() == 2 && first.mix.holds(2, first.drawn()) <= PARTIAL_UP_TO);
    return ledger.plan().rules().secondInVisit()
        && order.mix().isAlone()
        && first.mix.isSameAs(order.mix())
        && first.observed
        && passed >= ONSET
        && passed <= VISIT
        && poor
        && !first.isLong()
        && first.said.asked().equals("none_found")
        && order.volume() > first.drawn()
        && order.volume() <= scene.above(first.drawn())
        && both <= Mix.MOST_ALPROSTADIL;
  }

  private void home() {
    boolean home = ledger.order().filter(Ledger.Signed::atHome).isPresent();
    if (!home) {
      return;
    }
    boolean unready = !ledger.ready.keySet().containsAll(Needed.forHome(scene.mix()));
    judge.look(Law.HOME_READY, unready);
    if (unready && scene.clear()) {
      judge.fail(Law.HOME_READY, "clear at home with only " + ledger.ready.keySet());
    }
    List<Told> run = ledger.runOf(scene.mix());
    boolean untried = run.stream().noneMatch(one -> one.observed && one.proves());
    judge.look(Law.FIRST_IN_CLINIC, untried);
    if (untried && scene.clear()) {
      judge.fail(Law.FIRST_IN_CLINIC, "clear at home, nothing proven in the clinic");
    }
    afterEmergency(run);
    boolean pair = !run.isEmpty() && isSecond(run);
    judge.look(Law.PAIR_ALONE, pair);
    boolean lifted = pair && scene.overrodeAfter(GuardRule.PAIR_NOT_CREDITED, run.getLast());
    if (pair && scene.clear() && !lifted) {
      judge.fail(Law.PAIR_ALONE, "clear at home after two doses in one visit");
    }
  }

  /** After an emergency whose end nobody will know: examined, and tried in the clinic again. */
  private void afterEmergency(List<Told> run) {
    for (Told one : ledger.neverKnown()) {
      long review = ledger.reviewedBy(one);
      boolean ready =
          ledger.examined > one.at()
              && run.stream()
                  .anyMatch(
                      dose ->
                          dose.observed
                              && dose.proves()
                              && dose.entry > review
                              && dose.at() > one.at());
      judge.look(Law.AFTER_EMERGENCY, !ready);
      if (!ready && scene.clear()) {
        judge.fail(Law.AFTER_EMERGENCY, "clear at home after " + one.words());
      }
    }
  }

  private static boolean isSecond(List<Told> run) {
    Told last = run.getLast();
    return last.observed
        && run.stream()
            .anyMatch(one -> one.observed && one != last && last.at() - one.at() < Ledger.DAY);
  }

  private void vial() {
    Optional<Ledger.Vial> vial = ledger.vial();
    judge.look(Law.NO_VIAL, vial.isEmpty());
    if (vial.isEmpty()) {
      if (scene.clear() && !scene.overrode(GuardRule.NO_VIAL)) {
        judge.fail(Law.NO_VIAL, "clear without a vial");
      }
      return;
    }
    boolean differs = !vial.get().mix().isSameAs(scene.mix());
    judge.look(Law.VIAL_LABEL, differs);
    if (differs && scene.clear()) {
      judge.fail(Law.VIAL_LABEL, "clear with a vial of " + vial.get().mix().label());
    }
    boolean past = Minutes.dayOf(minute) > vial.get().lastDay(scene.mix());
    judge.look(Law.VIAL_DATE, past);
    if (past && scene.clear()) {
      judge.fail(Law.VIAL_DATE, "clear with a vial past its last day");
    }
    boolean spoilt = ledger.watch.spoilt.contains(vial.get().root());
    judge.look(Law.VIAL_FARED, spoilt);
    if (spoilt && (scene.clear() || scene.nextClear())) {
      judge.fail(Law.VIAL_FARED, "clear with a vial that nobody has judged");
    }
    if (ledger.watch.isJudgedByOthers) {
      judge.fail(Law.PRESCRIBER_ONLY, "a vial was judged by no prescriber");
    }
    boolean notStated = vial.get().isNotStated(scene.mix());
    judge.look(Law.VIAL_NOT_STATED, notStated);
    if (notStated && scene.clear() && !scene.overrodeFor(GuardRule.IN_USE_NOT_STATED)) {
      judge.fail(Law.VIAL_NOT_STATED, "clear with an opened vial of which nobody has said");
    }
  }
}
