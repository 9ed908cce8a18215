package rungwise.dosing.predictive;

import java.util.List;
import java.util.Random;
import rungwise.dosing.fit.Courses;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.response.Population;

/**
 * Courses drawn from the model with a seed, each dose chosen by the response before: a step of 0.05
 * mL up after a soft one, down after a long one.
 */
final class AdaptiveWorld {

  private static final double STEP = 0.05;
  private static final double MOST = 0.5;
  private static final double FIRST = 0.1;

  private final Random random;
  private final Population population;
  private final List<String> groups;

  AdaptiveWorld(long seed, Population population) {
    random = new Random(seed);
    this.population = population;
    groups = population.gammas().keySet().stream().sorted().toList();
  }

  Courses courses(int count, int trials) {
    Courses.Builder builder = Courses.builder();
    for (int i = 0; i < count; i++) {
      add(builder, groups.get(i % groups.size()), trials);
    }
    return builder.build();
  }

  private void add(Courses.Builder builder, String group, int trials) {
    double mean = population.meanOf(group).orElseThrow();
    double requirement = mean + population.omega() * random.nextGaussian();
    double volume = FIRST;
    builder.course(group);
    for (int i = 0; i < trials; i++) {
      double dose = Math.log(volume / FIRST);
      Grade grade = grade(dose - requirement);
      double minutes = minutes(dose - requirement);
      builder.trial(dose, grade, lasted(minutes));
      if (!grade.isUseful()) {
        volume = Math.min(volume + STEP, MOST);
      } else if (minutes >= Limit.TWO_HOURS.minutes()) {
        volume = Math.max(volume - STEP, STEP);
      }
    }
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

  private double minutes(double surplus) {
    return Math.exp(
        population.d0() + population.d1() * surplus + population.tau() * random.nextGaussian());
  }

  /** The bounds of an interval leave no limit open. */
  private Lasted lasted(double minutes) {
    double from = Math.floor(minutes / 15) * 15;
    return switch (random.nextInt(4)) {
      case 0 -> new Lasted.NotRecorded();
      case 1 -> new Lasted.Between(from, from + 15);
      default -> new Lasted.Exactly(minutes);
    };
  }
}
