package rungwise.clinic.forecast;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.forecast.CourseForecast.CurvePoint;
import rungwise.clinic.populations.Populations;
import rungwise.clinic.populations.SignedPopulation;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.history.Question;
import rungwise.dosing.known.Dose;
import rungwise.dosing.response.ResponseModel;
import rungwise.quantities.Volume;

/** How the forecasts of courses would move if another population were signed. */
public final class ForecastMoves {

  private final Populations populations;

  public ForecastMoves(Populations populations) {
    this.populations = populations;
  }

  /**
   * The courses whose forecast would move, the one that would move farthest first. A course of
   * which neither population says anything is left out.
   */
  public List<ForecastMove> of(List<CourseState> states, ResponseModel other) {
    return states.stream()
        .map(state -> move(state, other))
        .filter(move -> move.now().isPresent() || move.then().isPresent())
        .sorted(Comparator.comparingDouble(ForecastMove::distance).reversed())
        .toList();
  }

  private ForecastMove move(CourseState state, ResponseModel other) {
    Question question = state.question();
    Volume volume = CourseForecasts.current(state);
    return new ForecastMove(
        state.file().id(),
        state.file().patient(),
        new Dose(volume, question.preparation(), question.ladder().barrel()),
        populations
            .inUseFor(question.preparation().id())
            .map(SignedPopulation::model)
            .flatMap(model -> point(model, question, volume)),
        point(other, question, volume));
  }

  private static Optional<CurvePoint> point(ResponseModel model, Question question, Volume volume) {
    return model
        .prospect(
            question.group(),
            question.preparation(),
            question.history(),
            question.history().injections())
        .map(prospect -> CourseForecasts.point(prospect, volume));
  }
}
