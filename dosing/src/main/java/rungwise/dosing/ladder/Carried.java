package rungwise.dosing.ladder;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.Volume;

/**
 * What a man tolerated of the preparation before, and what it allows of the next one. No published
 * table converts one mixture into another, so no component may exceed what he last tolerated of it.
 *
 * @param from the preparation before
 * @param tolerated the volume of it that he last tolerated
 * @param tooLongSince what lasted too long after it, of whatever preparation, or nobody knows how
 *     long: the first dose holds no more of any component than each of them either
 */
public record Carried(Preparation from, Volume tolerated, List<Beginning.Held> tooLongSince) {

  public Carried {
    tooLongSince = List.copyOf(tooLongSince);
  }

  /** What he tolerated, with nothing too long since. */
  public Carried(Preparation from, Volume tolerated) {
    this(from, tolerated, List.of());
  }

  /** "alprostadil 5 mcg", and what has lasted too long since. */
  public String words() {
    String had = from.contentOf(tolerated);
    return tooLongSince.isEmpty()
        ? had
        : had
            + "; since then too long, or not known how long: "
            + Beginning.Held.words(tooLongSince);
  }

  /** Whether he has had every component of the next preparation, so that a volume carries over. */
  public boolean carriesTo(Preparation next) {
    return next.ingredients().stream()
        .allMatch(ingredient -> from.ingredient(ingredient.component()).isPresent());
  }

  /** Whether both hold the same components, in whatever strength. */
  public boolean isOfTheSameDrugsAs(Preparation next) {
    return carriesTo(next) && next.ingredients().size() == from.ingredients().size();
  }

  /** The volume of the next preparation that holds as much of one component as he may have. */
  public Optional<ExactVolume> volumeFor(Component component, Preparation next) {
    return Stream.concat(Stream.of(new Beginning.Held(from, tolerated)), tooLongSince.stream())
        .flatMap(held -> held.of(component).stream())
        .min(Comparator.naturalOrder())
        .flatMap(
            mass ->
                next.ingredient(component)
                    .map(Ingredient::strength)
                    .map(one -> one.volumeOf(mass)));
  }

  /**
   * The largest volume at which no shared component exceeds what he tolerated, if any is shared.
   */
  public Optional<ExactVolume> most(Preparation next) {
    return next.ingredients().stream()
        .flatMap(ingredient -> volumeFor(ingredient.component(), next).stream())
        .min(Comparator.naturalOrder());
  }

  /**
   * The highest step at which the next preparation may begin. Where it holds a component that he
   * has never had, that is the lowest step. None where no step holds as little as he tolerated.
   */
  public Optional<Volume> entryTo(Ladder ladder) {
    Optional<ExactVolume> most = most(ladder.preparation());
    return carriesTo(ladder.preparation())
        ? most.flatMap(ladder.barrel()::lastMarkWithin).flatMap(ladder::atOrBelow)
        : Optional.of(ladder.first())
            .filter(
                first -> most.filter(one -> one.compareTo(ExactVolume.of(first)) < 0).isEmpty());
  }
}
