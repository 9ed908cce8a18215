package rungwise.inference;

/**
 * A log-concave density as nodes with weights that sum to 1: an integral over it is a sum.
 *
 * <p>The nodes are evenly spaced over the stretch that holds the mass. For analytic functions that
 * vanish at both ends the trapezoid rule's error falls exponentially with the number of nodes, and
 * halving the distance at least squares it (Trefethen and Weideman, SIAM Review 56 (2014) 385). So
 * the distance is halved until the mass and the mean no longer change by more than {@link #SETTLED}
 * and the last halving is kept, which leaves the square of that.
 */
public final class Quadrature {

  private static final double SETTLED = 1e-6;
  private static final int LEAST_INTERVALS = 16;
  private static final int MOST_INTERVALS = 1 << 15;

  /** The fall of a normal density over half the stretch is about 29, at 7.6 deviations. */
  private static final double DEVIATIONS_IN_STRETCH = 15.2;

  private static final int MOST_STEPS = 100;
  private static final double CLOSE = 1e-11;
  private static final int PANELS = 4;
  private static final double HALF = 0.5;

  private final LogDensity density;
  private final double from;
  private final double to;
  private final double height;

  private double[] nodes;
  private double[] weights;
  private double mass;
  private double mean;

  private Quadrature(LogDensity density, Peak peak) {
    this.density = density;
    from = peak.from();
    to = peak.to();
    height = peak.height();
    nodes = new double[0];
    weights = new double[0];
  }

  /**
   * Sets the nodes.
   *
   * @param start somewhere near the mass
   * @param scale about how wide it is
   * @param features how fine the functions are that will be averaged
   * @throws IllegalArgumentException if the density has no top, no ends, or is not log-concave
   */
  public static Quadrature of(LogDensity density, double start, double scale, Features features) {
    var quadrature = new Quadrature(density, Peak.of(density, start, scale));
    quadrature.refine(features);
    return quadrature;
  }

  private void refine(Features features) {
    double stretch = to - from;
    double wanted = stretch / features.nodeDistance(stretch / DEVIATIONS_IN_STRETCH);
    if (!(wanted < MOST_INTERVALS)) {
      throw new IllegalArgumentException("bug: features too fine, " + features);
    }
    int intervals = Math.max(LEAST_INTERVALS, (int) Math.ceil(wanted / 2));
    nodes = spread(intervals + 1, from, stretch / intervals);
    weights = valuesAt(nodes);
    measure();
    boolean isSettled = false;
    while (!isSettled) {
      double massBefore = mass;
      double meanBefore = mean;
      halve();
      measure();
      isSettled =
          Math.abs(mass - massBefore) <= SETTLED * mass
              && Math.abs(mean - meanBefore) <= SETTLED * stretch;
      if (!isSettled && nodes.length > MOST_INTERVALS) {
        throw new IllegalArgumentException("bug: a density that cannot be summed");
      }
    }
    for (int i = 0; i < weights.length; i++) {
      weights[i] *= distance() / mass;
    }
  }

  private static double[] spread(int count, double first, double distance) {
    var points = new double[count];
    for (int i = 0; i < count; i++) {
      points[i] = first + i * distance;
    }
    return points;
  }

  private double[] valuesAt(double[] points) {
    var values = new double[points.length];
    for (int i = 0; i < points.length; i++) {
      values[i] = scaled(points[i]);
    }
    return values;
  }

  private void halve() {
    int count = nodes.length;
    double half = distance() / 2;
    double[] between = spread(count - 1, from + half, 2 * half);
    double[] valuesBetween = valuesAt(between);
    var allNodes = new double[2 * count - 1];
    var allValues = new double[2 * count - 1];
    for (int i = 0; i < count; i++) {
      allNodes[2 * i] = nodes[i];
      allValues[2 * i] = weights[i];
    }
    for (int i = 0; i < count - 1; i++) {
      allNodes[2 * i + 1] = between[i];
      allValues[2 * i + 1] = valuesBetween[i];
    }
    nodes = allNodes;
    weights = allValues;
  }

  private double distance() {
    return (to - from) / (nodes.length - 1);
  }

  private void measure() {
    double sum = 0;
    double moment = 0;
    for (int i = 0; i < nodes.length; i++) {
      sum += weights[i];
      moment += weights[i] * (nodes[i] - from);
    }
    mass = sum * distance();
    mean = from + moment / sum;
  }

  /** The nodes, from small to large. */
  public double[] nodes() {
    return nodes.clone();
  }

  /** The weight of each node; they sum to 1. */
  public double[] weights() {
    return weights.clone();
  }

  public double mean() {
    return mean;
  }

  public double standardDeviation() {
    double sum = 0;
    for (int i = 0; i < nodes.length; i++) {
      sum += weights[i] * (nodes[i] - mean) * (nodes[i] - mean);
    }
    return Math.sqrt(sum);
  }

  /** The logarithm of the density's integral. */
  public double logMass() {
    return Math.log(mass) + height;
  }

  /**
   * The point below which a part of the mass lies.
   *
   * <p>The trapezoid rule is exact over the whole stretch only. Below a point the mass is summed by
   * Gauss and Legendre's rule, from the end of the stretch, and Newton's steps with the density
   * find the point.
   *
   * @param part more than 0 and less than 1
   */
  public double quantile(double part) {
    if (!(part > 0 && part < 1)) {
      throw new IllegalArgumentException("bug: a quantile at " + part);
    }
    double low = from;
    double high = to;
    double point = roughQuantile(part);
    double below = massFromStartTo(point);
    for (int step = 0; step < MOST_STEPS; step++) {
      double excess = below - part * mass;
      low = excess < 0 ? point : low;
      high = excess < 0 ? high : point;
      double next = point - excess / scaled(point);
      double kept = next > low && next < high ? next : (low + high) / 2;
      below += massBetween(point, kept);
      double moved = Math.abs(kept - point);
      point = kept;
      if (moved <= CLOSE * (to - from)) {
        return point;
      }
    }
    return point;
  }

  private double roughQuantile(double part) {
    double sum = 0;
    for (int i = 0; i < nodes.length; i++) {
      sum += weights[i];
      if (sum > part) {
        double over = (sum - part) / weights[i];
        return nodes[i] + distance() * (HALF - over);
      }
    }
    return to;
  }

  private double massFromStartTo(double point) {
    double width = (point - from) / PANELS;
    double sum = 0;
    for (int panel = 0; panel < PANELS; panel++) {
      sum += massBetween(from + panel * width, from + (panel + 1) * width);
    }
    return sum;
  }

  private double massBetween(double left, double right) {
    return GaussLegendre.integral(this::scaled, (left + right) / 2, (right - left) / 2);
  }

  /** The density, as a multiple of what it is near its top. */
  private double scaled(double point) {
    return Math.exp(density.at(point) - height);
  }
}
