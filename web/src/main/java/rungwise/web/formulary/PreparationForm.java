package rungwise.web.formulary;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rungwise.clinic.formulary.ClinicPreparation;
import rungwise.clinic.formulary.IngredientDraft;
import rungwise.clinic.formulary.PreparationDraft;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Form;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.supply.InUseRule;

/**
 * The preparation form as typed: fields by name, an absent one is empty. A component's strength and
 * limit carry its token in their names, so that none can be taken for another's.
 */
record PreparationForm(Map<String, String> typed) {

  static final String CONFIRMED = "confirmed";

  static final PreparationForm EMPTY = new PreparationForm(Map.of());

  PreparationForm {
    typed = Map.copyOf(typed);
  }

  /** What was typed into a field. */
  String said(String field) {
    return typed.getOrDefault(field, "");
  }

  /**
   * Whether these very notices were confirmed. Confirmed ones count for nothing once something else
   * was typed.
   */
  boolean confirms(List<String> notices) {
    return said(CONFIRMED).equals(wordsOf(notices));
  }

  /** What the check box sends. */
  static String wordsOf(List<String> notices) {
    return String.join(" ", notices);
  }

  PreparationDraft draft() {
    List<IngredientDraft> rows =
        Arrays.stream(Component.values())
            .filter(
                one ->
                    !(said(PreparationDraft.strengthOf(one)) + said(PreparationDraft.limitOf(one)))
                        .isBlank())
            .map(
                one ->
                    new IngredientDraft(
                        one.token(),
                        said(PreparationDraft.strengthOf(one)),
                        said(PreparationDraft.againOf(one)),
                        said(PreparationDraft.limitOf(one))))
            .toList();
    return new PreparationDraft(
        said(Preparation.NAME),
        said(PreparationDraft.FORM),
        said(PreparationDraft.DILUENT),
        said(PreparationDraft.USABLE_HOURS),
        said(PreparationDraft.FILL),
        rows,
        said(Preparation.CEILING),
        said(PreparationDraft.PRESERVATIVE),
        said(PreparationDraft.IN_USE),
        said(PreparationDraft.IN_USE_DAYS));
  }

  /** A version that is to be changed. */
  static PreparationForm of(ClinicPreparation kept) {
    Preparation one = kept.preparation();
    var fields = new HashMap<String, String>();
    fields.put(Preparation.NAME, one.name());
    fields.put(Preparation.CEILING, one.ceiling().millilitresText());
    fields.put(PreparationDraft.PRESERVATIVE, one.preservative().orElse(""));
    one.ingredients().forEach(ingredient -> put(ingredient, fields));
    put(one.form(), fields);
    put(kept.inUse(), fields);
    return new PreparationForm(fields);
  }

  private static void put(Ingredient ingredient, Map<String, String> fields) {
    Component component = ingredient.component();
    fields.put(
        PreparationDraft.strengthOf(component), ingredient.strength().numberText(component.unit()));
    ingredient
        .limit()
        .ifPresent(
            most ->
                fields.put(PreparationDraft.limitOf(component), most.numberText(component.unit())));
  }

  private static void put(Form form, Map<String, String> fields) {
    switch (form) {
      case Form.Solution solution -> fields.put(PreparationDraft.FORM, "solution");
      case Form.Powder powder -> {
        fields.put(PreparationDraft.FORM, "powder");
        fields.put(PreparationDraft.DILUENT, powder.diluent().millilitresText());
        fields.put(PreparationDraft.USABLE_HOURS, powder.usableFor().wholeHoursText());
      }
      case Form.Prefilled prefilled -> {
        fields.put(PreparationDraft.FORM, "prefilled");
        fields.put(PreparationDraft.FILL, prefilled.fill().millilitresText());
      }
      case Form.Cartridge cartridge -> {
        fields.put(PreparationDraft.FORM, "cartridge");
        fields.put(PreparationDraft.FILL, cartridge.fill().millilitresText());
      }
    }
  }

  private static void put(InUseRule rule, Map<String, String> fields) {
    switch (rule) {
      case InUseRule.SingleUse once -> fields.put(PreparationDraft.IN_USE, "single_use");
      case InUseRule.NotStated unknown -> fields.put(PreparationDraft.IN_USE, "not_stated");
      case InUseRule.DaysAfterOpening limit -> {
        fields.put(PreparationDraft.IN_USE, "days");
        fields.put(PreparationDraft.IN_USE_DAYS, Integer.toString(limit.days()));
      }
    }
  }
}
