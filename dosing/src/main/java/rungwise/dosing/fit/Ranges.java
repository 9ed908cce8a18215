package rungwise.dosing.fit;

/** Between what each parameter is searched: what a population of the model may be. */
final class Ranges {

  private static final double MOST_MEAN = 6;
  private static final double LEAST_SPREAD = 0.05;
  private static final double MOST_OMEGA = 2.5;
  private static final double MOST_BETA = 8;
  private static final double LEAST_C = 1e-3;
  private static final double MOST_C = 40;
  private static final double MOST_D0 = 12;
  private static final double MOST_D1 = 4;
  private static final double MOST_TAU = 3;

  /** So near to an end, on its scale, a parameter is at it. */
  private static final double NEAR = 1e-6;

  private final Layout layout;
  private final double[] low;
  private final double[] high;

  Ranges(Layout layout) {
    this.layout = layout;
    low = new double[layout.size()];
    high = new double[layout.size()];
    for (int place = 0; place < layout.place(Point.OMEGA); place++) {
      set(place, -MOST_MEAN, MOST_MEAN);
    }
    set(layout.place(Point.OMEGA), LEAST_SPREAD, MOST_OMEGA);
    set(layout.place(Point.BETA), LEAST_SPREAD, MOST_BETA);
    set(layout.place(Point.C2), -LEAST_C, -MOST_C);
    set(layout.place(Point.C4), LEAST_C, MOST_C);
    set(layout.place(Point.D0), -MOST_D0, MOST_D0);
    set(layout.place(Point.D1), 0, MOST_D1);
    set(layout.place(Point.TAU), LEAST_SPREAD, MOST_TAU);
  }

  private void set(int place, double least, double most) {
    low[place] = layout.scale(place).scaled(least);
    high[place] = layout.scale(place).scaled(most);
  }

  /** Holds a parameter of {@link Point} where it is. */
  void hold(int slope, double scaled) {
    low[layout.place(slope)] = scaled;
    high[layout.place(slope)] = scaled;
  }

  double[] low() {
    return low;
  }

  double[] high() {
    return high;
  }

  /** Whether every parameter lies between its ends. */
  boolean holds(double[] scaled) {
    for (int place = 0; place < scaled.length; place++) {
      if (!(scaled[place] >= low[place] && scaled[place] <= high[place])) {
        return false;
      }
    }
    return true;
  }

  boolean isHeld(int place) {
    return low[place] == high[place];
  }

  boolean isAtEnd(int place, double scaled) {
    return scaled <= low[place] + NEAR || scaled >= high[place] - NEAR;
  }
}
