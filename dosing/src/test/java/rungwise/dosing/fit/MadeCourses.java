package rungwise.dosing.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
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
  private final Population population;
  private final List<String> groups;
  private final List<Course> courses = new ArrayList<>();

  MadeCourses(long seed, Population population) {
    random = new Random(seed);
    this.population = population;
    groups = population.gammas().keySet().stream().sorted().toList();
  }

  /** Adds a course of any group. */
  void add(int trials) {
    String group = groups.get(random.nextInt(groups.size()));
    double requirement =
        population.meanOf(group).orElseThrow() + population.omega() * random.nextGaussian();
    var own = new ArrayList<Trial>();
    for (int i = 0; i < trials; i++) {
      double dose = Math.log(HALF_MARK * (1 + random.nextInt(MARKS)));
      own.add(new Trial(dose, grade(dose - requirement), lasted(dose - requirement)));
    }
    courses.add(new Course(group, own));
  }

  private Grade grade(double surplus) {
    double uniform = random.nextDouble();
    double latent = population.beta() * surplus + Math.log(uniform / (1 - uniform));
    int number = 1;
    for (double threshold : List.of(population.c2(), 0.0, population.c4())) {
      number += latent > threshold ? 1 : 0;
    }
    return Grade.of(number).orElseThrow();
  }

  private Lasted lasted(double surplus) {
    double minutes =
        Math.exp(
            population.d0() + population.d1() * surplus + population.tau() * random.nextGaussian());
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
