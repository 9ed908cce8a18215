package rungwise.inference;

/**
 * Where a log-concave density has its mass: a point near its top, and a stretch outside of which it
 * is negligible.
 *
 * <p>The top is bracketed and narrowed by parabolas, with a bisection wherever a parabola leads
 * nowhere. Concavity says when to end: the chords of the bracket, prolonged, are above the curve,
 * so the top is never more than {@link #NEAR} above the point that is kept. Concavity also makes
 * the fall from the top convex, so a factor on the distance is at least that factor on the fall.
 */
final class Peak {

  /** The top is at most this much above the point that is kept, in logarithms. */
  private static final double NEAR = 0.5;

  /** Outside the stretch the density has fallen by at least e^-26 = 5e-12. */
  private static final double LEAST_FALL = 26;

  private static final double MOST_FALL = 34;
  private static final double AIMED_FALL = 29;
  private static final int MOST_TRIES = 200;
  private static final int BISECT_EACH = 5;
  private static final double TOO_NEAR = 0.02;
  private static final double HALF = 0.5;

  private final LogDensity density;

  private double left;
  private double middle;
  private double right;
  private double atLeft;
  private double atMiddle;
  private double atRight;

  private Peak(LogDensity density, double start, double scale) {
    this.density = density;
    middle = start;
    atMiddle = density.at(start);
    if (Double.isNaN(atMiddle) || !(scale > 0)) {
      throw new IllegalArgumentException("bug: a density of " + atMiddle + " at " + start);
    }
    left = start - scale;
    right = start + scale;
    atLeft = density.at(left);
    atRight = density.at(right);
  }

  /** Searches from a start, with a guess of the density's width. */
  static Peak of(LogDensity density, double start, double scale) {
    var peak = new Peak(density, start, scale);
    peak.bracket();
    peak.narrow();
    double from = peak.end(-1, peak.middle - peak.left);
    double to = peak.end(1, peak.right - peak.middle);
    peak.left = from;
    peak.right = to;
    return peak;
  }

  double from() {
    return left;
  }

  double to() {
    return right;
  }

  /** The logarithm of the density near its top. */
  double height() {
    return atMiddle;
  }

  private void bracket() {
    for (int tries = 0; tries < MOST_TRIES; tries++) {
      if (atRight > atMiddle) {
        double next = right + 2 * (right - middle);
        shift(middle, right, next);
        atLeft = atMiddle;
        atMiddle = atRight;
        atRight = density.at(next);
      } else if (atLeft > atMiddle) {
        double next = left - 2 * (middle - left);
        shift(next, left, middle);
        atRight = atMiddle;
        atMiddle = atLeft;
        atLeft = density.at(next);
      } else {
        return;
      }
    }
    throw new IllegalArgumentException("bug: a density without a top");
  }

  private void shift(double toLeft, double toMiddle, double toRight) {
    left = toLeft;
    middle = toMiddle;
    right = toRight;
  }

  private void narrow() {
    for (int tries = 0; tries < MOST_TRIES && !isNear(); tries++) {
      double vertex = vertex();
      double least = TOO_NEAR * (right - left);
      boolean isUseful =
          vertex > left && vertex < right && Math.abs(vertex - middle) > least && tries % 2 == 0;
      keep(isUseful ? vertex : middleOfLargerSide());
    }
  }

  private boolean isNear() {
    double rise = (atMiddle - atLeft) / (middle - left) * (right - middle);
    double fall = (atMiddle - atRight) / (right - middle) * (middle - left);
    return rise <= NEAR && fall <= NEAR;
  }

  private double vertex() {
    double toLeft = middle - left;
    double toRight = right - middle;
    double fromLeft = atMiddle - atLeft;
    double fromRight = atMiddle - atRight;
    double shift =
        (toRight * toRight * fromLeft - toLeft * toLeft * fromRight)
            / (toRight * fromLeft + toLeft * fromRight);
    return middle + HALF * shift;
  }

  private double middleOfLargerSide() {
    return middle - left > right - middle ? HALF * (left + middle) : HALF * (middle + right);
  }

  private void keep(double point) {
    double value = density.at(point);
    if (value > atMiddle) {
      if (point > middle) {
        left = middle;
        atLeft = atMiddle;
      } else {
        right = middle;
        atRight = atMiddle;
      }
      middle = point;
      atMiddle = value;
    } else if (point > middle) {
      right = point;
      atRight = value;
    } else {
      left = point;
      atLeft = value;
    }
  }

  /** How far the stretch reaches to one side. */
  private double end(int side, double guess) {
    double near = 0;
    double far = Double.POSITIVE_INFINITY;
    double distance = guess;
    for (int tries = 0; tries < MOST_TRIES; tries++) {
      double fall = atMiddle - density.at(middle + side * distance);
      if (fall >= LEAST_FALL && fall <= MOST_FALL) {
        return middle + side * distance;
      }
      if (fall < LEAST_FALL) {
        near = distance;
      } else {
        far = distance;
      }
      double next = fall > 0 ? distance * Math.sqrt(AIMED_FALL / fall) : 2 * distance;
      boolean isInside = next > near && next < far && (tries + 1) % BISECT_EACH != 0;
      distance = isInside ? next : between(near, far);
    }
    throw new IllegalArgumentException("bug: a density without an end");
  }

  private static double between(double near, double far) {
    return Double.isInfinite(far) ? 2 * near : HALF * (near + far);
  }
}
