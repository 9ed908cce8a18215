package rungwise.clinic.formulary;

import java.util.List;

/**
 * A preparation as typed into the form. Fields that the chosen form or rule does not ask for are
 * ignored.
 *
 * @param form one of "solution", "powder", "prefilled", "cartridge"
 * @param diluent mL that dissolve a powder
 * @param usableHours whole hours for which a dissolved powder may be used
 * @param fill mL in a prefilled syringe or a cartridge
 * @param ceiling the largest volume of one injection, in mL
 * @param preservative its name; blank if there is none
 * @param inUse one of "single_use", "days", "not_stated"
 * @param inUseDays whole days after opening
 */
public record PreparationDraft(
    String name,
    String form,
    String diluent,
    String usableHours,
    String fill,
    List<IngredientDraft> ingredients,
    String ceiling,
    String preservative,
    String inUse,
    String inUseDays) {

  public PreparationDraft {
    ingredients = List.copyOf(ingredients);
  }
}
