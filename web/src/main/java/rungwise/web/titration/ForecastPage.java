package rungwise.web.titration;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.forecast.CourseForecast.Moved;
import rungwise.clinic.forecast.CourseForecast.Whole;
import rungwise.clinic.sheet.CourseView;
import rungwise.drawing.chance.ChanceMoves;
import rungwise.drawing.chance.ChanceMovesDrawing;
import rungwise.web.titration.CourseDrawings.Drawn;

/**
 * Everything that the response model says of a course.
 *
 * @param part what the course page says too
 * @param whole every volume and every report; empty where there is no forecast
 * @param moves how it moved after each report
 */
public record ForecastPage(
    CourseView view, String path, ForecastPart part, Optional<Whole> whole, Optional<Drawn> moves) {

  static ForecastPage of(CourseView view, ForecastPart part, Optional<Whole> whole) {
    return new ForecastPage(
        view,
        "/courses/" + view.id(),
        part,
        whole,
        whole
            .filter(one -> !one.moves().isEmpty())
            .map(
                one ->
                    new ChanceMoves(
                        one.volume(),
                        one.moves().stream().map(ForecastPage::move).toList(),
                        part.rests()))
            .map(
                moves ->
                    new Drawn(ChanceMovesDrawing.svg(moves), ChanceMovesDrawing.words(moves))));
  }

  private static ChanceMoves.Move move(Moved moved) {
    return new ChanceMoves.Move(
        moved.label(),
        ForecastPart.band(moved.useful()),
        ForecastPart.band(moved.useful120()),
        words(moved));
  }

  private static String words(Moved moved) {
    String said = moved.report().isEmpty() ? "" : " (" + moved.report() + ")";
    return String.join(
        "",
        List.of(
            moved.label(),
            said,
            ": usable response ",
            moved.useful().words(),
            " (",
            moved.useful().rangeWords(),
            "), 2 h or longer ",
            moved.useful120().words(),
            " (",
            moved.useful120().rangeWords(),
            ")."));
  }
}
