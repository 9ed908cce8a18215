package rungwise.app.fit;

import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import rungwise.dosing.fit.Doubt;
import rungwise.dosing.fit.Fit;
import rungwise.dosing.fit.Posterior;
import rungwise.dosing.predictive.Predicted;
import rungwise.files.FitDocument;
import rungwise.files.JsonObject;

/**
 * What was fitted to the courses of a file.
 *
 * @param file the path of the file
 * @param seconds how long the fit took, without reading
 * @param preparation what the preparation of strength 1 is called
 * @param leftOut how many lines are of a preparation that was not chosen
 * @param posterior where it was asked for and can be had
 * @param posteriorSeconds how long that took, the search included
 * @param predicted what earlier reports foresaw, where it was asked for and can be had
 * @param patients what the file calls the man of a course, by its number from 0
 */
public record FitAnswer(
    String file,
    Fit fit,
    double seconds,
    String preparation,
    int leftOut,
    Optional<Posterior> posterior,
    double posteriorSeconds,
    Optional<Predicted> predicted,
    IntFunction<String> patients) {

  /** What speaks against using it. */
  public List<Doubt> doubts() {
    return document().doubts();
  }

  /** The answer for a program; the same request and file give the same bytes. */
  public JsonObject json() {
    return document().json().with("lines_left_out", (double) leftOut);
  }

  private FitDocument document() {
    return new FitDocument(fit, posterior, predicted, preparation);
  }
}
