package rungwise.bench;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.response.Population;
import rungwise.dosing.response.Trial;
import rungwise.inference.Normal;

/**
 * How often the next response of a man lies in the central 90 % of what is foreseen of it, in
 * worlds where doses leak, vials lose strength and soft erections last long. Sums over the
 * requirement are dense and the bench's own. A program; every number of the worlds is invented.
 *
 * <p>Told three ways: by every report, as it was before; by what a course reads now, without the
 * men of whom it is silent; and by that with what a vial may have lost as an uncertain factor.
 */
public final class MadeWorlds {

  private static final int WORLDS = 200;
  private static final int MEN = 100;
  private static final int INJECTIONS = 8;
  private static final int OF_ONE_VIAL = 3;

  /** One in ten leaks, and then at most half goes in; of four leaks three are told. */
  private static final double LEAKS = 0.1;

  private static final double MOST_LEFT = 0.5;
  private static final double TOLD = 0.75;

  /** A vial has lost up to three tenths by the time it is used. */
  private static final double MOST_LOST = 0.3;

  /** How much shorter responses of grades 1 and 2 are than usable ones at the same dose. */
  private static final double[] SHORTER = {Double.NaN, Math.log(3), Math.log(1.5), 0, 0};

  private static final double HOUR = 60;
  private static final double TWO_HOURS = 120;
  private static final double STEP = 0.5;
  private static final int MOST_STEPS = 16;
  private static final int NODES = 161;
  private static final double REACH = 5;
  private static final int LOSSES = 7;
  private static final double EDGE = 0.05;
  private static final double PERCENT = 100;
  private static final double HALF = 0.5;
  private static final double FIFTH = 0.2;

  private MadeWorlds() {}

  /** How evidence is used. */
  private enum Way {
    EVERY_REPORT,
    AS_READ_NOW,
    WITH_LOSS
  }

  private record Report(double logDose, Grade grade, double minutes, boolean isToldLeak) {}

  private static final class Count {
    int held;
    int asked;
    int below;
    int above;

    void add(double place) {
      asked++;
      below += place < EDGE ? 1 : 0;
      above += place > 1 - EDGE ? 1 : 0;
      held += place >= EDGE && place <= 1 - EDGE ? 1 : 0;
    }

    String words() {
      return part(held)
          + " of "
          + asked
          + " held ("
          + part(below)
          + " below, "
          + part(above)
          + " above)";
    }

    private String part(int count) {
      return BigDecimal.valueOf(PERCENT * count / asked).setScale(1, RoundingMode.HALF_UP) + " %";
    }
  }

  /**
   * Runs.
   *
   * @param arguments the first seed
   */
  public static void main(String[] arguments) {
    long seed = Long.parseLong(arguments[0]);
    for (Way way : Way.values()) {
      var grades = new Count();
      var times = new Count();
      var both = new Count();
      int silent = 0;
      for (int world = 0; world < WORLDS; world++) {
        var random = new Random(seed + world);
        Population truth = moved(random);
        for (int man = 0; man < MEN; man++) {
          silent += ask(truth, new Random(random.nextLong()), way, List.of(grades, times, both));
        }
      }
      System.out.printf(
          Locale.ROOT,
          "%s: together %s; grades %s; times %s; silent of %d men%n",
          way,
          both.words(),
          grades.words(),
          times.words(),
          silent);
    }
  }

  /** Another clinic's men: each parameter up to a fifth away. */
  private static Population moved(Random random) {
    Population one = MadeMen.TRUTH;
    return new Population(
        one.mu() + random.nextDouble() - HALF,
        Map.of("mixed", 0.0),
        one.omega() * around(random),
        one.beta() * around(random),
        one.c2() * around(random),
        one.c4() * around(random),
        one.d0() + (random.nextDouble() - HALF) / 2,
        one.d1() * around(random),
        one.tau() * around(random));
  }

  private static double around(Random random) {
    return 1 + FIFTH * (2 * random.nextDouble() - 1);
  }

  /** Asks of one man; 1 if nothing is foreseen of him. */
  private static int ask(Population truth, Random random, Way way, List<Count> counts) {
    double requirement = truth.mu() + truth.omega() * random.nextGaussian();
    var reports = new ArrayList<Report>();
    int steps = 2;
    double lost = 0;
    for (int i = 0; i <= INJECTIONS; i++) {
      lost = i % OF_ONE_VIAL == 0 ? Math.log(1 - MOST_LOST * random.nextDouble()) : lost;
      boolean isLast = i == INJECTIONS;
      boolean isLeak = !isLast && random.nextDouble() < LEAKS;
      double leaked = isLeak ? Math.log(MOST_LEFT * (1 - random.nextDouble())) : 0;
      double drawn = Math.log(steps * STEP);
      double surplus = drawn + lost + leaked - requirement;
      Grade grade = grade(truth, random, surplus);
      double minutes =
          Math.exp(
              truth.d0()
                  + truth.d1() * surplus
                  - SHORTER[grade.number()]
                  + truth.tau() * random.nextGaussian());
      var report = new Report(drawn, grade, minutes, isLeak && random.nextDouble() < TOLD);
      if (isLast) {
        return judge(truth, random, way, reports, report, counts);
      }
      reports.add(report);
      if (!grade.isUseful() && !report.isToldLeak()) {
        steps = Math.min(steps + 1, MOST_STEPS);
      } else if (minutes >= TWO_HOURS) {
        steps = Math.max(steps - 1, 1);
      }
    }
    throw new IllegalStateException("bug: no last injection");
  }

  private static Grade grade(Population truth, Random random, double surplus) {
    double uniform = random.nextDouble();
    double latent = truth.beta() * surplus + Math.log(uniform / (1 - uniform));
    int number = 1;
    for (double threshold : List.of(truth.c2(), 0.0, truth.c4())) {
      number += latent > threshold ? 1 : 0;
    }
    return Grade.of(number).orElseThrow();
  }

  private static int judge(
      Population truth,
      Random random,
      Way way,
      List<Report> reports,
      Report next,
      List<Count> counts) {
    boolean isSilent =
        way != Way.EVERY_REPORT
            && reports.stream().anyMatch(one -> !one.grade().isUseful() && one.minutes() > HOUR);
    if (isSilent) {
      return 1;
    }
    List<Trial> read =
        reports.stream()
            .filter(one -> way == Way.EVERY_REPORT || !one.isToldLeak())
            .map(one -> new Trial(one.logDose(), one.grade(), new Lasted.Exactly(one.minutes())))
            .toList();
    var foreseen = new Foreseen(truth, read, way == Way.WITH_LOSS ? LOSSES : 1);
    double grade = foreseen.placeOfGrade(next, random.nextDouble());
    counts.get(0).add(grade);
    counts.get(2).add(grade);
    if (next.grade().isUseful()) {
      double time = foreseen.placeOfTime(next);
      counts.get(1).add(time);
      counts.get(2).add(time);
    }
    return 0;
  }

  /** The posterior of one man on even nodes, with the chance of each part of a loss. */
  private static final class Foreseen {

    private final Population population;
    private final double[] nodes = new double[NODES];
    private final double[] weights = new double[NODES];
    private final double[] losses;

    Foreseen(Population population, List<Trial> trials, int parts) {
      this.population = population;
      losses = new double[parts];
      for (int i = 0; i < parts; i++) {
        losses[i] = parts == 1 ? 0 : Math.log(1 - MOST_LOST * (i + HALF) / parts);
      }
      double highest = Double.NEGATIVE_INFINITY;
      for (int i = 0; i < NODES; i++) {
        double z = REACH * (2.0 * i / (NODES - 1) - 1);
        nodes[i] = population.mu() + population.omega() * z;
        weights[i] = -z * z / 2;
        for (Trial trial : trials) {
          weights[i] += Math.log(likelihood(trial, nodes[i]));
        }
        highest = Math.max(highest, weights[i]);
      }
      double sum = 0;
      for (int i = 0; i < NODES; i++) {
        weights[i] = Math.exp(weights[i] - highest);
        sum += weights[i];
      }
      for (int i = 0; i < NODES; i++) {
        weights[i] /= sum;
      }
    }

    private double likelihood(Trial trial, double requirement) {
      double sum = 0;
      for (double loss : losses) {
        double surplus = trial.logDose() + loss - requirement;
        double one = chance(trial.grade().number(), surplus);
        if (trial.grade().isUseful() && trial.lasted() instanceof Lasted.Exactly(double minutes)) {
          double e = deviation(minutes, surplus);
          one *= Math.exp(-e * e / 2);
        }
        sum += one;
      }
      return sum / losses.length;
    }

    private double deviation(double minutes, double surplus) {
      return (Math.log(minutes) - population.d0() - population.d1() * surplus) / population.tau();
    }

    private double chance(int grade, double surplus) {
      return atLeast(grade, surplus) - atLeast(grade + 1, surplus);
    }

    private double atLeast(int grade, double surplus) {
      return switch (grade) {
        case 1 -> 1;
        case 2 -> logistic(population.beta() * surplus - population.c2());
        case 3 -> logistic(population.beta() * surplus);
        case 4 -> logistic(population.beta() * surplus - population.c4());
        default -> 0;
      };
    }

    private static double logistic(double at) {
      return 1 / (1 + Math.exp(-at));
    }

    /** Where the grade lies among what was foreseen; within one grade at random. */
    double placeOfGrade(Report next, double part) {
      double below = 0;
      double own = 0;
      for (int i = 0; i < NODES; i++) {
        for (double loss : losses) {
          double surplus = next.logDose() + loss - nodes[i];
          double weight = weights[i] / losses.length;
          below += weight * (1 - atLeast(next.grade().number(), surplus));
          own += weight * chance(next.grade().number(), surplus);
        }
      }
      return below + part * own;
    }

    /** The same of its minutes, given the grade. */
    double placeOfTime(Report next) {
      double below = 0;
      double all = 0;
      for (int i = 0; i < NODES; i++) {
        for (double loss : losses) {
          double surplus = next.logDose() + loss - nodes[i];
          double weight = weights[i] * chance(next.grade().number(), surplus);
          all += weight;
          below += weight * Normal.cdf(deviation(next.minutes(), surplus));
        }
      }
      return below / all;
    }
  }
}
