package rungwise.clinic.forecast;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.populations.Origin;
import rungwise.quantities.Volume;

/** What the volumes of a course may do, or why nobody says. */
public sealed interface CourseForecast {

  /**
   * There is none.
   *
   * @param because in a sentence
   */
  record None(String because) implements CourseForecast {}

  /**
   * By a signed population.
   *
   * @param population its name and version
   * @param warnings what a reader must know of it for this man
   * @param forbidden why no dose may be given at all, if so
   * @param limits what the protocol allows, in words; may be empty
   * @param lines one step below, the step itself and one above
   * @param curve over volumes from small to the maximum
   */
  record Asked(
      String population,
      Origin origin,
      List<String> warnings,
      Optional<String> forbidden,
      String limits,
      List<ForecastLine> lines,
      List<CurvePoint> curve)
      implements CourseForecast {
    public Asked {
      warnings = List.copyOf(warnings);
      lines = List.copyOf(lines);
      curve = List.copyOf(curve);
    }
  }

  /** One volume of a curve. */
  record CurvePoint(Volume volume, Chance useful, Chance useful120) {}

  /**
   * What was known of one volume after a report.
   *
   * @param label a day, or "before"
   * @param report what was reported; empty before the first
   */
  record Moved(String label, String report, Chance useful, Chance useful120) {}

  /**
   * Everything that can be said of a course.
   *
   * @param all every volume that can be drawn, up to the maximum
   * @param volume the one whose chances moved
   * @param moves from before the first report that is shown, oldest first
   * @param notShown how many earlier reports are not shown
   * @param rests what the chances of that volume rest on, most first; empty if nothing was assumed
   */
  record Whole(
      Asked asked,
      List<ForecastLine> all,
      Volume volume,
      List<Moved> moves,
      int notShown,
      List<RestsOn> rests) {
    public Whole {
      rests = List.copyOf(rests);
      all = List.copyOf(all);
      moves = List.copyOf(moves);
    }
  }
}
