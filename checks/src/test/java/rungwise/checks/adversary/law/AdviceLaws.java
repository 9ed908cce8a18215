package rungwise.checks.adversary.law;

import java.util.List;
import rungwise.dosing.decision.Decision;

/** The laws about what is proposed and what it is called. */
public final class AdviceLaws {

  private final Scene scene;
  private final Judge judge;

  public AdviceLaws(Scene scene, Judge judge) {
    this.scene = scene;
    this.judge = judge;
  }

  public void check() {
    List<Told> run = scene.ledger().runOf(scene.mix());
    if (run.isEmpty() || scene.proposed() == 0) {
      return;
    }
    named(run.getLast());
    notAbove(run.getLast());
  }

  private void named(Told last) {
    judge.look(Law.NAMED_BY_DRAWN, true);
    long volume = scene.proposed();
    boolean ok =
        switch (scene.advice().decision()) {
          case Decision.Repeat repeat ->
              volume <= last.drawn() && scene.above(volume) > last.drawn();
          case Decision.StepDown down -> volume < last.drawn();
          case Decision.StepUp up -> volume > last.drawn();
          default -> true;
        };
    if (!ok) {
      judge.fail(
          Law.NAMED_BY_DRAWN,
          scene.advice().decision().key() + " after " + last.drawn() + " uL were drawn");
    }
  }

  private void notAbove(Told last) {
    long volume = scene.proposed();
    boolean stays = last.isUseful() || last.isLong();
    judge.look(Law.NOT_ABOVE_DRAWN, stays);
    if (stays && volume > last.base()) {
      judge.fail(Law.NOT_ABOVE_DRAWN, volume + " uL is proposed after " + last.words());
    }
    boolean unasked = !last.said.asked().equals("none_found");
    judge.look(Law.NOTHING_WITHOUT_CAUSES, unasked);
    if (unasked && volume > last.drawn()) {
      judge.fail(Law.NOTHING_WITHOUT_CAUSES, volume + " uL is proposed after " + last.words());
    }
  }
}
