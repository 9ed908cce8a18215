package rungwise.dosing.response;

import java.util.Comparator;
import java.util.List;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;

/** The strength of a preparation relative to another one. */
public sealed interface RelativeStrength {

  /**
   * How far the logarithm of a mixture's strength may lie from that of the component that binds.
   */
  Sourced<Double> DEVIATION_OF_MIXTURES =
      new Sourced<>(
          0.5, new Source.Assumption("a factor of 2.3 either way in 9 of 10; no published table"));

  /** Both are the same, or hold one and the same single component. */
  record Exactly(double strength) implements RelativeStrength {}

  /** Both hold the same components in other proportions. */
  record Uncertain(UncertainStrength strength) implements RelativeStrength {}

  /** One holds a component that the other lacks: nothing is known. */
  record NotKnown() implements RelativeStrength {}

  /** The strength of a preparation where the reference has 1. */
  static RelativeStrength of(Preparation preparation, Preparation reference) {
    boolean isAlike =
        preparation.ingredients().size() == reference.ingredients().size()
            && preparation.ingredients().stream().allMatch(one -> reference.holds(one.component()));
    if (!isAlike) {
      return new NotKnown();
    }
    List<Double> ratios =
        preparation.ingredients().stream()
            .map(one -> ratio(one, reference))
            .sorted(Comparator.reverseOrder())
            .toList();
    boolean isExact = ratios.size() == 1 || ratios.stream().allMatch(ratio -> ratio == 1);
    return isExact
        ? new Exactly(ratios.getFirst())
        : new Uncertain(
            new UncertainStrength(Math.log(ratios.getFirst()), DEVIATION_OF_MIXTURES.value()));
  }

  private static double ratio(Ingredient ingredient, Preparation reference) {
    return ingredient
        .strength()
        .ratioTo(reference.ingredient(ingredient.component()).orElseThrow().strength());
  }
}
