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
 * @param overShortest of the very grade that was reported, and longer than the shortest time that
 *     the report allows; 0 where it tells nothing of a time
 * @param overLongest the same of the longest time
 */
record Ahead(
    double atLeast2,
    double useful,
    double atLeast4,
    double useful60,
    double useful120,
    double useful240,
    double overShortest,
    double overLongest) {

  private static final int LOWEST = 1;

  /** The grade at a place between 0 and 1, the firmest first: 4, 3, 2, 1. */
  int gradeAt(double part) {
    int grade = LOWEST;
    grade += part < atLeast2 ? 1 : 0;
    grade += part < useful ? 1 : 0;
    grade += part < atLeast4 ? 1 : 0;
    return grade;
  }

  /** The probabilities of grades 1 to 4, in this order. */
  double[] grades() {
    return new double[] {1 - atLeast2, atLeast2 - useful, useful - atLeast4, atLeast4};
  }

  /** The sum of both, part by part. */
  Ahead plus(Ahead other) {
    return new Ahead(
        atLeast2 + other.atLeast2,
        useful + other.useful,
        atLeast4 + other.atLeast4,
        useful60 + other.useful60,
        useful120 + other.useful120,
        useful240 + other.useful240,
        overShortest + other.overShortest,
        overLongest + other.overLongest);
  }

  Ahead times(double factor) {
    return new Ahead(
        atLeast2 * factor,
        useful * factor,
        atLeast4 * factor,
        useful60 * factor,
        useful120 * factor,
        useful240 * factor,
        overShortest * factor,
        overLongest * factor);
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
