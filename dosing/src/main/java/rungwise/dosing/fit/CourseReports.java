package rungwise.dosing.fit;

import java.util.Arrays;

/**
 * The reports of one course at one point, made ready to be asked about many requirements.
 *
 * <p>A grade is a product of logistic curves (see {@code Likelihood} of the forecasts), so it gives
 * up to two terms -ln(1 + factor w) with w = exp(-beta (eta - mean)), sorted by threshold, and a
 * part that is linear in the requirement. Exact durations are quadratic in it: six sums say all of
 * them. Bounded durations are kept one by one.
 */
final class CourseReports {

  private static final double LOG_ROOT_TWO_PI = 0.9189385332046728;
  private static final int FIRST_SIZE = 64;

  /** For each threshold, the terms: their factors and the logarithms of their doses. */
  final double[][] factors = new double[Point.THRESHOLDS][FIRST_SIZE];

  final double[][] doses = new double[Point.THRESHOLDS][FIRST_SIZE];
  final int[] terms = new int[Point.THRESHOLDS];

  /** How often each threshold was passed and the next one not asked: grades 2, 3 and 4. */
  final int[] passed = new int[Point.THRESHOLDS];

  /** The sum of the logarithms of doses at grade 2 and above. */
  double dosesOfPassed;

  int exact;
  double exactDoses;
  double exactDoseSquares;
  double exactRests;
  double exactRestDoses;
  double exactRestSquares;

  /** The bounds in deviations where the requirement is 0, and the doses they belong to. */
  double[] low = new double[FIRST_SIZE];

  double[] high = new double[FIRST_SIZE];
  double[] boundedDoses = new double[FIRST_SIZE];
  int bounded;

  /** What does not depend on the requirement. */
  double constant;

  private final Courses courses;
  private final Point point;
  private final double[] drops = new double[Point.THRESHOLDS];
  private final double logTau;

  CourseReports(Courses courses, Point point) {
    this.courses = courses;
    this.point = point;
    for (int threshold = 0; threshold < Point.THRESHOLDS; threshold++) {
      drops[threshold] = Math.exp(-point.threshold(threshold));
    }
    logTau = Math.log(point.tau());
  }

  /** How many terms of all thresholds were passed. */
  int allPassed() {
    return passed[0] + passed[1] + passed[2];
  }

  void read(int course) {
    clear(courses.firstTrial(course + 1) - courses.firstTrial(course));
    double mean = point.means()[courses.groupOf(course)];
    for (int trial = courses.firstTrial(course); trial < courses.firstTrial(course + 1); trial++) {
      double dose = courses.logDose(trial);
      int grade = courses.grade(trial);
      double rise = Math.exp(point.beta() * (dose - mean));
      if (grade > Courses.LOWEST_GRADE) {
        int threshold = grade - Courses.LOWEST_GRADE - 1;
        passed[threshold]++;
        dosesOfPassed += dose;
        add(threshold, rise, dose);
      }
      if (grade < Courses.HIGHEST_GRADE) {
        add(grade - Courses.LOWEST_GRADE, rise, dose);
      }
      addDuration(trial, dose);
    }
    constant +=
        point.beta() * dosesOfPassed
            - passed[0] * point.c2()
            - passed[2] * point.c4()
            + (passed[0] > 0 ? passed[0] * Math.log(-Math.expm1(point.c2())) : 0)
            + (passed[1] > 0 ? passed[1] * Math.log(-Math.expm1(-point.c4())) : 0)
            - exact * (LOG_ROOT_TWO_PI + logTau);
  }

  private void clear(int trials) {
    if (low.length < trials) {
      low = new double[2 * trials];
      high = new double[2 * trials];
      boundedDoses = new double[2 * trials];
      for (int threshold = 0; threshold < Point.THRESHOLDS; threshold++) {
        factors[threshold] = new double[2 * trials];
        doses[threshold] = new double[2 * trials];
      }
    }
    Arrays.fill(terms, 0);
    Arrays.fill(passed, 0);
    dosesOfPassed = 0;
    exact = 0;
    exactDoses = 0;
    exactDoseSquares = 0;
    exactRests = 0;
    exactRestDoses = 0;
    exactRestSquares = 0;
    bounded = 0;
    constant = 0;
  }

  private void add(int threshold, double rise, double dose) {
    int at = terms[threshold]++;
    factors[threshold][at] = rise * drops[threshold];
    doses[threshold][at] = dose;
  }

  private void addDuration(int trial, double dose) {
    double expected = point.d0() + point.d1() * dose;
    switch (courses.duration(trial)) {
      case Courses.EXACT -> {
        double logMinutes = courses.low(trial);
        double rest = logMinutes - expected;
        exact++;
        exactDoses += dose;
        exactDoseSquares += dose * dose;
        exactRests += rest;
        exactRestDoses += rest * dose;
        exactRestSquares += rest * rest;
        constant -= logMinutes;
      }
      case Courses.BOUNDED -> {
        low[bounded] = (courses.low(trial) - expected) / point.tau();
        high[bounded] = (courses.high(trial) - expected) / point.tau();
        boundedDoses[bounded] = dose;
        bounded++;
      }
      default -> {}
    }
  }
}
