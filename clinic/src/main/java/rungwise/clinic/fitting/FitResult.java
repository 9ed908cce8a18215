package rungwise.clinic.fitting;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.populations.PopulationSheet;
import rungwise.dosing.fit.Doubt;
import rungwise.dosing.fit.Fit;
import rungwise.dosing.fit.Posterior;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.predictive.Predicted;
import rungwise.dosing.response.ResponseModel;

/**
 * A fit that has come to its end.
 *
 * @param posterior empty where no duration is known
 * @param predicted what earlier reports predict of later ones; empty where there is no posterior
 * @param seed of everything that was drawn: the same courses and seed give the same result
 */
public record FitResult(
    ChosenCourses chosen,
    Fit fit,
    Optional<Posterior> posterior,
    Optional<Predicted> predicted,
    long seed) {

  /** What it is called before anybody has signed it. */
  private static final String NOT_SIGNED = "the fit";

  /** Everything that speaks against signing it. */
  public List<Doubt> doubts() {
    return Stream.concat(
            fit.doubts(posterior).stream(),
            predicted.stream().flatMap(checked -> checked.doubts().stream()))
        .toList();
  }

  /** The groups of which it says nothing; none where no duration is known. */
  public List<AetiologyGroup> groupsWithout() {
    return fit.population().map(PopulationSheet::groupsWithout).orElse(List.of());
  }

  /** Whether it is offered for signing. */
  public boolean isOffered() {
    return doubts().isEmpty() && fit.population().isPresent();
  }

  /** The same as forecasts ask it; empty where no duration is known. */
  public Optional<ResponseModel> model() {
    return fit.population()
        .map(population -> new ResponseModel(NOT_SIGNED, population, chosen.reference()));
  }
}
