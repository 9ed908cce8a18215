package rungwise.dosing.predictive;

/**
 * What one report was to be, foreseen from the man's earlier ones, as probabilities.
 *
 * @param atLeast2 of grade 2 or more
 * @param useful of grade 3 or 4
 * @param atLeast4 of grade 4
 * @param useful60 of grade 3 or 4, and 60 minutes or longer
 * @param useful120 of grade 3 or 4, and 120 minutes or longer
 * @param useful240 of grade 3 or 4, and 240 minutes or longer
 */
record Ahead(
    double atLeast2,
    double useful,
    double atLeast4,
    double useful60,
    double useful120,
    double useful240) {

  private static final int LOWEST = 1;

  /** The grade at a place between 0 and 1, the firmest first: 4, 3, 2, 1. */
  int gradeAt(double part) {
    int grade = LOWEST;
    grade += part < atLeast2 ? 1 : 0;
    grade += part < useful ? 1 : 0;
    grade += part < atLeast4 ? 1 : 0;
    return grade;
  }

  /** The probability that a useful response lasts so long. */
  double longer(Limit limit) {
    return switch (limit) {
      case HOUR -> useful60 / useful;
      case TWO_HOURS -> useful120 / useful;
      case EMERGENCY -> useful240 / useful;
    };
  }
}
