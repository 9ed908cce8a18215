package rungwise.web.formulary;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rungwise.clinic.formulary.ClinicPreparation;
import rungwise.clinic.formulary.InUseRule;
import rungwise.clinic.formulary.IngredientDraft;
import rungwise.clinic.formulary.PreparationDraft;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Form;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;

/**
 * The preparation form as typed; an absent field is empty. Strengths and limits are in the order of
 * {@link Component}.
 */
public record PreparationForm(
    @Nullable String name,
    @Nullable String form,
    @Nullable String diluent,
    @Nullable String usableHours,
    @Nullable String fill,
    @Nullable List<String> strength,
    @Nullable List<String> limit,
    @Nullable String ceiling,
    @Nullable String preservative,
    @Nullable String inUse,
    @Nullable String inUseDays,
    @Nullable String confirmed) {

  private static final String NONE = "";
  private static final long MILLISECONDS_IN_AN_HOUR = 3_600_000;

  static final PreparationForm EMPTY =
      new PreparationForm(
          NONE,
          "solution",
          NONE,
          NONE,
          NONE,
          List.of(),
          List.of(),
          NONE,
          NONE,
          "not_stated",
          NONE,
          NONE);

  /** What was typed into a field. */
  static String said(@Nullable String text) {
    return Optional.ofNullable(text).orElse(NONE);
  }

  boolean isConfirmed() {
    return !said(confirmed).isEmpty();
  }

  String strengthOf(Component component) {
    return at(strength, component);
  }

  String limitOf(Component component) {
    return at(limit, component);
  }

  private static String at(@Nullable List<String> values, Component component) {
    int row = List.of(Component.values()).indexOf(component);
    return values == null || values.size() <= row ? NONE : said(values.get(row));
  }

  PreparationDraft draft() {
    var rows = new ArrayList<IngredientDraft>();
    for (Component component : Component.values()) {
      if (!strengthOf(component).isBlank() || !limitOf(component).isBlank()) {
        rows.add(new IngredientDraft(component.token(), strengthOf(component), limitOf(component)));
      }
    }
    return new PreparationDraft(
        said(name),
        said(form),
        said(diluent),
        said(usableHours),
        said(fill),
        rows,
        said(ceiling),
        said(preservative),
        said(inUse),
        said(inUseDays));
  }

  /** A version that is to be changed. */
  static PreparationForm of(ClinicPreparation kept) {
    Preparation one = kept.preparation();
    var strengths = new ArrayList<String>();
    var limits = new ArrayList<String>();
    for (Component component : Component.values()) {
      Optional<Ingredient> ingredient = one.ingredient(component);
      strengths.add(
          ingredient.map(found -> found.strength().numberIn(component.unit())).orElse(NONE));
      limits.add(
          ingredient
              .flatMap(Ingredient::limit)
              .map(most -> most.in(component.unit()).replace(" " + component.unit().word(), NONE))
              .orElse(NONE));
    }
    return new PreparationForm(
        one.name(),
        formToken(one.form()),
        one.form() instanceof Form.Powder powder ? powder.diluent().millilitresText() : NONE,
        one.form() instanceof Form.Powder powder
            ? Long.toString(powder.usableFor().milliseconds() / MILLISECONDS_IN_AN_HOUR)
            : NONE,
        fill(one.form()),
        strengths,
        limits,
        one.ceiling().millilitresText(),
        one.preservative().orElse(NONE),
        inUseToken(kept.inUse()),
        kept.inUse() instanceof InUseRule.DaysAfterOpening rule
            ? Integer.toString(rule.days())
            : NONE,
        NONE);
  }

  private static String formToken(Form form) {
    return switch (form) {
      case Form.Solution solution -> "solution";
      case Form.Powder powder -> "powder";
      case Form.Prefilled prefilled -> "prefilled";
      case Form.Cartridge cartridge -> "cartridge";
    };
  }

  private static String fill(Form form) {
    return switch (form) {
      case Form.Prefilled prefilled -> prefilled.fill().millilitresText();
      case Form.Cartridge cartridge -> cartridge.fill().millilitresText();
      case Form.Solution solution -> NONE;
      case Form.Powder powder -> NONE;
    };
  }

  private static String inUseToken(InUseRule rule) {
    return switch (rule) {
      case InUseRule.SingleUse once -> "single_use";
      case InUseRule.DaysAfterOpening days -> "days";
      case InUseRule.NotStated unknown -> "not_stated";
    };
  }
}
