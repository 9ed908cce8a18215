package rungwise.checks.adversary.law;

import java.util.List;

/** The laws of a man who is taken over from elsewhere. */
public final class TransferLaws {

  private static final long EMERGENCY = 240;
  private static final long CLOSES = 120;

  private final Scene scene;
  private final Judge judge;
  private final Ledger ledger;
  private final Mix mix;

  public TransferLaws(Scene scene, Judge judge) {
    this.scene = scene;
    this.judge = judge;
    this.ledger = scene.ledger();
    this.mix = scene.mix();
  }

  public void check() {
    Transfers transfers = ledger.watch.transfers;
    judge.look(Law.PRESCRIBER_ONLY, transfers.triedByOthers);
    if (transfers.isWrongHand) {
      judge.fail(Law.PRESCRIBER_ONLY, "somebody else opened a schedule as told");
    }
    for (Transfers.Elsewhere one : transfers.told) {
      stops(one);
      watched(one);
      for (long rung : scene.rungs()) {
        boolean open = scene.allows(rung) || scene.proposed() == rung;
        half(one, rung, open);
        closed(one, rung, open);
      }
      ledger
          .order()
          .ifPresent(
              order -> {
                half(one, order.volume(), scene.clear());
                closed(one, order.volume(), scene.clear());
                half(one, order.next(), scene.nextClear());
              });
    }
  }

  /** Four hours elsewhere, known or possible, stop everything until a review. */
  private void stops(Transfers.Elsewhere one) {
    boolean isEndless = one.lasted() == Told.NO_END;
    boolean holds =
        one.mayReach(EMERGENCY)
            && ledger.reviews.stream()
                .noneMatch(
                    review -> review.entry() > one.entry() && (review.seenSoft() || !isEndless));
    judge.look(Law.TOLD_LONG, holds);
    if (holds && scene.leadsAnywhere()) {
      judge.fail(Law.TOLD_LONG, "a dose is open after " + one.words());
    }
  }

  /** Two hours elsewhere close that dose and all above it. */
  private void closed(Transfers.Elsewhere one, long volume, boolean open) {
    boolean holds =
        one.mayReach(CLOSES)
            && mix.reaches(volume, one.mix(), one.drawn())
            && ledger.reopened.stream()
                .noneMatch(
                    reopened ->
                        reopened.entry() > one.entry()
                            && reopened.mix().isSameAs(mix)
                            && volume <= reopened.upTo());
    judge.look(Law.TOLD_LONG, holds);
    if (holds && open) {
      judge.fail(Law.TOLD_LONG, volume + " uL is open after " + one.words());
    }
  }

  private void half(Transfers.Elsewhere one, long volume, boolean open) {
    for (int i = 0; i < mix.components(); i++) {
      int component = i;
      boolean above = mix.has(i) && one.isPassedBy(i, mix.holds(i, volume));
      boolean isFirst =
          ledger.counting().stream()
              .filter(one::isAnsweredBy)
              .filter(here -> Math.abs(scene.minute() - here.at()) >= Ledger.DAY)
              .noneMatch(here -> here.mix.has(component));
      judge.look(Law.TOLD_HALF, above && isFirst);
      if (above && isFirst && open) {
        judge.fail(Law.TOLD_HALF, volume + " uL is open after only " + one.words());
      }
    }
  }

  private void watched(Transfers.Elsewhere one) {
    List<Told> here = ledger.counting().stream().filter(one::isAnsweredBy).toList();
    boolean isUnseen = here.stream().noneMatch(told -> told.mix.isSameAs(mix));
    judge.look(Law.TOLD_NOT_WATCHED, isUnseen);
    if (isUnseen && scene.clearAtHome()) {
      judge.fail(Law.TOLD_NOT_WATCHED, "clear at home after only " + one.words());
    }
  }
}
