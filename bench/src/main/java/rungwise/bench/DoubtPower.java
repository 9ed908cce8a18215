package rungwise.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import rungwise.app.fit.ThreadWorkers;
import rungwise.clinic.fitting.Draws;
import rungwise.dosing.fit.Courses;
import rungwise.dosing.fit.Doubt;
import rungwise.dosing.fit.Fit;
import rungwise.dosing.fit.Fitting;
import rungwise.dosing.fit.Posterior;
import rungwise.dosing.fit.Posteriors;
import rungwise.dosing.fit.Workers;
import rungwise.dosing.predictive.Predicted;
import rungwise.dosing.predictive.PredictiveCheck;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.response.Trial;

/**
 * How often a fit to made files is doubted, and of what: files without a fault, and files with one
 * that people make. A program, no benchmark of the harness.
 */
public final class DoubtPower {

  private static final int MEN = 1000;
  private static final int INJECTIONS = 8;
  private static final int IN_HOURS = 30;
  private static final int TWICE = 10;
  private static final double TENFOLD = 0.03;
  private static final double MINUTES_OF_AN_HOUR = 60;
  private static final int TEN = 10;

  /** A fifth of the usual volumes: ten times as much is then mostly below 1 mL and accepted. */
  private static final double SMALL = 0.2;

  private DoubtPower() {}

  private enum Fault {
    CLEAN,
    SETTLED,
    HOURS,
    TENFOLD,
    TWICE
  }

  /**
   * Runs.
   *
   * @param arguments the fault, how many files, the first seed
   */
  public static void main(String[] arguments) {
    Fault fault = Fault.valueOf(arguments[0]);
    int files = Integer.parseInt(arguments[1]);
    long seed = Long.parseLong(arguments[2]);
    Map<String, Integer> doubts = new TreeMap<>();
    int doubted = 0;
    int byCoursesAlone = 0;
    for (int file = 0; file < files; file++) {
      Courses courses = courses(fault, seed + file);
      List<Doubt> found = doubts(courses, /* hasCheck= */ fault != Fault.SETTLED);
      doubted += found.isEmpty() ? 0 : 1;
      byCoursesAlone += found.stream().anyMatch(DoubtPower::isOfCourses) ? 1 : 0;
      found.stream()
          .map(doubt -> doubt.getClass().getSimpleName())
          .distinct()
          .forEach(name -> doubts.merge(name, 1, Integer::sum));
    }
    System.out.println(
        fault
            + ": "
            + files
            + " files of "
            + MEN
            + " men from seed "
            + seed
            + ": "
            + doubted
            + " doubted, "
            + byCoursesAlone
            + " of them by the courses alone, without the predictive check; by kind "
            + doubts);
  }

  private static boolean isOfCourses(Doubt doubt) {
    return doubt instanceof Doubt.LikeHours || doubt instanceof Doubt.Repeated;
  }

  private static Courses courses(Fault fault, long seed) {
    double scale = fault == Fault.TENFOLD ? SMALL : 1;
    var men = new ArrayList<>(new MadeMen(seed, MadeMen.TRUTH, scale).men(MEN, INJECTIONS));
    var random = new Random(seed);
    switch (fault) {
      case HOURS -> {
        for (int man = 0; man < IN_HOURS; man++) {
          int at = man * (MEN / IN_HOURS) + random.nextInt(MEN / IN_HOURS);
          men.set(at, changed(men.get(at), DoubtPower::inHours));
        }
      }
      case TENFOLD ->
          men.replaceAll(
              man -> changed(man, one -> random.nextDouble() < TENFOLD ? tenfold(one) : one));
      case TWICE -> men.addAll(men.subList(0, TWICE).stream().toList());
      case CLEAN, SETTLED -> {}
    }
    return MadeMen.courses(men);
  }

  private static MadeMen.Man changed(MadeMen.Man man, UnaryOperator<Trial> change) {
    return new MadeMen.Man(man.group(), man.trials().stream().map(change).toList());
  }

  private static Trial tenfold(Trial trial) {
    return new Trial(trial.logDose() + Math.log(TEN), trial.grade(), trial.lasted());
  }

  private static Trial inHours(Trial trial) {
    Lasted lasted =
        switch (trial.lasted()) {
          case Lasted.Exactly(double minutes) -> new Lasted.Exactly(minutes / MINUTES_OF_AN_HOUR);
          case Lasted.Between(double from, double before) ->
              new Lasted.Between(from / MINUTES_OF_AN_HOUR, before / MINUTES_OF_AN_HOUR);
          case Lasted.AtLeast(double minutes) -> new Lasted.AtLeast(minutes / MINUTES_OF_AN_HOUR);
          case Lasted.NotRecorded none -> none;
        };
    return new Trial(trial.logDose(), trial.grade(), lasted);
  }

  private static List<Doubt> doubts(Courses courses, boolean hasCheck) {
    try (var workers = new ThreadWorkers(1)) {
      String reference = Fitting.mostFrequentGroup(courses).orElseThrow();
      Fit fit = Fitting.fit(courses, reference, workers, pass -> {});
      boolean isTold = fit.doubts().stream().anyMatch(DoubtPower::isOfCourses);
      return hasCheck && !isTold ? checked(courses, fit, workers) : fit.doubts();
    }
  }

  private static List<Doubt> checked(Courses courses, Fit fit, Workers workers) {
    Posterior posterior = Posteriors.of(courses, fit, workers, Draws.generator(1), pass -> {});
    Predicted predicted =
        PredictiveCheck.of(courses, posterior.sample(), Draws.generator(1), workers);
    var all = new ArrayList<Doubt>(fit.doubts(Optional.of(posterior)));
    all.addAll(predicted.doubts());
    return all;
  }
}
