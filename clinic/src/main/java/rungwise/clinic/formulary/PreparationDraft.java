package rungwise.clinic.formulary;

import java.util.List;
import rungwise.dosing.known.Component;

/**
 * A preparation as typed into the form, with the names of its fields as a fault gives them; those
 * of name, components and maximum are {@link rungwise.dosing.known.Preparation}'s. Fields that the
 * chosen form or rule does not ask for are ignored.
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

  public static final String FORM = "form";
  public static final String DILUENT = "diluent";
  public static final String USABLE_HOURS = "usableHours";
  public static final String FILL = "fill";
  public static final String PRESERVATIVE = "preservative";
  public static final String IN_USE = "inUse";
  public static final String IN_USE_DAYS = "inUseDays";

  public PreparationDraft {
    ingredients = List.copyOf(ingredients);
  }

  /** The field of a component's strength. */
  public static String strengthOf(Component component) {
    return "strength-" + component.token();
  }

  /** The field in which an unusual strength is typed a second time. */
  public static String againOf(Component component) {
    return "again-" + component.token();
  }

  /** The field of the most of a component in one injection. */
  public static String limitOf(Component component) {
    return "limit-" + component.token();
  }
}
