package rungwise.app.fit;

import java.util.Map;
import rungwise.dosing.fit.Fit;
import rungwise.dosing.fit.Posterior;
import rungwise.files.JsonObject;

/** The answer for a program, which is a population file too. */
public final class FitJson {

  private FitJson() {}

  /** The answer as one object; its keys are fixed, and doubts stand there only if there are any. */
  public static JsonObject of(FitAnswer answer) {
    Fit fit = answer.fit();
    JsonObject object =
        JsonObject.empty()
            .with("parameters", parameters(fit.parameters()))
            .with("logLik", fit.log())
            .with("patients", fit.courses())
            .with("injections", fit.trials())
            .with("seconds", answer.seconds())
            .with("reference_group", fit.reference())
            .with("groups", shares(fit.shares()))
            .with("reference_preparation", answer.preparation());
    if (!answer.doubts().isEmpty()) {
      object = object.withTexts("doubts", answer.doubts().stream().map(DoubtText::of).toList());
    }
    return answer.posterior().isPresent()
        ? object.with("posterior", posterior(answer.posterior().get(), answer.posteriorSeconds()))
        : object;
  }

  private static JsonObject parameters(Map<String, Fit.Estimate> estimates) {
    JsonObject object = JsonObject.empty();
    for (Map.Entry<String, Fit.Estimate> one : estimates.entrySet()) {
      JsonObject estimate = JsonObject.empty().with("estimate", one.getValue().value());
      object =
          object.with(
              one.getKey(),
              one.getValue().error().isPresent()
                  ? estimate.with("se", one.getValue().error().getAsDouble())
                  : estimate.withNothing("se"));
    }
    return object;
  }

  private static JsonObject shares(Map<String, Double> shares) {
    JsonObject object = JsonObject.empty();
    for (Map.Entry<String, Double> one : shares.entrySet()) {
      object = object.with(one.getKey(), one.getValue());
    }
    return object;
  }

  private static JsonObject posterior(Posterior posterior, double seconds) {
    JsonObject object = JsonObject.empty();
    for (Map.Entry<String, Posterior.Known> one : posterior.parameters().entrySet()) {
      JsonObject known =
          JsonObject.empty()
              .with("mean", one.getValue().mean())
              .with("sd", one.getValue().deviation())
              .with("ess", one.getValue().effective());
      object =
          object.with(
              one.getKey(),
              Double.isFinite(posterior.paretoK())
                  ? known.with("pareto_k", posterior.paretoK())
                  : known.withNothing("pareto_k"));
    }
    return object
        .with("seconds", seconds)
        .with("min_ess_per_s", posterior.leastEffective() / seconds);
  }
}
