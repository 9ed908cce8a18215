package rungwise.app.fit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntFunction;
import rungwise.clinic.fitting.MissWords;
import rungwise.clinic.fitting.RareWords;
import rungwise.dosing.predictive.Predicted;
import rungwise.dosing.predictive.Predicted.Count;
import rungwise.dosing.predictive.Predicted.OfDuration;
import rungwise.dosing.predictive.Predicted.OfVolume;
import rungwise.dosing.predictive.Predicted.Range;

/** What was reported beside what was foreseen, for a reader: how many ranges miss, and which. */
final class CheckText {

  private static final int PLACES = 1;

  private CheckText() {}

  /**
   * The lines; of the ranges only those that miss, of the men those whom the model fits worst.
   *
   * @param patients what the man of a course is called, by its number from 0
   */
  static List<String> of(Predicted predicted, IntFunction<String> patients) {
    var lines = new ArrayList<String>();
    lines.add("");
    lines.add(
        "Each report beside what the same man's earlier ones foresee, of "
            + predicted.courses()
            + " patients with "
            + predicted.injections()
            + " injections: "
            + MissWords.of(predicted.misses()));
    var missed = new ArrayList<String>();
    predicted.volumes().forEach(one -> missed.addAll(of(one)));
    predicted.durations().stream()
        .filter(one -> !one.isWithin())
        .map(CheckText::of)
        .forEach(missed::add);
    if (!missed.isEmpty()) {
      lines.add(row("outside of its range", "reported", "foreseen in 9 of 10"));
      lines.addAll(missed);
    }
    lines.add(RareWords.of(predicted.surprise()));
    if (!predicted.surprise().worst().isEmpty()) {
      lines.add(row("fits worst", "rare reports", "all his reports together"));
      predicted.surprise().worst().stream()
          .map(man -> of(man, patients.apply(man.course())))
          .forEach(lines::add);
    }
    return lines;
  }

  private static String of(Predicted.Man man, String patient) {
    return row("patient " + patient, Integer.toString(man.rare()), RareWords.of(man));
  }

  private static List<String> of(OfVolume volume) {
    String where = " above " + volume.above() + ", up to " + volume.upTo();
    var lines = new ArrayList<String>();
    for (int grade = 1; grade <= volume.grades().size(); grade++) {
      add(lines, "grade " + grade + where, volume.grades().get(grade - 1));
    }
    add(lines, "grades 3 and 4" + where, volume.useful());
    return lines;
  }

  private static void add(List<String> lines, String what, Count count) {
    if (!count.isWithin()) {
      lines.add(row(what, Integer.toString(count.reported()), words(count.expected())));
    }
  }

  private static String of(OfDuration duration) {
    String reported =
        duration.reportedSurely() == duration.reportedPossibly()
            ? Integer.toString(duration.reportedSurely())
            : duration.reportedSurely() + " to " + duration.reportedPossibly();
    return row(
        "useful and " + duration.minutes() + " min or longer",
        reported,
        words(duration.expected()));
  }

  private static String words(Range range) {
    return decimal(range.low()) + " to " + decimal(range.high());
  }

  private static String decimal(double number) {
    return BigDecimal.valueOf(number)
        .setScale(PLACES, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }

  private static String row(String what, String reported, String foreseen) {
    return String.format(Locale.ROOT, "  %-44s %14s %24s", what, reported, foreseen)
        .stripTrailing();
  }
}
