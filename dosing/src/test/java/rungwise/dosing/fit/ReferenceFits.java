package rungwise.dosing.fit;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.zip.GZIPInputStream;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Given;
import rungwise.dosing.response.Lasted;
import rungwise.quantities.Volume;

/** The generated histories of the folder reference, and what other programs made of them. */
final class ReferenceFits {

  private static final Path FOLDER = Path.of("..", "reference");

  private ReferenceFits() {}

  /**
   * What was printed of a parameter.
   *
   * @param value the estimate, or the mean of the posterior
   * @param error the standard error, or the posterior's standard deviation; 0 where none is printed
   * @param errorOfMean how sure the mean of a posterior is; 0 of an estimate
   */
  record Estimate(double value, double error, double errorOfMean) {}

  /** What a program printed of a data set, by parameter. */
  record Printed(Map<String, Estimate> estimates) {
    Estimate of(String parameter) {
      return Optional.ofNullable(estimates.get(parameter)).orElseThrow();
    }
  }

  static Printed of(String program, String dataSet) {
    var found = new LinkedHashMap<String, Estimate>();
    for (String line : lines(program + ".txt")) {
      String[] words = line.split(" ", -1);
      if (words[0].equals(dataSet) && !words[1].equals("reference")) {
        found.put(words[1], new Estimate(number(words, 2), number(words, 3), number(words, 4)));
      }
    }
    return new Printed(found);
  }

  private static double number(String[] words, int place) {
    return place < words.length ? Double.parseDouble(words[place]) : 0;
  }

  /** The reference group of a data set as a program printed it. */
  static String referenceOf(String program, String dataSet) {
    return lines(program + ".txt").stream()
        .filter(line -> line.startsWith("# " + dataSet + " reference "))
        .findFirst()
        .map(line -> line.split(" ", -1)[3])
        .orElseThrow();
  }

  static List<String> lines(String name) {
    try {
      return Files.readAllLines(FOLDER.resolve(name), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The courses of a data set. */
  static Courses courses(String dataSet) {
    return courses(dataSet, group -> group);
  }

  /** The courses of a data set with other names of the groups. */
  static Courses courses(String dataSet, UnaryOperator<String> rename) {
    Path file = FOLDER.resolve("fit").resolve(dataSet + ".csv.gz");
    Courses.Builder builder = Courses.builder();
    try (var in =
        new BufferedReader(
            new InputStreamReader(
                new GZIPInputStream(Files.newInputStream(file)), StandardCharsets.UTF_8))) {
      String before = "";
      for (String line : in.lines().skip(1).toList()) {
        String[] cells = line.split(",", -1);
        if (!cells[0].equals(before)) {
          builder.course(rename.apply(cells[1]));
          before = cells[0];
        }
        add(builder, cells);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return builder.build();
  }

  private static void add(Courses.Builder builder, String[] cells) {
    var given =
        new Given(
            Volume.parse(cells[3] + " mL").orThrow(),
            Double.parseDouble(cells[4]),
            Double.parseDouble(cells[5]));
    Lasted lasted =
        switch (cells[8]) {
          case "exact" -> new Lasted.Exactly(Double.parseDouble(cells[7]));
          case "right" -> new Lasted.AtLeast(Double.parseDouble(cells[7]));
          case "interval" ->
              new Lasted.Between(Double.parseDouble(cells[7]), Double.parseDouble(cells[9]));
          default -> new Lasted.NotRecorded();
        };
    builder.trial(given.logDose(), Grade.of(Integer.parseInt(cells[6])).orElseThrow(), lasted);
  }
}
