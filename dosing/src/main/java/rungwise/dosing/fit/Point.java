package rungwise.dosing.fit;

/**
 * The parameters as one man's reports see them: those of the model, with the mean requirement of
 * each group, and no check of their ranges.
 *
 * @param means mu + gamma of each group, in the order of the courses' groups
 */
@SuppressWarnings("ArrayRecordComponent")
record Point(
    double[] means,
    double omega,
    double beta,
    double c2,
    double c4,
    double d0,
    double d1,
    double tau) {

  /** Thresholds are numbered by what is passed: 0 for c_2, 1 for c_3, 2 for c_4. */
  static final int THRESHOLDS = 3;

  double threshold(int number) {
    return switch (number) {
      case 0 -> c2;
      case 1 -> 0;
      default -> c4;
    };
  }

  // Where the derivatives by these parameters stand: eight first ones, and the upper triangle of
  // the second ones.
  static final int MEAN = 0;
  static final int OMEGA = 1;
  static final int BETA = 2;
  static final int C2 = 3;
  static final int C4 = 4;
  static final int D0 = 5;
  static final int D1 = 6;
  static final int TAU = 7;
  static final int COUNT = 8;

  /** Of the upper triangle. */
  static final int PAIRS = COUNT * (COUNT + 1) / 2;

  private static final int[] START = starts();

  private static int[] starts() {
    int[] starts = new int[COUNT];
    int start = 0;
    for (int row = 0; row < COUNT; row++) {
      starts[row] = start - row;
      start += COUNT - row;
    }
    return starts;
  }

  /** The place of a second derivative; the lower number first. */
  static int pair(int lower, int upper) {
    return START[lower] + upper;
  }
}
