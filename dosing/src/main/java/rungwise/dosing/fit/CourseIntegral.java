package rungwise.dosing.fit;

import rungwise.inference.Features;

/**
 * The probability of one course's reports, with the man's requirement integrated out, and its
 * derivatives by the parameters.
 *
 * <p>The integrand is log-concave and analytic, so the trapezoid rule converges exponentially: its
 * nodes begin near the top and go out to both sides until the integrand has fallen by {@link #FALL}
 * (Trefethen and Weideman, SIAM Review 56 (2014) 385). How far apart they are follows from the
 * steepness of its parts: see {@link Features}. So a course of many reports takes about 17 nodes,
 * and one whose integrand is a plateau takes as many as it needs.
 *
 * <p>With h the logarithm of the integrand and averages over its density, the first derivatives are
 * the averages of those of h, and the second ones are the averages of those of h plus the
 * covariances of the first ones (Louis, JRSS B 44 (1982) 226).
 */
final class CourseIntegral {

  /** The nodes end where the integrand is below e^-26 = 5e-12 of its largest value. */
  private static final double FALL = 26;

  /** How much farther apart nodes are that stay while the parameters move a little. */
  static final double COARSER = 1.2;

  private static final int MOST_NODES = 100_000;
  private static final int MOST_STEPS = 200;
  private static final int BISECT_EACH = 4;

  /** A start so near the top, in deviations, is near enough. */
  private static final double NEAR = 0.7;

  /** In deviations of the group: a step from a plateau may lead anywhere. */
  private static final double LONGEST_MOVE = 3;

  private final Courses courses;
  private final Point point;
  private final CourseReports reports;
  private final Integrand integrand;

  private double centre;
  private double step;
  private double highest;
  private double total;

  CourseIntegral(Courses courses, Point point) {
    this.courses = courses;
    this.point = point;
    reports = new CourseReports(courses, point);
    integrand = new Integrand(point, reports);
  }

  /** The logarithm of the probability, and density of exact durations, of a course. */
  double logProbability(int course) {
    begin(course);
    double atCentre = integrand.log(centre);
    highest = atCentre;
    total = 1;
    goOut(atCentre, step);
    goOut(atCentre, -step);
    return atCentre + Math.log(total * step);
  }

  /** Adds the logarithm and its first and second derivatives to sums. */
  void addCurved(int course, BlockSums sums) {
    begin(course);
    double atCentre = integrand.logWithSlopes(centre);
    sums.clearCourse();
    sums.weigh(1, integrand);
    highest = atCentre;
    total = 1;
    goOutWithSlopes(atCentre, step, sums);
    goOutWithSlopes(atCentre, -step, sums);
    sums.endCourse(atCentre + Math.log(total * step), total);
  }

  /**
   * Evenly spaced nodes that hold the mass of a course.
   *
   * @param first the lowest
   */
  record Nodes(double first, double step, int count) {}

  /** The nodes of a course, a little farther apart than those of its sums. */
  Nodes nodes(int course) {
    begin(course);
    step *= COARSER;
    highest = integrand.log(centre);
    int above = nodesOutTo(step);
    int below = nodesOutTo(-step);
    return new Nodes(centre - below * step, step, below + above + 1);
  }

  private int nodesOutTo(double distance) {
    double log = highest;
    int node = 0;
    while (log > highest - FALL) {
      node++;
      log = integrand.log(centre + node * distance);
      check(node, log);
    }
    return node;
  }

  private void begin(int course) {
    double mean = point.means()[courses.groupOf(course)];
    reports.read(course);
    integrand.begin(mean);
    findTop(mean);
    double kernel = Math.sqrt(reports.bounded) * point.d1() / point.tau();
    step =
        new Features(Math.PI / point.beta(), 1 / kernel)
            .nodeDistance(1 / Math.sqrt(integrand.precision()));
  }

  private void goOut(double atCentre, double distance) {
    double log = atCentre;
    for (int node = 1; log > highest - FALL; node++) {
      log = integrand.log(centre + node * distance);
      total += Math.exp(log - atCentre);
      check(node, log);
    }
  }

  private void goOutWithSlopes(double atCentre, double distance, BlockSums sums) {
    double log = atCentre;
    for (int node = 1; log > highest - FALL; node++) {
      log = integrand.logWithSlopes(centre + node * distance);
      double weight = Math.exp(log - atCentre);
      total += weight;
      sums.weigh(weight, integrand);
      check(node, log);
    }
  }

  private void check(int node, double log) {
    highest = Math.max(highest, log);
    if (node > MOST_NODES || Double.isNaN(log)) {
      throw new IllegalStateException("bug: a course that cannot be summed at " + point);
    }
  }

  /** Newton's steps in a bracket, which is halved now and then because they may go round. */
  private void findTop(double start) {
    double below = Double.NEGATIVE_INFINITY;
    double above = Double.POSITIVE_INFINITY;
    centre = start;
    for (int steps = 0; steps < MOST_STEPS; steps++) {
      double slope = integrand.slope(centre);
      if (slope > 0) {
        below = centre;
      } else {
        above = centre;
      }
      double move = slope / integrand.precision();
      if (Math.abs(move) * Math.sqrt(integrand.precision()) < NEAR) {
        return;
      }
      double longest = LONGEST_MOVE * point.omega();
      double next = centre + Math.clamp(move, -longest, longest);
      boolean isSteady = next > below && next < above && (steps + 1) % BISECT_EACH != 0;
      centre = isSteady || Double.isInfinite(above - below) ? next : (below + above) / 2;
    }
    throw new IllegalStateException("bug: a course without a top at " + point);
  }
}
