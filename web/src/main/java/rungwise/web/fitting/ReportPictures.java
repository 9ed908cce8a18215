package rungwise.web.fitting;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import rungwise.clinic.fitting.MissWords;
import rungwise.clinic.fitting.RareWords;
import rungwise.dosing.predictive.Predicted;
import rungwise.dosing.predictive.Predicted.Count;
import rungwise.dosing.predictive.Predicted.OfVolume;
import rungwise.dosing.predictive.Predicted.Range;
import rungwise.drawing.chance.Band;
import rungwise.drawing.chance.Shares;
import rungwise.drawing.chance.SharesDrawing;

/**
 * What the fit foresaw of each report from the ones before it, beside what was reported, drawn.
 *
 * @param courses how many courses were looked at
 * @param outside how many ranges miss what was reported, in words
 * @param useful usable responses by volume
 * @param durations how long usable responses lasted; empty where no duration is known
 * @param grades every grade by volume
 */
public record ReportPictures(
    int courses,
    int injections,
    String outside,
    Picture useful,
    Optional<Picture> durations,
    List<Picture> grades) {

  private static final int GRADES = 4;
  private static final int HOUR = 60;

  private static final String CAVEAT =
      "Each report beside what the fit foresaw of it from the same man's earlier reports.";

  /**
   * One drawing.
   *
   * @param svg one svg element
   * @param words what it says
   */
  public record Picture(String svg, List<String> words) {
    public Picture {
      words = List.copyOf(words);
    }

    static Picture of(Shares shares) {
      return new Picture(SharesDrawing.svg(shares), SharesDrawing.words(shares));
    }
  }

  public ReportPictures {
    grades = List.copyOf(grades);
  }

  /** The drawings; empty where nothing was injected. */
  static Optional<ReportPictures> of(Predicted predicted) {
    return predicted.volumes().isEmpty() ? Optional.empty() : Optional.of(drawn(predicted));
  }

  private static ReportPictures drawn(Predicted predicted) {
    Shares useful = byVolume(predicted, "usable responses", OfVolume::useful);
    return new ReportPictures(
        predicted.courses(),
        predicted.injections(),
        MissWords.of(predicted.misses()) + " " + RareWords.of(predicted.surprise()),
        Picture.of(useful),
        predicted.durations().isEmpty()
            ? Optional.empty()
            : Optional.of(Picture.of(byDuration(predicted))),
        IntStream.range(0, GRADES)
            .mapToObj(
                grade ->
                    byVolume(
                        predicted,
                        "responses of grade " + (grade + 1),
                        one -> one.grades().get(grade)))
            .map(Picture::of)
            .toList());
  }

  private static Shares byVolume(
      Predicted predicted, String heading, Function<OfVolume, Count> of) {
    List<Shares.Column> columns =
        predicted.volumes().stream()
            .map(
                one -> {
                  String volumes = volumes(one);
                  Count count = of.apply(one);
                  return column(
                      one.upTo().toString(),
                      new Case(volumes + ": " + heading, one.injections(), count.expected()),
                      count.reported(),
                      count.reported());
                })
            .toList();
    return shares(capital(heading) + ", by volume up to", columns);
  }

  private static String capital(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  private static String volumes(OfVolume one) {
    return "above " + one.above() + " up to " + one.upTo();
  }

  private static Shares byDuration(Predicted predicted) {
    List<Shares.Column> columns =
        predicted.durations().stream()
            .map(
                one ->
                    column(
                        one.minutes() / HOUR + " h",
                        new Case(
                            "usable responses of " + one.minutes() / HOUR + " h or longer",
                            one.responses(),
                            one.expected()),
                        one.reportedSurely(),
                        one.reportedPossibly()))
            .toList();
    return shares("Usable responses this long or longer", columns);
  }

  /**
   * What one column is about.
   *
   * @param of how many reports
   */
  private record Case(String words, int of, Range expected) {}

  private static Shares.Column column(String label, Case about, int least, int most) {
    double of = about.of();
    double low = share(about.expected().low() / of);
    double high = Math.max(low, share(about.expected().high() / of));
    return new Shares.Column(
        label,
        least / of,
        most / of,
        new Band(low, share(about.expected().middle() / of), high),
        about.words()
            + ", reported "
            + (least == most ? least : least + " to " + most)
            + " of "
            + about.of()
            + ", foreseen "
            + ParameterLine.decimal(about.expected().low(), 0)
            + " to "
            + ParameterLine.decimal(about.expected().high(), 0)
            + ".");
  }

  private static double share(double value) {
    return Math.clamp(value, 0, 1);
  }

  private static Shares shares(String heading, List<Shares.Column> columns) {
    return new Shares(
        heading, columns, columns.stream().map(Shares.Column::words).toList(), CAVEAT);
  }
}
