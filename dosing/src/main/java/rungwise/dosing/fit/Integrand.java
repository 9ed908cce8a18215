package rungwise.dosing.fit;

import java.util.Arrays;
import rungwise.inference.TruncatedNormal;

/**
 * What the reports of one course say of a requirement, times the normal curve of his group, as a
 * logarithm; and its derivatives by the parameters.
 *
 * <p>With B = beta (x - eta) - c one of the terms -ln(1 + e^B), its derivative by B is -r and its
 * second one -v, where r = expit(B) and v = r (1 - r). A duration is a normal variable e of which
 * all or only bounds are known: its derivatives are averages over what it may be, and so
 * polynomials of its moments.
 */
final class Integrand {

  private static final double LOG_ROOT_TWO_PI = 0.9189385332046728;

  /** A product turns into a logarithm before it leaves the range of a double. */
  private static final double LARGE = 1e100;

  /** First derivatives, in the order of {@link Point}. */
  final double[] first = new double[Point.COUNT];

  /** Second derivatives: the upper triangle. */
  final double[] second = new double[Point.PAIRS];

  private final Point point;
  private final CourseReports reports;
  private final TruncatedNormal stretch = new TruncatedNormal();
  private final double logOmega;
  private final double steepness;
  private final double spread;

  private double mean;
  private double precision;
  private double log;

  /** Sums over the terms of one threshold. */
  private double r;

  private double rx;
  private double v;
  private double vx;
  private double vxx;

  /** Sums over the durations: derivatives by their mean and by tau, times powers of tau. */
  private double byMean;

  private double byMeanDose;
  private double byTau;
  private double meanMean;
  private double meanMeanDose;
  private double meanMeanDoses;
  private double meanTau;
  private double meanTauDose;
  private double tauTau;

  Integrand(Point point, CourseReports reports) {
    this.point = point;
    this.reports = reports;
    logOmega = Math.log(point.omega());
    steepness = point.d1() / point.tau();
    spread = point.tau() * point.tau();
  }

  /** Begins a course whose reports have been read. */
  void begin(double meanOfGroup) {
    mean = meanOfGroup;
  }

  /** How curved the logarithm was at the last requirement that a slope was asked for. */
  double precision() {
    return precision;
  }

  /** The logarithm at a requirement. */
  double log(double requirement) {
    double w = Math.exp(point.beta() * (mean - requirement));
    double sum = smoothLog(requirement);
    double product = 1;
    for (int threshold = 0; threshold < Point.THRESHOLDS; threshold++) {
      double[] factors = reports.factors[threshold];
      int terms = reports.terms[threshold];
      for (int i = 0; i < terms; i++) {
        product *= 1 + factors[i] * w;
        if (product > LARGE) {
          sum -= Math.log(product);
          product = 1;
        }
      }
    }
    double shift = steepness * requirement;
    for (int i = 0; i < reports.bounded; i++) {
      sum += TruncatedNormal.logMass(reports.low[i] + shift, reports.high[i] + shift);
    }
    return sum - Math.log(product);
  }

  /** Less the second derivative of {@link #smoothLog}, which is the same everywhere. */
  double smoothCurvature() {
    return 1 / (point.omega() * point.omega()) + reports.exact * steepness * steepness;
  }

  /** What is a polynomial of the requirement, of degree two. */
  double smoothLog(double requirement) {
    double z = (requirement - mean) / point.omega();
    double shift = point.d1() * requirement;
    double squares =
        reports.exactRestSquares + shift * (2 * reports.exactRests + reports.exact * shift);
    return reports.constant
        - LOG_ROOT_TWO_PI
        - logOmega
        - z * z / 2
        - point.beta() * reports.allPassed() * requirement
        - squares / (2 * spread);
  }

  /** The derivative by the requirement; {@link #precision} is less the second one. */
  double slope(double requirement) {
    double w = Math.exp(point.beta() * (mean - requirement));
    double sumR = -reports.allPassed();
    double sumV = 0;
    for (int threshold = 0; threshold < Point.THRESHOLDS; threshold++) {
      double[] factors = reports.factors[threshold];
      int terms = reports.terms[threshold];
      for (int i = 0; i < terms; i++) {
        double odds = factors[i] * w;
        double part = odds / (1 + odds);
        sumR += part;
        sumV += part / (1 + odds);
      }
    }
    double shift = steepness * requirement;
    double e = (reports.exactRests + reports.exact * point.d1() * requirement) / point.tau();
    double curved = reports.exact;
    for (int i = 0; i < reports.bounded; i++) {
      stretch.between(reports.low[i] + shift, reports.high[i] + shift);
      e += stretch.first();
      curved += 1 - (stretch.second() - stretch.first() * stretch.first());
    }
    double inverse = 1 / (point.omega() * point.omega());
    precision = inverse + point.beta() * point.beta() * sumV + steepness * steepness * curved;
    return (mean - requirement) * inverse + point.beta() * sumR - steepness * e;
  }

  /** The logarithm at a requirement; its derivatives are set. */
  double logWithSlopes(double requirement) {
    Arrays.fill(second, 0);
    log = smoothLog(requirement);
    addNormal(requirement);
    addGrades(requirement);
    addDurations(requirement);
    return log;
  }

  private void addNormal(double requirement) {
    double omega = point.omega();
    double z = (requirement - mean) / omega;
    first[Point.MEAN] = z / omega;
    first[Point.OMEGA] = (z * z - 1) / omega;
    double inverse = 1 / (omega * omega);
    second[Point.pair(Point.MEAN, Point.MEAN)] = -inverse;
    second[Point.pair(Point.MEAN, Point.OMEGA)] = -2 * z * inverse;
    second[Point.pair(Point.OMEGA, Point.OMEGA)] = (1 - (2 + 1) * z * z) * inverse;
  }

  private void addGrades(double requirement) {
    double w = Math.exp(point.beta() * (mean - requirement));
    sumTerms(0, w);
    double byBeta = reports.dosesOfPassed - reports.allPassed() * requirement;
    byBeta -= rx - r * requirement;
    double betaBeta = -squared(requirement);
    double exp2 = Math.exp(point.c2());
    double odds2 = reports.passed[0] * exp2 / (1 - exp2);
    first[Point.C2] = r - reports.passed[0] - odds2;
    second[Point.pair(Point.BETA, Point.C2)] = vx - v * requirement;
    second[Point.pair(Point.C2, Point.C2)] = -v - odds2 / (1 - exp2);
    sumTerms(1, w);
    byBeta -= rx - r * requirement;
    betaBeta -= squared(requirement);
    sumTerms(2, w);
    byBeta -= rx - r * requirement;
    betaBeta -= squared(requirement);
    double exp4 = Math.exp(-point.c4());
    double odds4 = reports.passed[1] * exp4 / (1 - exp4);
    first[Point.C4] = r - reports.passed[2] + odds4;
    second[Point.pair(Point.BETA, Point.C4)] = vx - v * requirement;
    second[Point.pair(Point.C4, Point.C4)] = -v - odds4 / (1 - exp4);
    first[Point.BETA] = byBeta;
    second[Point.pair(Point.BETA, Point.BETA)] = betaBeta;
  }

  /** The sum of v (x - eta)^2 over the terms that were summed last. */
  private double squared(double requirement) {
    return vxx - requirement * (2 * vx - v * requirement);
  }

  private void sumTerms(int threshold, double w) {
    double[] factors = reports.factors[threshold];
    double[] doses = reports.doses[threshold];
    int terms = reports.terms[threshold];
    r = 0;
    rx = 0;
    v = 0;
    vx = 0;
    vxx = 0;
    double product = 1;
    for (int i = 0; i < terms; i++) {
      double odds = factors[i] * w;
      double all = 1 + odds;
      double part = odds / all;
      double curve = part / all;
      double dose = doses[i];
      product *= all;
      r += part;
      rx += part * dose;
      v += curve;
      vx += curve * dose;
      vxx += curve * dose * dose;
      if (product > LARGE) {
        log -= Math.log(product);
        product = 1;
      }
    }
    log -= Math.log(product);
  }

  private void addDurations(double requirement) {
    double shift = point.d1() * requirement;
    sumExact(shift);
    for (int i = 0; i < reports.bounded; i++) {
      double moved = steepness * requirement;
      stretch.between(reports.low[i] + moved, reports.high[i] + moved);
      addBounded(reports.boundedDoses[i]);
    }
    double tau = point.tau();
    first[Point.D0] = byMean / tau;
    first[Point.D1] = (byMeanDose - byMean * requirement) / tau;
    first[Point.TAU] = byTau / tau;
    second[Point.pair(Point.D0, Point.D0)] = meanMean / spread;
    second[Point.pair(Point.D0, Point.D1)] = (meanMeanDose - meanMean * requirement) / spread;
    second[Point.pair(Point.D1, Point.D1)] =
        (meanMeanDoses - requirement * (2 * meanMeanDose - meanMean * requirement)) / spread;
    second[Point.pair(Point.D0, Point.TAU)] = meanTau / spread;
    second[Point.pair(Point.D1, Point.TAU)] = (meanTauDose - meanTau * requirement) / spread;
    second[Point.pair(Point.TAU, Point.TAU)] = tauTau / spread;
  }

  /** Of exact durations e = (rest + shift) / tau, whose sums are known. */
  private void sumExact(double shift) {
    int n = reports.exact;
    double tau = point.tau();
    byMean = (reports.exactRests + n * shift) / tau;
    byMeanDose = (reports.exactRestDoses + shift * reports.exactDoses) / tau;
    double squares =
        (reports.exactRestSquares + shift * (2 * reports.exactRests + n * shift)) / spread;
    byTau = squares - n;
    meanMean = -n;
    meanMeanDose = -reports.exactDoses;
    meanMeanDoses = -reports.exactDoseSquares;
    meanTau = -2 * byMean;
    meanTauDose = -2 * byMeanDose;
    tauTau = n - (2 + 1) * squares;
  }

  private void addBounded(double dose) {
    double e = stretch.first();
    double ee = stretch.second();
    double curve = ee - e * e - 1;
    double mixed = stretch.third() - e * ee - 2 * e;
    log += stretch.logMass();
    byMean += e;
    byMeanDose += e * dose;
    byTau += ee - 1;
    meanMean += curve;
    meanMeanDose += curve * dose;
    meanMeanDoses += curve * dose * dose;
    meanTau += mixed;
    meanTauDose += mixed * dose;
    tauTau += 1 - (2 + 1) * ee + stretch.fourth() - ee * ee;
  }
}
