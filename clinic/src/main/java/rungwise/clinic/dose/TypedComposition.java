package rungwise.clinic.dose;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Form;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Concentration;
import rungwise.quantities.Fault;
import rungwise.quantities.Mass;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/** Reads a preparation typed as "papaverine hydrochloride=30 mg/mL, alprostadil=10 mcg/mL". */
public final class TypedComposition {

  private static final String NAME = "typed composition";
  private static final String EXAMPLE =
      "papaverine hydrochloride=30 mg/mL, phentolamine mesylate=1 mg/mL, alprostadil=10 mcg/mL";
  private static final Pattern BETWEEN_PARTS = Pattern.compile(",");
  private static final Volume MICROLITRE = Volume.ofMicrolitres(1);

  private TypedComposition() {}

  public static Reading<Preparation> read(String text) {
    var faults = new ArrayList<String>();
    var notices = new ArrayList<String>();
    var ingredients = new ArrayList<Ingredient>();
    for (String part : BETWEEN_PARTS.split(text, -1)) {
      Reading<Ingredient> reading = readPart(part.strip());
      faults.addAll(reading.faults());
      notices.addAll(reading.notices());
      reading.found().ifPresent(ingredients::add);
    }
    if (faults.isEmpty()) {
      Preparation.faultsOf(NAME, withLimit(ingredients), ceiling(ingredients)).stream()
          .map(Fault::text)
          .forEach(faults::add);
    }
    return faults.isEmpty()
        ? new Reading.Read<>(made(ingredients), notices)
        : new Reading.Refused<>(faults);
  }

  private static Preparation made(List<Ingredient> ingredients) {
    return new Preparation(
        new PreparationId("typed"),
        NAME,
        new Form.Solution(),
        withLimit(ingredients),
        ceiling(ingredients),
        Optional.empty());
  }

  private static Reading<Ingredient> readPart(String part) {
    Optional<NamedAmount> named = NamedAmount.of(part);
    if (named.isEmpty()) {
      return Reading.refused(
          "\"" + part + "\" is not a component with its strength: write it such as " + EXAMPLE);
    }
    Optional<Component> component = named.get().component();
    if (component.isEmpty()) {
      return Reading.refused(unknown(named.get().name()));
    }
    return withSaltNotice(
        named.get(),
        component.get(),
        Concentration.parse(named.get().amount())
            .map(strength -> new Ingredient(component.get(), strength, Optional.empty())));
  }

  /** A strength of the salt and a strength of the base differ, so a short name is told back. */
  private static Reading<Ingredient> withSaltNotice(
      NamedAmount named, Component component, Reading<Ingredient> reading) {
    if (reading.found().isEmpty() || named.name().equals(component.fullName())) {
      return reading;
    }
    var notices = new ArrayList<>(reading.notices());
    notices.add("\"" + named.name() + "\" was read as " + component.fullName() + ".");
    return new Reading.Read<>(reading.orThrow(), notices);
  }

  static String unknown(String name) {
    String names =
        Arrays.stream(Component.values())
            .map(Component::fullName)
            .collect(Collectors.joining(", "));
    return "\"" + name + "\" is not a component known here: give one of " + names;
  }

  /** Alprostadil alone carries the limit of its label; no mixture has a published one. */
  private static List<Ingredient> withLimit(List<Ingredient> ingredients) {
    return ingredients.stream()
        .map(one -> new Ingredient(one.component(), one.strength(), limit(ingredients)))
        .toList();
  }

  private static Optional<Mass> limit(List<Ingredient> ingredients) {
    boolean isAlone =
        ingredients.size() == 1 && ingredients.getFirst().component() == Component.ALPROSTADIL;
    return SamplePreparations.ALPROSTADIL_20
        .ingredient(Component.ALPROSTADIL)
        .flatMap(Ingredient::limit)
        .filter(most -> isAlone);
  }

  private static Volume ceiling(List<Ingredient> ingredients) {
    Volume largest = Barrels.largestCapacity();
    return limit(ingredients)
        .map(most -> ingredients.getFirst().strength().volumeOf(most).roundDownTo(MICROLITRE))
        .filter(most -> most.isLessThan(largest))
        .orElse(largest);
  }

  /**
   * A name and an amount on the two sides of an equals sign.
   *
   * @param name in lower case, with single spaces
   */
  record NamedAmount(String name, String amount) {

    private static final Pattern TYPED = Pattern.compile("([^=]+)=([^=]+)");

    static Optional<NamedAmount> of(String text) {
      var typed = TYPED.matcher(text);
      if (!typed.matches()) {
        return Optional.empty();
      }
      String name = typed.group(1).strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
      return Optional.of(new NamedAmount(name, typed.group(2).strip()));
    }

    Optional<Component> component() {
      return Component.of(name);
    }
  }
}
