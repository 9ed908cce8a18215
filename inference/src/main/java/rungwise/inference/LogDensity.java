package rungwise.inference;

/** The logarithm of a density, known up to a constant. */
@FunctionalInterface
public interface LogDensity {

  /** Its value at a point; never more than a finite number, and perhaps minus infinity. */
  double at(double point);
}
