package rungwise.dosing.fit;

/** How a parameter is written where it is searched or drawn, so that every number is allowed. */
enum Scale {
  PLAIN,
  LOG,
  LOG_OF_NEGATIVE;

  /** The parameter itself. */
  double natural(double scaled) {
    return switch (this) {
      case PLAIN -> scaled;
      case LOG -> Math.exp(scaled);
      case LOG_OF_NEGATIVE -> -Math.exp(scaled);
    };
  }

  double scaled(double natural) {
    return switch (this) {
      case PLAIN -> natural;
      case LOG -> Math.log(natural);
      case LOG_OF_NEGATIVE -> Math.log(-natural);
    };
  }

  /** The first derivative of the parameter itself, which for the exponentials is it again. */
  double slope(double scaled) {
    return this == PLAIN ? 1 : natural(scaled);
  }

  /** The second derivative. */
  double curvature(double scaled) {
    return this == PLAIN ? 0 : natural(scaled);
  }
}
