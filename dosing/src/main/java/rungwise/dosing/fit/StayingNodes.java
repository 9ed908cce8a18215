package rungwise.dosing.fit;

import rungwise.inference.Normal;
import rungwise.inference.TruncatedNormal;

/**
 * The same sum over all courses as {@link Marginal#log}, several times as fast, at points near one
 * point: the nodes of each course are found there once and stay.
 *
 * <p>Evenly spaced nodes need no exponential each: exp(-beta (eta - mean)) is multiplied by a
 * constant from node to node, and what is a normal curve by a factor that itself is multiplied by a
 * constant. The nodes are a little fewer than where derivatives are taken ({@link
 * CourseIntegral#COARSER}): a few hundred courses together are right to about 1e-5 within three
 * standard errors of the point.
 */
final class StayingNodes {

  /** A product that is larger might leave the range of a double. */
  private static final double LARGE = 1e200;

  /** Below this a difference of the distribution function has too few digits. */
  private static final double SMALL = 1e-4;

  private final Courses courses;
  private final int[] order;
  private final double[] firstNode;
  private final double[] step;
  private final int[] nodes;

  /** Finds the nodes at a point. */
  StayingNodes(Courses courses, int[] order, Point point) {
    this.courses = courses;
    this.order = order;
    firstNode = new double[order.length];
    step = new double[order.length];
    nodes = new int[order.length];
    var integral = new CourseIntegral(courses, point);
    for (int i = 0; i < order.length; i++) {
      CourseIntegral.Nodes found = integral.nodes(order[i]);
      firstNode[i] = found.first();
      step[i] = found.step();
      nodes[i] = found.count();
    }
  }

  /** The logarithm of the probability of all courses at a point near the first one. */
  double log(Point point) {
    var reports = new CourseReports(courses, point);
    var integrand = new Integrand(point, reports);
    double sum = 0;
    for (int i = 0; i < order.length; i++) {
      double mean = point.means()[courses.groupOf(order[i])];
      reports.read(order[i]);
      integrand.begin(mean);
      sum += log(i, mean, point, reports, integrand);
    }
    return sum;
  }

  private double log(
      int place, double mean, Point point, CourseReports reports, Integrand integrand) {
    double first = firstNode[place];
    double distance = step[place];
    int half = nodes[place] / 2;
    double middle = first + distance * half;
    double atMiddle = integrand.smoothLog(middle);
    double smooth = Math.exp(integrand.smoothLog(first) - atMiddle);
    double second = Math.exp(integrand.smoothLog(first + distance) - atMiddle);
    double rise = second / smooth;
    double bend = Math.exp(-integrand.smoothCurvature() * distance * distance);
    double w = Math.exp(point.beta() * (mean - first));
    double fall = Math.exp(-point.beta() * distance);
    double steepness = point.d1() / point.tau();
    double total = 0;
    for (int node = 0; node < nodes[place]; node++) {
      double product = product(reports, w);
      double value = smooth / product;
      if (reports.bounded > 0) {
        value *= bounded(reports, steepness * (first + node * distance));
      }
      total += value;
      if (!(product < LARGE)) {
        return slowLog(place, integrand);
      }
      smooth *= rise;
      rise *= bend;
      w *= fall;
    }
    boolean isSound = total > 1 / LARGE && total < LARGE;
    return isSound ? atMiddle + Math.log(total * distance) : slowLog(place, integrand);
  }

  private static double product(CourseReports reports, double w) {
    double product = 1;
    for (int threshold = 0; threshold < Point.THRESHOLDS; threshold++) {
      double[] factors = reports.factors[threshold];
      int terms = reports.terms[threshold];
      for (int i = 0; i < terms; i++) {
        product *= 1 + factors[i] * w;
      }
    }
    return product;
  }

  private static double bounded(CourseReports reports, double shift) {
    double product = 1;
    for (int i = 0; i < reports.bounded; i++) {
      double low = reports.low[i] + shift;
      double high = reports.high[i] + shift;
      double mass =
          low + high < 0
              ? Normal.cdf(high) - Normal.cdf(low)
              : Normal.cdf(-low) - Normal.cdf(-high);
      product *= mass > SMALL ? mass : Math.exp(TruncatedNormal.logMass(low, high));
    }
    return product;
  }

  /** One logarithm a node, for courses whose products are too large. */
  private double slowLog(int place, Integrand integrand) {
    double highest = Double.NEGATIVE_INFINITY;
    double[] logs = new double[nodes[place]];
    for (int node = 0; node < logs.length; node++) {
      logs[node] = integrand.log(firstNode[place] + node * step[place]);
      highest = Math.max(highest, logs[node]);
    }
    double total = 0;
    for (double one : logs) {
      total += Math.exp(one - highest);
    }
    return highest + Math.log(total * step[place]);
  }
}
