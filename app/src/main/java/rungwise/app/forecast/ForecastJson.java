package rungwise.app.forecast;

import rungwise.dosing.response.Delivery;
import rungwise.dosing.response.Forecast;
import rungwise.files.JsonObject;
import rungwise.quantities.Volume;

/** The answer for a program. */
public final class ForecastJson {

  private static final Volume MILLILITRE = Volume.parse("1 mL").orThrow();

  private ForecastJson() {}

  /** The answer as one object; its keys are fixed, and doubts stand there only if there are any. */
  public static JsonObject of(ForecastAnswer answer) {
    JsonObject object =
        JsonObject.empty()
            .with("notice", ForecastAnswer.NOTICE)
            .withObjects("patients", answer.patients().stream().map(ForecastJson::patient).toList())
            .with("population", answer.population())
            .with("reference_preparation", answer.preparation())
            .with("lines_left_out", (double) answer.leftOut());
    if (answer.version().isPresent()) {
      object = object.with("population_version", (double) answer.version().getAsInt());
    }
    return answer.doubts().isEmpty() ? object : object.withTexts("doubts", answer.doubts());
  }

  private static JsonObject patient(ForecastAnswer.Patient patient) {
    JsonObject named =
        patient
            .name()
            .map(name -> JsonObject.empty().with("patient", name))
            .orElseGet(() -> JsonObject.empty().withNothing("patient"));
    return named
        .with(
            "eta", JsonObject.empty().with("mean", patient.mean()).with("sd", patient.deviation()))
        .with("group", patient.group())
        .with("injections", (double) patient.injections())
        .withObjects("forecast", patient.lines().stream().map(ForecastJson::line).toList());
  }

  private static JsonObject line(ForecastAnswer.Line line) {
    return line.delivered()
        .map(delivered -> delivered(line, delivered))
        .orElseGet(() -> meant(volume(line), line));
  }

  /** The chances of the volume that is meant, with their ranges. */
  private static JsonObject meant(JsonObject object, ForecastAnswer.Line line) {
    return chances(object, line.forecast())
        .with(
            "range",
            JsonObject.empty()
                .with("low", chances(JsonObject.empty(), line.range().low()))
                .with("high", chances(JsonObject.empty(), line.range().high())))
        .with("median_minutes_if_useful", line.medianMinutes());
  }

  private static JsonObject volume(ForecastAnswer.Line line) {
    return JsonObject.empty().with("volume_ml", line.volume().ratioTo(MILLILITRE));
  }

  private static JsonObject chances(JsonObject object, Forecast forecast) {
    return object
        .with("p_useful", forecast.useful())
        .with("p_useful_ge60", forecast.useful60())
        .with("p_useful_ge120", forecast.useful120())
        .with("p_useful_ge240", forecast.useful240());
  }

  /** The chances of what is delivered, those of what is meant, and the parts of 1 between them. */
  private static JsonObject delivered(
      ForecastAnswer.Line line, ForecastAnswer.Delivered delivered) {
    Delivery budget = delivered.budget();
    return chances(volume(line), delivered.forecast())
        .with("as_meant", meant(JsonObject.empty(), line))
        .with(
            "error_budget",
            JsonObject.empty()
                .with("reading", budget.reading())
                .with("barrel", budget.barrel())
                .with("label", budget.label())
                .with("lost_at_most", budget.mostLost())
                .with("least", budget.least())
                .with("most", budget.most()));
  }
}
