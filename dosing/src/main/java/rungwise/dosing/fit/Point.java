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
}
