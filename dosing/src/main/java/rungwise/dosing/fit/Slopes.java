package rungwise.dosing.fit;

/**
 * Where the derivatives by one man's parameters stand: eight first ones, and the upper triangle of
 * the second ones.
 */
final class Slopes {

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

  private Slopes() {}

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
