package rungwise.app.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.fit.Doubt;
import rungwise.dosing.fit.Fit;
import rungwise.dosing.fit.Posterior;

/**
 * What was fitted to the courses of a file.
 *
 * @param file the path of the file
 * @param seconds how long the fit took, without reading
 * @param preparation what the preparation of strength 1 is called
 * @param posterior where it was asked for and can be had
 * @param posteriorSeconds how long that took, the search included
 */
public record FitAnswer(
    String file,
    Fit fit,
    double seconds,
    String preparation,
    Optional<Posterior> posterior,
    double posteriorSeconds) {

  /** What speaks against using it. */
  List<Doubt> doubts() {
    var doubts = new ArrayList<>(fit.doubts());
    posterior.ifPresent(found -> doubts.addAll(found.doubts()));
    return doubts;
  }
}
