package rungwise.dosing.ladder;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
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

  /** Nothing before it went in or was too long: it begins as for a new man. */
  record AsNew() implements Beginning {}

  /** No component above what he last tolerated. */
  record AtMost(Carried carried) implements Beginning {}

  /**
   * Nothing before is known to have been tolerated, and something lasted too long or nobody knows
   * how long. No volume is proposed; less of everything than in each such dose may be signed.
   *
   * @param tooLong at least one
   */
  record BelowTooLong(List<Held> tooLong) implements Beginning {
    public BelowTooLong {
      tooLong = List.copyOf(tooLong);
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
              .min(Comparator.naturalOrder())
          : Optional.empty();
    }

    private Optional<Mass> least(Ingredient mine) {
      return tooLong.stream()
          .flatMap(held -> held.of(mine.component()).stream())
          .min(Comparator.naturalOrder());
    }

    /** "alprostadil 5 mcg; alprostadil 7.5 mcg". */
    public String words() {
      return Held.words(tooLong);
    }
  }

  /** A volume of a preparation that was injected. */
  record Held(Preparation preparation, Volume volume) {

    Optional<Mass> of(Component component) {
      return preparation.ingredient(component).map(one -> one.in(volume));
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
