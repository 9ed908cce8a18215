package rungwise.dosing.fit;

/** Where a search begins: what can be told from sums, and the middle of what is usual. */
final class Start {

  private static final double OMEGA = 0.8;
  private static final double BETA = 2;
  private static final double C = 1.5;
  private static final double D1 = 0.4;
  private static final double TAU = 0.5;
  private static final double D0_WITHOUT_DURATIONS = 4;

  /** How steeply the odds of a usable response rise over men with different requirements. */
  private static final double STEEPNESS = 1.3;

  private final Courses courses;
  private double doses = 0;
  private int useful = 0;
  private double logMinutes = 0;
  private int durations = 0;

  private Start(Courses courses) {
    this.courses = courses;
    for (int trial = 0; trial < courses.trials(); trial++) {
      doses += courses.logDose(trial);
      useful += courses.grade(trial) > 2 ? 1 : 0;
      if (courses.duration(trial) != Courses.NOT_KNOWN) {
        double low = courses.low(trial);
        logMinutes += Double.isFinite(low) ? low : courses.high(trial) - 1;
        durations++;
      }
    }
  }

  /** The natural parameters to begin with; the gammas are 0. */
  static double[] of(Courses courses, Layout layout) {
    var start = new Start(courses);
    double[] natural = new double[layout.size()];
    natural[0] = start.mean();
    natural[layout.place(Point.OMEGA)] = OMEGA;
    natural[layout.place(Point.BETA)] = BETA;
    natural[layout.place(Point.C2)] = -C;
    natural[layout.place(Point.C4)] = C;
    natural[layout.place(Point.D0)] =
        start.durations > 0 ? start.logMinutes / start.durations : D0_WITHOUT_DURATIONS;
    natural[layout.place(Point.D1)] = D1;
    natural[layout.place(Point.TAU)] = TAU;
    return natural;
  }

  private double mean() {
    int trials = courses.trials();
    double odds = (useful + 1.0) / (trials - useful + 1.0);
    return doses / Math.max(1, trials) - Math.log(odds) / STEEPNESS;
  }
}
