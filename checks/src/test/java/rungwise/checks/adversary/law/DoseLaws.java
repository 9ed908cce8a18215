package rungwise.checks.adversary.law;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import rungwise.dosing.guard.GuardRule;

/** The laws about how much: every step that may be signed, and every dose that may be injected. */
public final class DoseLaws {

  private static final long MIXTURE_CEILING = 500;
  private static final long UK_CEILING = 40_000_000;

  private final Scene scene;
  private final Judge judge;
  private final Ledger ledger;
  private final Mix mix;
  private final List<Told> run;

  public DoseLaws(Scene scene, Judge judge) {
    this.scene = scene;
    this.judge = judge;
    this.ledger = scene.ledger();
    this.mix = scene.mix();
    this.run = ledger.runOf(mix);
  }

  public void check() {
    for (long rung : scene.rungs()) {
      boolean open = scene.allows(rung) || scene.proposed() == rung;
      limits(rung);
      closed(rung, open);
    }
    ledger
        .order()
        .ifPresent(
            order -> {
              closed(order.volume(), scene.clear());
              if (order.next() > 0) {
                closed(order.next(), scene.nextClear());
              }
            });
    oneRungUp();
    first();
    newStock();
  }

  private void limits(long rung) {
    judge.look(Law.LIMITS, true);
    long line =
        switch (ledger.plan().barrel()) {
          case "u100-1-two" -> 20;
          case "u100-0.3-half" -> 5;
          default -> 10;
        };
    boolean isUk = ledger.plan().rules().equals(Rulebook.UK);
    long alprostadil = isUk ? UK_CEILING : Mix.MOST_ALPROSTADIL;
    boolean ok =
        rung % line == 0 && (mix.isAlone() ? mix.holds(2, rung) <= alprostadil : isMild(rung));
    if (!ok) {
      judge.fail(Law.LIMITS, rung + " uL is on the schedule");
    }
    if (scene.proposed() > 0 && !scene.rungs().contains(scene.proposed())) {
      judge.fail(Law.LIMITS, scene.proposed() + " uL is proposed and is no step");
    }
  }

  /** No more of anything than 0.5 mL of 30/1/10 holds. */
  private boolean isMild(long rung) {
    return rung <= MIXTURE_CEILING && Mix.M30_1_10.reaches(MIXTURE_CEILING, mix, rung);
  }

  private void closed(long volume, boolean open) {
    Optional<Told> closing = ledger.closing(mix, volume);
    if (closing.isPresent()) {
      Law law = closing.get().counts() ? Law.CLOSED : Law.CLOSED_WHEN_STRUCK;
      judge.look(law, true);
      if (open) {
        judge.fail(law, volume + " uL is open after " + closing.get().words());
      }
    }
    Optional<Told> besides = ledger.closingBesides(mix, volume);
    if (besides.isPresent()) {
      judge.look(Law.VIAL_NOT_KNOWN, true);
      if (open) {
        judge.fail(Law.VIAL_NOT_KNOWN, volume + " uL is open after " + besides.get().words());
      }
    }
    Optional<Told> longer = ledger.longBelow(mix, volume);
    if (longer.isPresent()) {
      judge.look(Law.HIGHER_AFTER_LONG, true);
      if (open) {
        judge.fail(Law.HIGHER_AFTER_LONG, volume + " uL is open after " + longer.get().words());
      }
    }
  }

  private void oneRungUp() {
    Optional<Long> most = mostNow();
    if (most.isEmpty()) {
      return;
    }
    for (long rung : scene.rungs()) {
      boolean above = rung > most.get();
      judge.look(Law.ONE_RUNG_UP, above);
      if (above && (scene.allows(rung) || scene.proposed() == rung)) {
        judge.fail(Law.ONE_RUNG_UP, rung + " uL is open, the most was " + most.get());
      }
    }
  }

  /** One step above the last that went in; empty where none did. */
  private Optional<Long> mostNow() {
    return run.reversed().stream()
        .filter(Told::wentIn)
        .findFirst()
        .map(last -> scene.above(last.base()));
  }

  private void first() {
    if (!run.isEmpty()) {
      return;
    }
    Optional<Mix> before = ledger.mixBefore(mix);
    List<Told> tolerated = before.isEmpty() ? List.of() : ledger.lastTolerated();
    if (tolerated.isEmpty()) {
      afterNothingTolerated();
      return;
    }
    Told last =
        tolerated.stream()
            .filter(this::isFresh)
            .reduce((earlier, later) -> later)
            .orElse(tolerated.getLast());
    atMost(last);
    ledger.everLong().stream().filter(one -> one.at() > last.at()).forEach(this::atMost);
  }

  /** No component above what he last tolerated of it, nor of what was too long since. */
  private void atMost(Told last) {
    for (long rung : scene.rungs()) {
      for (int i = 0; i < mix.components(); i++) {
        boolean above =
            mix.has(i) && last.mix.has(i) && mix.holds(i, rung) > last.mix.holds(i, last.drawn());
        judge.look(Law.CHANGE_CARRIES, above);
        if (above && (scene.allows(rung) || scene.proposed() == rung)) {
          judge.fail(Law.CHANGE_CARRIES, rung + " uL is open, his last was " + last.words());
        }
      }
    }
  }

  private void afterNothingTolerated() {
    List<Told> tooLong = ledger.everLong();
    noneAbove(
        Law.FIRST_DOSE, Math.max(scene.rungs().getFirst(), ledger.watch.transfers.openedOf(mix)));
    if (tooLong.isEmpty()) {
      return;
    }
    judge.look(Law.CHANGE_AFTER_LONG, true);
    if (scene.proposed() > 0) {
      judge.fail(Law.CHANGE_AFTER_LONG, scene.proposed() + " uL is proposed");
    }
    for (long rung : scene.rungs()) {
      if (scene.allows(rung) && !isLess(rung, tooLong)) {
        judge.fail(Law.CHANGE_AFTER_LONG, rung + " uL is open, which is not less of everything");
      }
    }
  }

  /**
   * Whether a volume holds less of each component than every one of them that held it. One that was
   * struck by a prescriber binds nobody, and shows still that he had the component.
   */
  private boolean isLess(long volume, List<Told> tooLong) {
    List<Told> ever = ledger.told.stream().filter(Told::isLong).toList();
    for (int i = 0; i < mix.components(); i++) {
      OptionalLong elsewhere = ledger.watch.transfers.leastOf(i);
      long least = leastOf(i, tooLong).orElse(leastOf(i, ever).orElse(elsewhere.orElse(0)));
      if (mix.has(i) && mix.holds(i, volume) >= least) {
        return false;
      }
    }
    return true;
  }

  private OptionalLong leastOf(int component, List<Told> tooLong) {
    return tooLong.stream().flatMapToLong(one -> held(component, one)).min();
  }

  /** How much of a component a report may have held, from whichever vial. */
  private LongStream held(int component, Told one) {
    return Stream.concat(Stream.of(one.mix), ledger.besides(one).stream())
        .filter(each -> each.has(component))
        .mapToLong(each -> each.holds(component, one.drawn()));
  }

  private void noneAbove(Law law, long most) {
    for (long rung : scene.rungs()) {
      judge.look(law, rung > most);
      if (rung > most && (scene.allows(rung) || scene.proposed() == rung)) {
        judge.fail(law, rung + " uL is open, at most " + most);
      }
    }
  }

  private void newStock() {
    Optional<Ledger.Vial> vial = ledger.vial().filter(one -> one.mix().isSameAs(mix));
    if (vial.isEmpty() || run.isEmpty()) {
      return;
    }
    Told last = run.getLast();
    if (isFresh(last) || (last.vialKnown && last.stock.equals(vial.get().root()))) {
      return;
    }
    restart(
        ledger.counting().stream()
            .filter(one -> one.mix.isOfTheSameDrugsAs(mix) && isFresh(one) && one.proves())
            .reduce((earlier, later) -> later));
  }

  private boolean isFresh(Told one) {
    return one.isFresh(ledger.plan().rules());
  }

  private void restart(Optional<Told> proven) {
    String least = proven.map(Told::words).orElse("nothing");
    for (long rung : scene.rungs()) {
      if (isAbove(rung, proven)) {
        judge.look(Law.NEW_STOCK, true);
        if (scene.proposed() == rung
            || (scene.allows(rung) && !scene.says(rung, GuardRule.NEW_STOCK))) {
          judge.fail(Law.NEW_STOCK, rung + " uL is open on a new vial, proven was " + least);
        }
      }
    }
    ledger
        .order()
        .filter(order -> isAbove(order.volume(), proven) && scene.clear())
        .filter(order -> !scene.overrodeFor(GuardRule.NEW_STOCK))
        .ifPresent(
            order -> judge.fail(Law.NEW_STOCK, order.volume() + " uL is clear on a new vial"));
  }

  /** More of any drug than the dose that was proven; above the lowest step where none was. */
  private boolean isAbove(long rung, Optional<Told> proven) {
    return proven
        .map(one -> !one.mix.reaches(one.drawn(), mix, rung))
        .orElse(rung > scene.rungs().getFirst());
  }
}
