package rungwise.dosing.fit;

import java.util.List;

/** What reference/fit_spread.py printed of the courses n60. */
final class ReferenceSpread {

  private ReferenceSpread() {}

  /** A covariance, with its own error; 0 where none is printed. */
  record Together(String one, String other, double value, double error) {}

  /** A quantile of the posterior, with its error. */
  record Quantile(String name, double part, double value, double error) {}

  private static List<String[]> lines(String kind) {
    return ReferenceFits.lines("fit_spread.txt").stream()
        .map(line -> line.split(" ", -1))
        .filter(words -> words[1].equals(kind))
        .toList();
  }

  /** Those of the maximum or of the posterior. */
  static List<Together> together(String kind) {
    return lines(kind).stream()
        .map(
            words ->
                new Together(
                    words[2],
                    words[3],
                    Double.parseDouble(words[4]),
                    words.length > 5 ? Double.parseDouble(words[5]) : 0))
        .toList();
  }

  static List<Quantile> quantiles() {
    return lines("quantile").stream()
        .map(
            words ->
                new Quantile(
                    words[2],
                    Double.parseDouble(words[3]),
                    Double.parseDouble(words[4]),
                    Double.parseDouble(words[5])))
        .toList();
  }
}
