package rungwise.clinic.forecast;

import java.util.Optional;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.Patient;
import rungwise.clinic.forecast.CourseForecast.CurvePoint;
import rungwise.dosing.known.Dose;

/**
 * How the forecast of one man's dose would move if another population were asked.
 *
 * @param dose the one in force, or else what is proposed, or else what was injected last
 * @param now by the population in use; empty where there is no forecast
 * @param then by the other one; empty where it would have none
 */
public record ForecastMove(
    CourseId course, Patient man, Dose dose, Optional<CurvePoint> now, Optional<CurvePoint> then) {

  /** How far the chance of a response of 2 h or longer moves, to either side. */
  double distance() {
    return Math.abs(tooLong(then) - tooLong(now));
  }

  private static double tooLong(Optional<CurvePoint> point) {
    return point.map(one -> one.useful120().middle()).orElse(0.0);
  }
}
