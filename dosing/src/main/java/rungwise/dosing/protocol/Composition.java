package rungwise.dosing.protocol;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.Volume;

/**
 * The composition for which a protocol in volumes was written: the same volume of another one is
 * another dose.
 *
 * @param strengths each component with its strength, in the order of {@link Component}
 */
public record Composition(Map<Component, Concentration> strengths) {

  public Composition {
    strengths = Collections.unmodifiableMap(new TreeMap<>(strengths));
    if (strengths.isEmpty()) {
      throw new IllegalArgumentException("bug: a composition of nothing");
    }
  }

  public static Composition of(Preparation preparation) {
    return of(preparation.ingredients());
  }

  /** Of ingredients that name no component twice. */
  public static Composition of(List<Ingredient> ingredients) {
    return new Composition(
        ingredients.stream()
            .collect(Collectors.toMap(Ingredient::component, Ingredient::strength)));
  }

  /** What a volume holds of a component; empty where it holds none. */
  public Optional<Mass> in(Component component, Volume volume) {
    return Optional.ofNullable(strengths.get(component)).map(per -> per.in(volume));
  }

  /** Whether a preparation holds exactly this. */
  public boolean isOf(Preparation preparation) {
    return equals(of(preparation));
  }

  /** "papaverine hydrochloride 30 mg, phentolamine mesylate 1 mg, alprostadil 10 mcg per mL". */
  @Override
  public String toString() {
    return Preparation.compositionOf(
        strengths.entrySet().stream()
            .map(one -> new Ingredient(one.getKey(), one.getValue(), Optional.empty()))
            .toList());
  }
}
