package rungwise.files;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.fitting.DoubtWords;
import rungwise.clinic.fitting.FitResult;
import rungwise.dosing.draws.Covariance;
import rungwise.dosing.fit.Doubt;
import rungwise.dosing.fit.Fit;
import rungwise.dosing.fit.Posterior;
import rungwise.dosing.predictive.Predicted;

/**
 * A fit as a document, which is a population file too.
 *
 * @param posterior where it was asked for and can be had
 * @param predicted what earlier reports foresaw, likewise
 * @param preparation what the preparation of strength 1 is called
 */
public record FitDocument(
    Fit fit, Optional<Posterior> posterior, Optional<Predicted> predicted, String preparation) {

  private static final String COVARIANCE = "covariance";

  /** The document of a fit to the clinic's own courses, which says so. */
  public static JsonObject of(FitResult result) {
    return new FitDocument(
            result.fit(),
            result.posterior(),
            Optional.empty(),
            result.chosen().reference().id().value())
        .json()
        .with(
            PopulationDocuments.FITTED_HERE,
            JsonObject.empty()
                .with("courses", result.chosen().words())
                .with("seed", (double) result.seed()));
  }

  /** What speaks against using it, of all that was asked for. */
  public List<Doubt> doubts() {
    return Stream.concat(
            fit.doubts(posterior).stream(),
            predicted.stream().flatMap(checked -> checked.doubts().stream()))
        .toList();
  }

  /** One object; its keys are fixed, and doubts stand there only if there are any. */
  public JsonObject json() {
    JsonObject object =
        JsonObject.empty()
            .with("parameters", parameters(fit.parameters()))
            .with("logLik", fit.log())
            .with("patients", fit.courses())
            .with("injections", fit.trials())
            .with("reference_group", fit.reference())
            .with("groups", shares(fit.shares()))
            .with("reference_preparation", preparation)
            .with(COVARIANCE, covariance(fit.covariance()));
    List<Doubt> doubts = doubts();
    if (!doubts.isEmpty()) {
      object =
          object.withTexts(PopulationFile.DOUBTS, doubts.stream().map(DoubtWords::of).toList());
    }
    if (posterior.isPresent()) {
      object = object.with("posterior", posterior(posterior.get()));
    }
    return predicted.isPresent() ? object.with("check", CheckDocument.of(predicted.get())) : object;
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

  private static JsonObject posterior(Posterior drawn) {
    JsonObject object = JsonObject.empty();
    for (Map.Entry<String, Posterior.Known> one : drawn.parameters().entrySet()) {
      JsonObject known =
          JsonObject.empty()
              .with("mean", one.getValue().mean())
              .with("sd", one.getValue().deviation())
              .with("quantiles", quantiles(one.getValue()))
              .with("ess", one.getValue().effective());
      object =
          object.with(
              one.getKey(),
              Double.isFinite(drawn.paretoK())
                  ? known.with("pareto_k", drawn.paretoK())
                  : known.withNothing("pareto_k"));
    }
    return object.with(COVARIANCE, covariance(drawn.draws().covariance()));
  }

  private static JsonObject quantiles(Posterior.Known known) {
    JsonObject object = JsonObject.empty();
    for (int i = 0; i < known.quantiles().size(); i++) {
      object = object.with(Posterior.PARTS.get(i).toString(), known.quantiles().get(i));
    }
    return object;
  }

  private static JsonObject covariance(Covariance covariance) {
    return JsonObject.empty()
        .withTexts("names", covariance.names())
        .withRows("rows", covariance.rows());
  }
}
