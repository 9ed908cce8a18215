package rungwise.dosing.known;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Fault;
import rungwise.quantities.Mass;
import rungwise.quantities.Volume;

/**
 * What a vial holds.
 *
 * @param name what the clinic calls it; never shown without the composition
 * @param ingredients at least one, no component twice, in the order of {@link Component}
 * @param ceiling the largest volume of one injection
 * @param preservative the preservative, where there is one
 */
public record Preparation(
    PreparationId id,
    String name,
    Form form,
    List<Ingredient> ingredients,
    Volume ceiling,
    Optional<String> preservative) {

  private static final String PER_MILLILITRE = " per mL";
  private static final int NOTHING_LEFT_OUT = -1;

  /** The fields that a fault of a preparation names. */
  public static final String NAME = "name";

  public static final String COMPONENTS = "components";
  public static final String CEILING = "ceiling";

  public Preparation {
    ingredients = ingredients.stream().sorted(Comparator.comparing(Ingredient::component)).toList();
    List<Fault> faults = faultsOf(name, ingredients, ceiling);
    if (!faults.isEmpty()) {
      throw new IllegalArgumentException("bug: " + faults);
    }
  }

  /** Everything that forbids such a preparation, for the person who enters it. */
  public static List<Fault> faultsOf(String name, List<Ingredient> ingredients, Volume ceiling) {
    var faults = new ArrayList<Fault>();
    if (name.isBlank()) {
      faults.add(
          new Fault(NAME, "The name is missing: enter what the clinic calls this preparation."));
    }
    if (ingredients.isEmpty()) {
      faults.add(
          new Fault(COMPONENTS, "No component was entered: give at least one with its strength."));
    }
    var seen = new HashSet<Component>();
    for (Ingredient ingredient : ingredients) {
      if (!seen.add(ingredient.component())) {
        faults.add(
            new Fault(
                COMPONENTS, ingredient.component().fullName() + " is entered twice: keep one."));
      }
      if (ingredient.isPassedBy(ceiling)) {
        faults.add(new Fault(CEILING, limitFault(ingredient, ceiling)));
      }
    }
    if (ceiling.equals(Volume.ZERO)) {
      faults.add(
          new Fault(
              CEILING,
              "The maximum volume is missing: enter the largest volume of one injection."));
    }
    if (ceiling.isMoreThan(Barrels.largestCapacity())) {
      faults.add(
          new Fault(
              CEILING,
              "No syringe holds "
                  + ceiling
                  + ": the largest holds "
                  + Barrels.largestCapacity()
                  + ". Enter a smaller maximum, or a stronger preparation."));
    }
    return faults;
  }

  private static String limitFault(Ingredient ingredient, Volume ceiling) {
    var unit = ingredient.component().unit();
    return ceiling
        + " holds "
        + ingredient.exactWords(ceiling)
        + ", more than its limit of "
        + ingredient.limit().orElseThrow().in(unit)
        + ": lower the maximum volume.";
  }

  /** The ingredient of that component, if the preparation holds it. */
  public Optional<Ingredient> ingredient(Component component) {
    for (Ingredient ingredient : ingredients) {
      if (ingredient.component() == component) {
        return Optional.of(ingredient);
      }
    }
    return Optional.empty();
  }

  /** Whether this holds that component. */
  public boolean holds(Component component) {
    return ingredient(component).isPresent();
  }

  /**
   * Whether a volume of this holds, of every component of a volume of another, at least as much. It
   * is then at least as strong, whatever else it holds.
   */
  public boolean holdsAtLeast(Volume volume, Preparation other, Volume otherVolume) {
    for (Ingredient theirs : other.ingredients) {
      Mass least = theirs.in(otherVolume);
      boolean isHeld = false;
      for (Ingredient mine : ingredients) {
        isHeld |= mine.component() == theirs.component() && !least.isMoreThan(mine.in(volume));
      }
      if (!isHeld) {
        return false;
      }
    }
    return true;
  }

  /** The same, and more of at least one component, or a component more. */
  public boolean holdsMore(Volume volume, Preparation other, Volume otherVolume) {
    return holdsAtLeast(volume, other, otherVolume)
        && !other.holdsAtLeast(otherVolume, this, volume);
  }

  /**
   * Whether two records are of the same medicine: the same components in the same strengths, with
   * the same words on the label, whatever the clinic calls them.
   */
  public boolean isSameAs(Preparation other) {
    if (ingredients.size() != other.ingredients.size()) {
      return false;
    }
    for (int index = 0; index < ingredients.size(); index++) {
      Ingredient mine = ingredients.get(index);
      Ingredient theirs = other.ingredients.get(index);
      if (mine.component() != theirs.component() || !mine.strength().equals(theirs.strength())) {
        return false;
      }
    }
    return true;
  }

  /** Whether this holds that component and nothing else. */
  public boolean isOnly(Component component) {
    return ingredients.size() == 1 && holds(component);
  }

  /** "papaverine hydrochloride 30 mg, phentolamine mesylate 1 mg, alprostadil 10 mcg per mL". */
  public String composition() {
    return wordsOf(ingredients);
  }

  /** The same words for any list of ingredients, such as those of a label. */
  public static String compositionOf(List<Ingredient> ingredients) {
    return wordsOf(
        ingredients.stream().sorted(Comparator.comparing(Ingredient::component)).toList());
  }

  private static String wordsOf(List<Ingredient> inOrder) {
    var words = new StringBuilder();
    for (Ingredient ingredient : inOrder) {
      words.append(words.isEmpty() ? "" : ", ").append(ingredient.strengthWords());
    }
    return words.append(PER_MILLILITRE).toString();
  }

  /**
   * What a label says that it holds, as a solution of which nobody here has set a limit; empty if
   * its words are not those of a composition.
   */
  public static Optional<Preparation> ofLabel(String composition) {
    List<Ingredient> read =
        Arrays.stream(withoutPerMillilitre(composition).split(", ", NOTHING_LEFT_OUT))
            .flatMap(words -> Ingredient.ofStrengthWords(words).stream())
            .toList();
    return Optional.of(read)
        .filter(ingredients -> compositionOf(ingredients).equals(composition))
        .filter(
            ingredients -> faultsOf(composition, ingredients, Barrels.largestCapacity()).isEmpty())
        .map(
            ingredients ->
                new Preparation(
                    new PreparationId("label: " + composition),
                    composition,
                    new Form.Solution(),
                    ingredients,
                    Barrels.largestCapacity(),
                    Optional.empty()));
  }

  private static String withoutPerMillilitre(String composition) {
    return composition.endsWith(PER_MILLILITRE)
        ? composition.substring(0, composition.length() - PER_MILLILITRE.length())
        : composition;
  }

  /** "papaverine 6 mg, phentolamine 0.2 mg, alprostadil 2 mcg". */
  public String contentOf(Volume volume) {
    return ingredients.stream()
        .map(ingredient -> ingredient.contentWords(volume))
        .collect(Collectors.joining(", "));
  }

  @Override
  public String toString() {
    return name + " (" + composition() + ")";
  }
}
