package rungwise.checks.topics;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.SaltBasis;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.MassUnit;
import rungwise.quantities.Volume;

/** What a volume holds, which volume holds a mass, and how much of a salt is base. */
final class ContentTopics {

  private ContentTopics() {}

  static void addTo(TopicTable table) {
    table
        .on("A.mixture_dose", "ingredient_dose", ContentTopics::ingredientDose)
        .on("mixture content", ContentTopics::mixtureContent)
        .on("A.dose_volume", "dose_to_volume", in -> volume(in, "dose_ug", "conc_ug_per_mL"))
        .on("alprostadil volume", in -> volume(in, "dose_mcg", "conc_mcg_per_ml"))
        .on("alprostadil volume syringe", ContentTopics::volumeOfSyringe)
        .on("C.salt", "salt_to_base", ContentTopics::base);
  }

  private static Answer ingredientDose(Input input) {
    Component component = input.one("ingredient", ContentTopics::componentOf);
    MassUnit unit = input.one("unit", ContentTopics::unitOf);
    Concentration strength =
        input.read("conc_per_mL", text -> Concentration.parsePerMillilitre(unit, text));
    Volume volume = input.read("volume_mL", Volume::parseMillilitres);
    Mass content = new Ingredient(component, strength, Optional.empty()).in(volume);
    return Answer.number(Amounts.in(unit, content));
  }

  /** The rows write "papaverine HCl" for the salt that the product writes out. */
  private static Optional<Component> componentOf(String name) {
    return Component.of(name.replace("HCl", "hydrochloride"));
  }

  private static Optional<MassUnit> unitOf(String code) {
    return switch (code) {
      case "mg" -> Optional.of(MassUnit.MILLIGRAM);
      case "ug", "mcg" -> Optional.of(MassUnit.MICROGRAM);
      default -> Optional.empty();
    };
  }

  private static Answer mixtureContent(Input input) {
    input.note("mix");
    Volume volume = input.read("volume_ml", Volume::parseMillilitres);
    var contents = new HashMap<String, BigDecimal>();
    for (Component component : Component.values()) {
      String name = component.token() + "_" + component.unit().word().toLowerCase(Locale.ROOT);
      BigDecimal content =
          strengthOf(component, input.find(name + "_ml"))
              .map(strength -> new Ingredient(component, strength, Optional.empty()).in(volume))
              .map(mass -> Amounts.in(component.unit(), mass))
              .orElse(BigDecimal.ZERO);
      contents.put(name, content);
    }
    return new Answer.Named(Map.copyOf(contents));
  }

  /** A strength of 0 means that the mixture does not hold the component. */
  private static Optional<Concentration> strengthOf(Component component, Optional<String> given) {
    List<String> faults = new ArrayList<>();
    Optional<Concentration> strength =
        given
            .filter(text -> !text.equals("0"))
            .map(text -> Concentration.parsePerMillilitre(component.unit(), text))
            .flatMap(
                reading -> {
                  faults.addAll(reading.faults());
                  return reading.found();
                });
    if (!faults.isEmpty()) {
      throw new InputFault(String.join("; ", faults));
    }
    return strength;
  }

  private static Answer volume(Input input, String dose, String concentration) {
    Mass mass = input.read(dose, Mass::parseMicrograms);
    Concentration strength =
        input.read(
            concentration, text -> Concentration.parsePerMillilitre(MassUnit.MICROGRAM, text));
    return Answer.number(Amounts.millilitres(strength.volumeOf(mass)));
  }

  private static Answer volumeOfSyringe(Input input) {
    Mass mass = input.read("dose_mcg", Mass::parseMicrograms);
    Mass inSyringe = input.read("strength_mcg", Mass::parseMicrograms);
    Volume fill = input.read("fill_ml", Volume::parseMillilitres);
    return Answer.number(Amounts.millilitres(Concentration.of(inSyringe, fill).volumeOf(mass)));
  }

  private static Answer base(Input input) {
    var basis = new SaltBasis(input.decimal("mw_base"), input.decimal("mw_salt"));
    Mass salt = input.read("salt_mg", Mass::parseMilligrams);
    return Answer.number(Amounts.in(MassUnit.MILLIGRAM, basis.baseIn(salt)));
  }
}
