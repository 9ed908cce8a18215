package rungwise.dosing.ladder;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.DrawingError;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.Mass;
import rungwise.quantities.Volume;

/** What the first dose of a preparation rests on. */
public sealed interface Beginning {

  Comparator<ExactVolume> ORDER = Comparator.naturalOrder();

  /** Nothing before it went in or was too long: it begins as for a new man. */
  record AsNew() implements Beginning {}

  /** No component above what he last tolerated. */
  record AtMost(Carried carried) implements Beginning {}

  /**
   * He was taken over from elsewhere, and nothing here speaks of what he bears. Of every component
   * no more than a part of what was told. Above the first step only what a prescriber has opened.
   *
   * @param told every dose that was told; at least one
   * @param parts what a first dose may hold of each, in the same order
   * @param opened the volume of the next preparation that a prescriber has opened, if one has
   */
  record AsTold(List<Held> told, List<Held> parts, Optional<Volume> opened) implements Beginning {
    public AsTold {
      told = List.copyOf(told);
      parts = List.copyOf(parts);
    }

    /** The largest volume at which no component exceeds its part, if he has had any of them. */
    public Optional<ExactVolume> most(Preparation next) {
      return next.ingredients().stream().flatMap(mine -> most(mine).stream()).min(ORDER);
    }

    private Optional<ExactVolume> most(Ingredient mine) {
      return Held.least(parts, mine).map(mine.strength()::volumeOf);
    }

    /** Whether every component was in a told dose, so that the schedule may be opened at it. */
    public boolean carriesTo(Preparation next) {
      return next.ingredients().stream().allMatch(mine -> Held.least(parts, mine).isPresent());
    }

    /** What a prescriber may open the schedule at: the last printed line that is allowed. */
    public Optional<Volume> openable(Preparation next, Barrel barrel) {
      return carriesTo(next) ? mark(next, barrel) : Optional.empty();
    }

    /** The last printed line that is allowed and can be measured, if there is one. */
    Optional<Volume> mark(Preparation next, Barrel barrel) {
      return most(next)
          .flatMap(barrel::lastMarkWithin)
          .filter(mark -> !mark.isLessThan(DrawingError.BLOCK_BELOW.value()));
    }

    /** Where the schedule begins, if a prescriber has opened it. */
    Optional<Volume> start(Preparation next, Barrel barrel) {
      return opened
          .map(ExactVolume::of)
          .flatMap(upTo -> most(next).filter(most -> carriesTo(next)).map(most -> less(most, upTo)))
          .flatMap(barrel::lastMarkWithin)
          .filter(mark -> !mark.isLessThan(DrawingError.BLOCK_BELOW.value()));
    }

    private static ExactVolume less(ExactVolume one, ExactVolume other) {
      return one.compareTo(other) > 0 ? other : one;
    }

    private Optional<Volume> entry(Ladder ladder) {
      return opened.isPresent() && carriesTo(ladder.preparation())
          ? start(ladder.preparation(), ladder.barrel()).flatMap(ladder::atOrBelow)
          : Optional.of(ladder.first()).filter(first -> isWithin(first, ladder.preparation()));
    }

    boolean isWithin(Volume volume, Preparation next) {
      return most(next).filter(most -> most.compareTo(ExactVolume.of(volume)) < 0).isEmpty();
    }

    /** "alprostadil 5 mcg". */
    public String words() {
      return Held.words(told);
    }
  }

  /**
   * Nothing before is known to have been tolerated, and something lasted too long or nobody knows
   * how long. No volume is proposed; less of everything than in each such dose may be signed.
   *
   * @param tooLong at least one
   * @param parts what a first dose may hold of what was told from elsewhere, long or not
   */
  record BelowTooLong(List<Held> tooLong, List<Held> parts) implements Beginning {
    public BelowTooLong {
      tooLong = List.copyOf(tooLong);
      parts = List.copyOf(parts);
    }

    /** Where nothing was told from elsewhere. */
    public BelowTooLong(List<Held> tooLong) {
      this(tooLong, List.of());
    }

    /** Whether a volume holds less of every component than each dose that held it. */
    boolean allows(Volume volume, Preparation next) {
      return next.ingredients().stream()
          .allMatch(mine -> least(mine).filter(one -> one.isMoreThan(mine.in(volume))).isPresent());
    }

    /** The last printed line that is allowed and can be measured, if there is one. */
    Optional<Volume> highestMark(Preparation next, Barrel barrel) {
      return barrel
          .marking()
          .graduationVolume()
          .flatMap(
              step ->
                  bound(next).flatMap(barrel::lastMarkWithin).map(mark -> below(mark, step, next)))
          .filter(mark -> !mark.isLessThan(DrawingError.BLOCK_BELOW.value()));
    }

    private Volume below(Volume mark, Volume step, Preparation next) {
      return allows(mark, next) ? mark : mark.minus(step);
    }

    /** The volume that holds as much of one component as such a dose; none without all of them. */
    private Optional<ExactVolume> bound(Preparation next) {
      boolean hadAll = next.ingredients().stream().allMatch(mine -> least(mine).isPresent());
      return hadAll
          ? next.ingredients().stream()
              .map(mine -> mine.strength().volumeOf(least(mine).orElseThrow()))
              .min(ORDER)
          : Optional.empty();
    }

    private Optional<Mass> least(Ingredient mine) {
      return Held.least(Stream.concat(tooLong.stream(), parts.stream()).toList(), mine);
    }

    /** "alprostadil 5 mcg; alprostadil 7.5 mcg". */
    public String words() {
      return Held.words(tooLong);
    }
  }

  /** A volume of a preparation that was injected. */
  record Held(Preparation preparation, Volume volume) {

    /** How much of a component it holds; empty if none. */
    public Optional<Mass> of(Component component) {
      return preparation.ingredient(component).map(one -> one.in(volume));
    }

    static Optional<Mass> least(List<Held> held, Ingredient mine) {
      return held.stream()
          .flatMap(one -> one.of(mine.component()).stream())
          .min(Comparator.naturalOrder());
    }

    static String words(List<Held> held) {
      return held.stream().map(Held::toString).distinct().collect(Collectors.joining("; "));
    }

    /** "alprostadil 5 mcg". */
    @Override
    public String toString() {
      return preparation.contentOf(volume);
    }
  }

  /** The volume of a ladder that is proposed as the first one, if any is. */
  default Optional<Volume> entryTo(Ladder ladder) {
    return switch (this) {
      case AsNew asNew -> Optional.of(ladder.first());
      case AtMost(Carried carried) -> carried.entryTo(ladder);
      case AsTold asTold -> asTold.entry(ladder);
      case BelowTooLong tooLong -> Optional.empty();
    };
  }

  /**
   * The highest volume of a ladder that a prescriber may sign as the first one, if any. After
   * something too long it is never more than a new man would begin with.
   */
  default Optional<Volume> highestOf(Ladder ladder) {
    return this instanceof BelowTooLong tooLong
        ? Optional.of(ladder.first()).filter(first -> tooLong.allows(first, ladder.preparation()))
        : entryTo(ladder);
  }
}
