package rungwise.web.titration;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.forecast.Chance;
import rungwise.clinic.forecast.CourseForecast;
import rungwise.clinic.forecast.CourseForecast.Asked;
import rungwise.clinic.forecast.ForecastLine;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.sheet.CourseView.InjectionLine;
import rungwise.clinic.sheet.CourseView.StepLine;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.DurationLimits;
import rungwise.drawing.chance.Band;
import rungwise.drawing.chance.ChanceCurves;
import rungwise.drawing.chance.ChanceCurvesDrawing;
import rungwise.quantities.Volume;
import rungwise.web.titration.CourseDrawings.Drawn;

/**
 * What a page says of a forecast.
 *
 * @param silence why there is none; empty if there is one
 * @param rests the population and what it rests on, for wherever a number stands
 * @param curve the chances over the volume, with the words that say the same
 */
public record ForecastPart(
    String silence, String rests, Optional<Asked> asked, Optional<Drawn> curve) {

  static ForecastPart of(CourseForecast forecast, CourseView view) {
    return switch (forecast) {
      case CourseForecast.None(String because) ->
          new ForecastPart(because, "", Optional.empty(), Optional.empty());
      case Asked asked -> {
        ChanceCurves curves = curves(asked, view);
        yield new ForecastPart(
            "",
            rests(asked),
            Optional.of(asked),
            Optional.of(
                new Drawn(ChanceCurvesDrawing.svg(curves), ChanceCurvesDrawing.words(curves))));
      }
    };
  }

  static String rests(Asked asked) {
    return "Population " + asked.population() + ". " + asked.origin().caveat();
  }

  private static ChanceCurves curves(Asked asked, CourseView view) {
    return new ChanceCurves(
        asked.curve().stream()
            .map(
                one ->
                    new ChanceCurves.Point(one.volume(), band(one.useful()), band(one.useful120())))
            .toList(),
        view.steps().stream().map(step -> step.dose().volume()).toList(),
        view.signed().map(signed -> signed.dose().volume()),
        view.proposed().map(dose -> dose.volume()),
        view.ceiling(),
        closedFrom(view),
        past(view),
        words(asked),
        rests(asked));
  }

  private static List<String> words(Asked asked) {
    var words = new ArrayList<>(asked.warnings());
    Stream.concat(asked.forbidden().stream(), Stream.of(asked.limits()))
        .filter(one -> !one.isEmpty())
        .forEach(words::add);
    asked.lines().stream().map(ForecastLine::words).forEach(words::add);
    return words;
  }

  /** A chance for a drawing; sums may lie a rounding error outside. */
  static Band band(Chance chance) {
    double low = Math.clamp(chance.low(), 0, 1);
    return new Band(
        low, Math.clamp(chance.middle(), 0, 1), Math.max(low, Math.clamp(chance.high(), 0, 1)));
  }

  private static Optional<Volume> closedFrom(CourseView view) {
    return view.steps().stream()
        .filter(
            step -> step.verdicts().stream().anyMatch(one -> one.rule() == GuardRule.VOLUME_CLOSED))
        .findFirst()
        .map(StepLine::dose)
        .map(dose -> dose.volume());
  }

  private static List<ChanceCurves.Past> past(CourseView view) {
    return view.injections().stream()
        .filter(InjectionLine::isOfThisPreparation)
        .map(InjectionLine::report)
        .map(
            report ->
                new ChanceCurves.Past(
                    report.drawn(), report.grade().isUseful(), isTooLong(report.soft())))
        .toList();
  }

  private static boolean isTooLong(SoftAfter soft) {
    return soft.mayReach(DurationLimits.CLOSES_VOLUME.value());
  }
}
