package rungwise.dosing.urgent.rescue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.dosing.syringe.Barrel;
import rungwise.quantities.Concentration;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.Volume;

/**
 * How phenylephrine of a stock strength becomes what may be given, or why it does not. Two steps
 * are the usual way, because a large volume is measured better than a drop; the stronger of the two
 * strengths is told with them, because it is what he gets if the second step is left out.
 */
public sealed interface Mixing {

  /** The usual stock; any other is typed twice. */
  Sourced<Concentration> USUAL_STOCK =
      new Sourced<>(
          new Concentration(10_000_000),
          Source.remembered(Citation.PHENYLEPHRINE_LABEL, "US vial of 10 mg/mL"));

  /** The weakest that is given. */
  Sourced<Concentration> LEAST_GIVEN =
      new Sourced<>(
          new Concentration(100_000),
          Source.secondary(Citation.AUA_PRIAPISM_2021, "diluted to 100 to 500 mcg/mL"));

  /** The strongest that is given. */
  Sourced<Concentration> MOST_GIVEN =
      new Sourced<>(
          new Concentration(500_000),
          Source.secondary(Citation.AUA_PRIAPISM_2021, "diluted to 100 to 500 mcg/mL"));

  /** What is prepared unless something else is asked for. */
  Sourced<Concentration> USUAL_WANTED =
      new Sourced<>(
          LEAST_GIVEN.value(),
          new Source.Assumption("the weakest of the published strengths forgives most"));

  /** How much stock the first of two steps takes. */
  Volume FIRST_STOCK = Volume.ofMicrolitres(1_000);

  /** By how many times the first of two steps may dilute, the best first. */
  List<Integer> FIRST_STEPS = List.of(10, 5, 4, 2);

  /** In how many steps it is diluted. */
  enum Way {
    TWO_STEPS,
    ONE_STEP
  }

  /**
   * What is to be prepared.
   *
   * @param stock the strength on the stock's label, as typed
   * @param wanted the strength to be given
   * @param total the volume of it
   */
  record Wish(Twice<Concentration> stock, Concentration wanted, Volume total, Way way) {}

  /** A dilution of which both parts are drawn well. */
  record Step(Mix mix, Part stock, Part saline) {
    public Step {
      if (!mix.stock().equals(stock.volume()) || !mix.saline().equals(saline.volume())) {
        throw new IllegalArgumentException("bug: " + mix + " is not drawn as " + stock);
      }
    }

    static Optional<Step> of(Mix mix, List<Barrel> syringes) {
      return Part.of(mix.stock(), syringes)
          .flatMap(
              stock -> Part.of(mix.saline(), syringes).map(saline -> new Step(mix, stock, saline)));
    }
  }

  /** In one step, as it was asked for. */
  record OneStep(Step step) implements Mixing {}

  /** In two; the second takes its part from the syringe of the first. */
  record TwoSteps(Step first, Step second) implements Mixing {
    public TwoSteps {
      if (!first.mix().gives().equals(second.mix().from())
          || second.mix().stock().isMoreThan(first.mix().total())) {
        throw new IllegalArgumentException("bug: " + second + " is not made of " + first);
      }
    }

    /** What he gets if the second step is left out. */
    public Concentration ifSecondIsLeftOut() {
      return first.mix().gives();
    }
  }

  /** The label's own strength is what is given: nothing is diluted. */
  record ReadyToUse(Concentration labelled) implements Mixing {}

  /** Every reason at once. */
  record Refused(List<Refusal> why) implements Mixing {
    public Refused {
      why = List.copyOf(why);
      if (why.isEmpty()) {
        throw new IllegalArgumentException("bug: a refusal without a reason");
      }
    }
  }

  /** How it is diluted with syringes that are at hand. */
  static Mixing mix(Wish wish, List<Barrel> syringes) {
    List<Refusal> why = refusals(wish);
    if (!why.isEmpty()) {
      return new Refused(why);
    }
    return switch (wish.way()) {
      case ONE_STEP -> oneStep(wish, syringes);
      case TWO_STEPS -> twoSteps(wish, syringes);
    };
  }

  /** A stock that is given as its label says. Its strength is typed twice, whatever it is. */
  static Mixing asLabelled(Twice<Concentration> stock) {
    var why = new ArrayList<>(stock.refusals(Asked.STOCK, /* mustBeTypedTwice= */ true));
    why.addAll(undiluted(stock.value()));
    return why.isEmpty() ? new ReadyToUse(stock.value()) : new Refused(why);
  }

  /** Why a strength is not given as it is; empty if it is. */
  static List<Refusal> undiluted(Concentration given) {
    boolean isGiven =
        given.compareTo(LEAST_GIVEN.value()) >= 0 && given.compareTo(MOST_GIVEN.value()) <= 0;
    return isGiven
        ? List.of()
        : List.of(new Refusal.UndilutedStock(given, LEAST_GIVEN.value(), MOST_GIVEN.value()));
  }

  /** Why a strength is not prepared from any stock; empty if it may be. */
  static List<Refusal> unpublished(Concentration wanted) {
    if (wanted.compareTo(MOST_GIVEN.value()) > 0) {
      return List.of(new Refusal.WantedAboveMost(wanted, MOST_GIVEN.value()));
    }
    return wanted.compareTo(LEAST_GIVEN.value()) < 0
        ? List.of(new Refusal.WantedBelowLeast(wanted, LEAST_GIVEN.value()))
        : List.of();
  }

  private static List<Refusal> refusals(Wish wish) {
    Concentration stock = wish.stock().value();
    Concentration wanted = wish.wanted();
    boolean isUnusual = !stock.equals(USUAL_STOCK.value());
    var why = new ArrayList<>(wish.stock().refusals(Asked.STOCK, isUnusual));
    if (wanted.compareTo(stock) >= 0) {
      why.add(new Refusal.WantedNotBelowStock(wanted, stock));
    }
    if (isOneAmpoule(stock, wanted)) {
      why.add(new Refusal.OneAmpouleShortcut(wanted, MOST_GIVEN.value()));
    } else {
      why.addAll(unpublished(wanted));
    }
    return why;
  }

  /** Whether it is what 1 mL of stock makes with 9 mL of saline, and too strong to be given. */
  private static boolean isOneAmpoule(Concentration stock, Concentration wanted) {
    return wanted.compareTo(MOST_GIVEN.value()) > 0 && isFirstStep(stock, wanted);
  }

  private static boolean isFirstStep(Concentration stock, Concentration wanted) {
    return firstStep(stock, FIRST_STEPS.getFirst())
        .filter(mix -> mix.gives().equals(wanted))
        .isPresent();
  }

  private static Optional<Mix> firstStep(Concentration stock, int times) {
    return Mix.adding(stock, FIRST_STOCK, FIRST_STOCK.times(times - 1L));
  }

  private static Mixing oneStep(Wish wish, List<Barrel> syringes) {
    Concentration stock = wish.stock().value();
    Optional<Mix> mix = Mix.toTotal(stock, wish.wanted(), wish.total());
    if (mix.isEmpty()) {
      return refused(stock.volumeOf(wish.wanted().in(wish.total())));
    }
    Mix whole = mix.orElseThrow();
    return Step.of(whole, syringes)
        .<Mixing>map(OneStep::new)
        .orElseGet(
            () ->
                new Refused(
                    Stream.of(whole.stock(), whole.saline())
                        .filter(part -> Part.of(part, syringes).isEmpty())
                        .<Refusal>map(
                            part -> new Refusal.NotDrawable(Asked.TOTAL, ExactVolume.of(part)))
                        .toList()));
  }

  private static Refused refused(ExactVolume part) {
    return new Refused(List.of(new Refusal.NotDrawable(Asked.TOTAL, part)));
  }

  private static Mixing twoSteps(Wish wish, List<Barrel> syringes) {
    Concentration stock = wish.stock().value();
    return FIRST_STEPS.stream()
        .flatMap(times -> firstStep(stock, times).stream())
        .flatMap(first -> secondAfter(first, wish, syringes).stream())
        .findFirst()
        .orElseGet(
            () -> new Refused(List.of(new Refusal.NoTwoSteps(stock, wish.wanted(), wish.total()))));
  }

  private static Optional<Mixing> secondAfter(Mix first, Wish wish, List<Barrel> syringes) {
    return Mix.toTotal(first.gives(), wish.wanted(), wish.total())
        .filter(second -> !second.stock().isMoreThan(first.total()))
        .flatMap(second -> Step.of(second, syringes))
        .flatMap(second -> Step.of(first, syringes).map(drawn -> new TwoSteps(drawn, second)));
  }
}
