package rungwise.dosing.response;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rungwise.dosing.history.Grade;

/** The cases that reference/forecasts.py has summed densely; its head tells the lines. */
final class GoldenCases {

  static final String GROUP = "all";

  private static final Path FILE = Path.of("..", "reference", "forecasts.txt");

  /** A line of numbers: what they are, and they. */
  record Line(String word, List<Double> numbers) {
    double number(int index) {
      return numbers.get(index);
    }
  }

  /**
   * One case.
   *
   * @param strength of the second preparation, where there is one
   */
  record Case(
      Population population,
      List<Trial> trials,
      Optional<UncertainStrength> strength,
      List<Trial> onSecond,
      List<Line> expected) {

    Requirement requirement() {
      return strength
          .map(
              uncertain ->
                  Requirement.of(
                      population,
                      GROUP,
                      trials,
                      List.of(),
                      new OtherPreparation(uncertain, onSecond)))
          .orElseGet(() -> Requirement.of(population, GROUP, trials));
    }

    List<Line> expected(String word) {
      return expected.stream().filter(line -> line.word().equals(word)).toList();
    }
  }

  private GoldenCases() {}

  static List<Case> all() {
    try {
      var cases = new ArrayList<Case>();
      var lines = new ArrayList<String>();
      for (String line : Files.readAllLines(FILE, StandardCharsets.UTF_8)) {
        if (line.startsWith("population") && !lines.isEmpty()) {
          cases.add(caseOf(lines));
          lines.clear();
        }
        if (!line.startsWith("#")) {
          lines.add(line);
        }
      }
      cases.add(caseOf(lines));
      return cases;
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }

  private static Case caseOf(List<String> lines) {
    double[] p = numbers(lines.getFirst());
    var population =
        new Population(p[0], Map.of(GROUP, 0.0), p[1], p[2], p[3], p[4], p[5], p[6], p[7]);
    var trials = new ArrayList<Trial>();
    var onSecond = new ArrayList<Trial>();
    var expected = new ArrayList<Line>();
    Optional<UncertainStrength> strength = Optional.empty();
    for (String line : lines.subList(1, lines.size())) {
      String word = line.substring(0, line.indexOf(' '));
      if (word.equals("trial")) {
        (strength.isPresent() ? onSecond : trials).add(trial(line.split(" ", -1)));
      } else if (word.equals("strength")) {
        double[] s = numbers(line);
        strength = Optional.of(new UncertainStrength(s[0], s[1]));
      } else {
        expected.add(new Line(word, Arrays.stream(numbers(line)).boxed().toList()));
      }
    }
    return new Case(population, trials, strength, onSecond, expected);
  }

  private static double[] numbers(String line) {
    return Arrays.stream(line.split(" ", -1)).skip(1).mapToDouble(Double::parseDouble).toArray();
  }

  private static Trial trial(String[] parts) {
    double lower = Double.parseDouble(parts[4]);
    Lasted lasted =
        switch (parts[3]) {
          case "exact" -> new Lasted.Exactly(lower);
          case "right" -> new Lasted.AtLeast(lower);
          case "interval" -> new Lasted.Between(lower, Double.parseDouble(parts[5]));
          default -> new Lasted.NotRecorded();
        };
    return new Trial(
        Double.parseDouble(parts[1]),
        Grade.of((int) Double.parseDouble(parts[2])).orElseThrow(),
        lasted);
  }
}
