package rungwise.clinic.handout;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import rungwise.clinic.words.Language;
import rungwise.clinic.words.PatientWord;
import rungwise.clinic.words.PatientWords;
import rungwise.clinic.words.Slot;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Dose;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;

/** A dose as a man reads it: volume first, then the line, then what it holds. */
final class SheetDose {

  /** What a device is called, and each component with and without its salt. */
  private static final Map<Barrel, PatientWord> SYRINGES =
      Map.of(
          Barrels.U100_0_3_HALF_UNIT, PatientWord.SYRINGE_U100_0_3_HALF,
          Barrels.U100_0_3, PatientWord.SYRINGE_U100_0_3,
          Barrels.U100_0_5, PatientWord.SYRINGE_U100_0_5,
          Barrels.U100_1, PatientWord.SYRINGE_U100_1,
          Barrels.U100_1_TWO_UNIT, PatientWord.SYRINGE_U100_1_TWO,
          Barrels.MILLILITRE_1, PatientWord.SYRINGE_ML_1,
          Barrels.PREFILLED_0_5, PatientWord.SYRINGE_PREFILLED_0_5,
          Barrels.CARTRIDGE_1, PatientWord.SYRINGE_CARTRIDGE_1);

  private final PatientWords words;
  private final Language language;
  private final SheetPress press;

  SheetDose(Language language, SheetPress press) {
    this.words = PatientWords.in(language);
    this.language = language;
    this.press = press;
  }

  Map<Slot, String> filling(Dose dose, Optional<Dose> next) {
    var filling = new EnumMap<Slot, String>(Slot.class);
    filling.put(Slot.VOLUME, dose.volume().toString());
    filling.put(Slot.SYRINGE, syringe(dose.barrel()));
    filling.put(Slot.CONTENT, list(dose, one -> content(one, dose)));
    filling.put(Slot.COMPOSITION, list(dose, this::strength));
    press.lineWords(dose, language).ifPresent(line -> filling.put(Slot.MARK_WORDS, line));
    next.ifPresent(
        step -> {
          filling.put(Slot.NEXT_VOLUME, step.volume().toString());
          press
              .lineWords(step, language)
              .ifPresent(line -> filling.put(Slot.NEXT_MARK_WORDS, line));
        });
    return filling;
  }

  String syringe(Barrel barrel) {
    PatientWord word = SYRINGES.get(barrel);
    if (word == null) {
      throw new IllegalStateException("bug: no words for a " + barrel);
    }
    return words.text(word);
  }

  private static String list(Dose dose, Function<Ingredient, String> one) {
    List<Ingredient> ingredients = dose.preparation().ingredients();
    return ingredients.stream().map(one).collect(Collectors.joining(", "));
  }

  /** "papaverine 6 mg", with the mass as it is written everywhere else. */
  private String content(Ingredient ingredient, Dose dose) {
    Component component = ingredient.component();
    String said = ingredient.contentWords(dose.volume());
    return words.text(drug(component)) + said.substring(component.token().length());
  }

  private String strength(Ingredient ingredient) {
    Component component = ingredient.component();
    String said = ingredient.strengthWords();
    return words.text(salt(component)) + said.substring(component.fullName().length());
  }

  private static PatientWord drug(Component component) {
    return switch (component) {
      case PAPAVERINE -> PatientWord.DRUG_PAPAVERINE;
      case PHENTOLAMINE -> PatientWord.DRUG_PHENTOLAMINE;
      case ALPROSTADIL -> PatientWord.DRUG_ALPROSTADIL;
      case ATROPINE -> PatientWord.DRUG_ATROPINE;
    };
  }

  private static PatientWord salt(Component component) {
    return switch (component) {
      case PAPAVERINE -> PatientWord.DRUG_PAPAVERINE_SALT;
      case PHENTOLAMINE -> PatientWord.DRUG_PHENTOLAMINE_SALT;
      case ALPROSTADIL -> PatientWord.DRUG_ALPROSTADIL_SALT;
      case ATROPINE -> PatientWord.DRUG_ATROPINE_SALT;
    };
  }
}
