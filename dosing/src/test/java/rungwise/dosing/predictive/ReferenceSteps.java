package rungwise.dosing.predictive;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.response.Population;
import rungwise.dosing.response.Trial;

/** The courses that reference/predictive.py has drawn and summed densely; its head tells lines. */
final class ReferenceSteps {

  private static final Path FILE = Path.of("..", "reference", "predictive.txt");
  private static final int FIRST_GAMMA = 9;

  /** One course, with what was expected before each trial. */
  record Course(
      Population population, String group, List<Trial> trials, List<List<Double>> expected) {}

  private ReferenceSteps() {}

  static List<Course> courses() {
    var courses = new ArrayList<Course>();
    var populations = new ArrayList<Population>();
    for (String line : lines()) {
      String[] words = line.split(" ", -1);
      switch (words[0]) {
        case "population" -> populations.add(population(words));
        case "course" ->
            courses.add(
                new Course(populations.getLast(), words[1], new ArrayList<>(), new ArrayList<>()));
        case "trial" -> {
          courses.getLast().trials().add(trial(words));
          courses.getLast().expected().add(numbers(words, 6, 12));
        }
        default -> {}
      }
    }
    return courses;
  }

  private static List<String> lines() {
    try {
      return Files.readAllLines(FILE, StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<Double> numbers(String[] words, int from, int to) {
    return List.of(words).subList(from, to).stream().map(Double::valueOf).toList();
  }

  private static Population population(String[] words) {
    List<Double> p = numbers(words, 1, FIRST_GAMMA);
    var gammas = new TreeMap<String, Double>();
    for (int i = FIRST_GAMMA; i + 1 < words.length; i += 2) {
      gammas.put(words[i], Double.valueOf(words[i + 1]));
    }
    return new Population(
        p.get(0), gammas, p.get(1), p.get(2), p.get(3), p.get(4), p.get(5), p.get(6), p.get(7));
  }

  private static Trial trial(String[] words) {
    double lower = Double.parseDouble(words[4]);
    Lasted lasted =
        switch (words[3]) {
          case "exact" -> new Lasted.Exactly(lower);
          case "right" -> new Lasted.AtLeast(lower);
          case "interval" -> new Lasted.Between(lower, Double.parseDouble(words[5]));
          default -> new Lasted.NotRecorded();
        };
    return new Trial(
        Double.parseDouble(words[1]), Grade.of(Integer.parseInt(words[2])).orElseThrow(), lasted);
  }
}
