package rungwise.clinic.formulary;

/**
 * One row of the form, as typed. A row without component, strength and limit is no row.
 *
 * @param component the token of the component, such as "papaverine"
 * @param strength a number per mL in the component's unit: mcg for alprostadil, else mg
 * @param again the strength typed a second time, which only one far outside the usual ones needs
 * @param limit the largest mass in one injection, in the same unit; blank if there is none
 */
public record IngredientDraft(String component, String strength, String again, String limit) {

  /** A row whose strength was typed once. */
  public IngredientDraft(String component, String strength, String limit) {
    this(component, strength, "", limit);
  }

  boolean isBlank() {
    return component.isBlank() && strength.isBlank() && again.isBlank() && limit.isBlank();
  }
}
