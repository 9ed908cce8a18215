package rungwise.dosing.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.response.Population;
import rungwise.dosing.response.Trial;

/** Courses drawn from the model with a seed, with durations of every kind. */
final class MadeCourses {

  private static final int KINDS = 5;
  private static final double HALF_MARK = 0.5;
  private static final int MARKS = 10;

  /** One course. */
  record Course(String group, List<Trial> trials) {}

  private final Random random;
  private final Point point;
  private final Map<String, Double> means;
  private final List<String> groups;
  private final List<Course> courses = new ArrayList<>();

  MadeCourses(long seed, Population population) {
    this(seed, pointOf(population), meansOf(population));
  }

  /** With parameters that need not be those of a population. */
  MadeCourses(long seed, Point point, Map<String, Double> means) {
    random = new Random(seed);
    this.point = point;
    this.means = new TreeMap<>(means);
    groups = List.copyOf(this.means.keySet());
  }

  private static Map<String, Double> meansOf(Population population) {
    var means = new TreeMap<String, Double>();
    population.gammas().forEach((group, gamma) -> means.put(group, population.mu() + gamma));
    return means;
  }

  private static Point pointOf(Population population) {
    return new Point(
        new double[0],
        population.omega(),
        population.beta(),
        population.c2(),
        population.c4(),
        population.d0(),
        population.d1(),
        population.tau());
  }

  /** Adds a course of any group. */
  void add(int trials) {
    addOf(groups.get(random.nextInt(groups.size())), trials);
  }

  void addOf(String group, int trials) {
    double mean = Optional.ofNullable(means.get(group)).orElseThrow();
    double requirement = mean + point.omega() * random.nextGaussian();
    var own = new ArrayList<Trial>();
    for (int i = 0; i < trials; i++) {
      double dose = Math.log(HALF_MARK * (1 + random.nextInt(MARKS)));
      own.add(new Trial(dose, grade(dose - requirement), lasted(dose - requirement)));
    }
    courses.add(new Course(group, own));
  }

  private Grade grade(double surplus) {
    double uniform = random.nextDouble();
    double latent = point.beta() * surplus + Math.log(uniform / (1 - uniform));
    int number = 1;
    for (double threshold : List.of(point.c2(), 0.0, point.c4())) {
      number += latent > threshold ? 1 : 0;
    }
    return Grade.of(number).orElseThrow();
  }

  private Lasted lasted(double surplus) {
    double minutes =
        Math.exp(point.d0() + point.d1() * surplus + point.tau() * random.nextGaussian());
    double seen = 10 * (1 + random.nextInt(15));
    double from = Math.floor(minutes / 15) * 15;
    return switch (random.nextInt(KINDS)) {
      case 0 -> new Lasted.NotRecorded();
      case 1 -> minutes > seen ? new Lasted.AtLeast(seen) : new Lasted.Exactly(minutes);
      case 2 -> new Lasted.Between(from, from + 15);
      default -> new Lasted.Exactly(minutes);
    };
  }

  List<Course> all() {
    return List.copyOf(courses);
  }

  Courses courses() {
    return of(courses);
  }

  static Courses of(List<Course> courses) {
    Courses.Builder builder = Courses.builder();
    for (Course course : courses) {
      builder.course(course.group());
      course.trials().forEach(one -> builder.trial(one.logDose(), one.grade(), one.lasted()));
    }
    return builder.build();
  }
}
