package rungwise.dosing.ladder;

import java.util.Comparator;
import java.util.Optional;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.Mass;
import rungwise.quantities.Volume;

/**
 * What a man tolerated of the preparation before, and what it allows of the next one. No published
 * table converts one mixture into another, so no component may exceed what he last tolerated of it.
 *
 * @param from the preparation before
 * @param tolerated the volume of it that he last tolerated
 */
public record Carried(Preparation from, Volume tolerated) {

  /** Whether he has had every component of the next preparation, so that a volume carries over. */
  public boolean carriesTo(Preparation next) {
    return next.ingredients().stream()
        .allMatch(ingredient -> from.ingredient(ingredient.component()).isPresent());
  }

  /** Whether both hold the same components, in whatever strength. */
  public boolean isOfTheSameDrugsAs(Preparation next) {
    return carriesTo(next) && next.ingredients().size() == from.ingredients().size();
  }

  /** The volume of the next preparation that holds as much of one component as he tolerated. */
  public Optional<ExactVolume> volumeFor(Component component, Preparation next) {
    Optional<Mass> had = from.ingredient(component).map(ingredient -> ingredient.in(tolerated));
    return had.flatMap(
        mass ->
            next.ingredient(component).map(Ingredient::strength).map(one -> one.volumeOf(mass)));
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
