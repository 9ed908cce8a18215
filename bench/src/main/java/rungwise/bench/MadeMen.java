package rungwise.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import rungwise.dosing.fit.Courses;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.response.Population;
import rungwise.dosing.response.Trial;

/**
 * Men drawn from the response model with a seed, each dose chosen by the response before as the
 * plain stepwise rule does: a step up after a soft one, down after one of 2 hours. Everything in it
 * is invented.
 */
final class MadeMen {

  static final Population TRUTH =
      new Population(
          0.75,
          Map.of("vasculogenic", 0.0, "spinal_cord", -0.7, "psychogenic", -0.4, "mixed", 0.1),
          0.8,
          2.2,
          -1.6,
          1.9,
          Math.log(45),
          0.55,
          0.5);

  private static final List<String> GROUPS =
      List.of("vasculogenic", "spinal_cord", "psychogenic", "mixed");
  private static final double REFERENCE_ML = 0.1;
  private static final double LONG_MINUTES = 120;
  private static final int KINDS = 8;
  private static final int EDGE = 15;

  private final Random random;
  private final Population truth;

  /** Of the volumes above: 1 for steps of 0.05 mL up to 0.5 mL, 0.2 for a fifth of them. */
  private final double scale;

  MadeMen(long seed, Population truth, double scale) {
    random = new Random(seed);
    this.truth = truth;
    this.scale = scale;
  }

  /** One man: his group, and the injections in their order. */
  record Man(String group, List<Trial> trials) {}

  List<Man> men(int count, int injections) {
    var men = new ArrayList<Man>();
    for (int i = 0; i < count; i++) {
      men.add(man(GROUPS.get(i % GROUPS.size()), injections));
    }
    return men;
  }

  private Man man(String group, int injections) {
    double mean = truth.meanOf(group).orElseThrow() + Math.log(scale);
    double requirement = mean + truth.omega() * random.nextGaussian();
    int step = 2;
    var trials = new ArrayList<Trial>();
    for (int i = 0; i < injections; i++) {
      double dose = Math.log(step * scale / 2);
      Grade grade = grade(dose - requirement);
      double minutes = minutes(dose - requirement);
      trials.add(new Trial(dose, grade, lasted(minutes)));
      if (!grade.isUseful()) {
        step = Math.min(step + 1, 2 * KINDS);
      } else if (minutes >= LONG_MINUTES) {
        step = Math.max(step - 1, 1);
      }
    }
    return new Man(group, trials);
  }

  Grade grade(double surplus) {
    double uniform = random.nextDouble();
    double latent = truth.beta() * surplus + Math.log(uniform / (1 - uniform));
    int number = 1;
    for (double threshold : List.of(truth.c2(), 0.0, truth.c4())) {
      number += latent > threshold ? 1 : 0;
    }
    return Grade.of(number).orElseThrow();
  }

  double minutes(double surplus) {
    return Math.exp(truth.d0() + truth.d1() * surplus + truth.tau() * random.nextGaussian());
  }

  /** Of eight one is not known, one between two quarters of an hour, the others to the minute. */
  private Lasted lasted(double minutes) {
    double from = Math.floor(minutes / EDGE) * EDGE;
    return switch (random.nextInt(KINDS)) {
      case 0 -> new Lasted.NotRecorded();
      case 1 -> new Lasted.Between(from, from + EDGE);
      default -> new Lasted.Exactly(Math.max(1, Math.rint(minutes)));
    };
  }

  static Courses courses(List<Man> men) {
    Courses.Builder builder = Courses.builder();
    for (Man man : men) {
      builder.course(man.group());
      man.trials().forEach(one -> builder.trial(one.logDose(), one.grade(), one.lasted()));
    }
    return builder.build();
  }

  /** What was given, in mL of the preparation of strength 1 at full potency. */
  static double millilitres(Trial trial) {
    return REFERENCE_ML * Math.exp(trial.logDose());
  }
}
