package rungwise.app.dose;

import java.util.Optional;
import rungwise.clinic.dose.DoseAnswer;
import rungwise.dosing.known.Dose;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.DrawingError;
import rungwise.dosing.syringe.Marking;
import rungwise.dosing.syringe.UnitScale;
import rungwise.files.JsonObject;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.MassUnit;
import rungwise.quantities.Volume;

/** The answer for a program. */
public final class DoseJson {

  private static final Volume MILLILITRE = Volume.parse("1 mL").orThrow();

  private DoseJson() {}

  /** The answer as one object; its keys are fixed. */
  public static JsonObject of(DoseAnswer answer) {
    Dose dose = answer.dose();
    Volume volume = dose.volume();
    JsonObject object =
        JsonObject.empty()
            .with("dose", dose.toString())
            .with("volume_ml", volume.ratioTo(MILLILITRE))
            .with("mark", dose.barrel().markWords(volume));
    return withOptional(object, "mark_units", markUnits(dose))
        .with("barrel", barrel(dose.barrel()))
        .with(
            "preparation",
            JsonObject.empty()
                .with("id", dose.preparation().id().value())
                .with("composition", dose.preparation().composition())
                .withObjects(
                    "components",
                    dose.preparation().ingredients().stream()
                        .map(ingredient -> ingredient(ingredient, volume))
                        .toList()))
        .with("drawing_error", error(answer.error()))
        .with("smallest_barrel", barrel(answer.smallest()))
        .with("rounded_down", answer.exact().filter(exact -> !exact.isExactly(volume)).isPresent())
        .with(
            "exact_volume_ml",
            answer
                .exact()
                .map(exact -> exact.ratioTo(MILLILITRE))
                .orElse(volume.ratioTo(MILLILITRE)))
        .withTexts("notices", answer.notices())
        .withTexts("warnings", answer.warnings())
        .withTexts("remember", DoseAnswer.ALWAYS);
  }

  private static JsonObject withOptional(JsonObject object, String key, Optional<Double> number) {
    return number.map(found -> object.with(key, found)).orElseGet(() -> object.withNothing(key));
  }

  private static Optional<Double> markUnits(Dose dose) {
    return switch (dose.barrel().marking()) {
      case Marking.UnitLines lines -> Optional.of(dose.volume().ratioTo(UnitScale.U_100.perUnit()));
      case Marking.MillilitreLines lines -> Optional.empty();
      case Marking.NoLines none -> Optional.empty();
    };
  }

  private static JsonObject barrel(Barrel barrel) {
    JsonObject object =
        JsonObject.empty()
            .with("token", barrel.token())
            .with("name", barrel.words())
            .with("capacity_ml", barrel.capacity().ratioTo(MILLILITRE));
    return withOptional(
        object,
        "graduation_ml",
        barrel.marking().graduationVolume().map(step -> step.ratioTo(MILLILITRE)));
  }

  private static JsonObject ingredient(Ingredient ingredient, Volume volume) {
    MassUnit unit = ingredient.component().unit();
    Mass one = Mass.parse("1 " + unit.word()).orThrow();
    return JsonObject.empty()
        .with("component", ingredient.component().token())
        .with("name", ingredient.component().fullName())
        .with("unit", unit.word())
        .with("per_ml", ingredient.strength().ratioTo(Concentration.of(one, MILLILITRE)))
        .with("content", ingredient.in(volume).ratioTo(one));
  }

  private static JsonObject error(DrawingError error) {
    return JsonObject.empty()
        .with("reading_percent", error.readingPercent())
        .with("tolerance_percent", error.tolerancePercent())
        .with("total_percent", error.totalPercent())
        .with("tolerance_source", DrawingError.TOLERANCE_SOURCE.words());
  }
}
