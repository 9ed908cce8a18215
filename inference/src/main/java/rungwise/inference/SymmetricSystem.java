package rungwise.inference;

import java.util.Optional;

/**
 * A symmetric positive definite matrix as the product of a lower triangle and its transpose
 * (Cholesky).
 */
public final class SymmetricSystem {

  private final double[][] lower;

  private SymmetricSystem(double[][] lower) {
    this.lower = lower;
  }

  /** The matrix, of which the lower triangle is read; nothing if it is not positive definite. */
  public static Optional<SymmetricSystem> of(double[][] matrix) {
    int size = matrix.length;
    double[][] lower = new double[size][size];
    for (int row = 0; row < size; row++) {
      for (int column = 0; column <= row; column++) {
        double rest = matrix[row][column];
        for (int k = 0; k < column; k++) {
          rest -= lower[row][k] * lower[column][k];
        }
        if (column < row) {
          lower[row][column] = rest / lower[column][column];
        } else if (rest > 0 && rest < Double.POSITIVE_INFINITY) {
          lower[row][row] = Math.sqrt(rest);
        } else {
          return Optional.empty();
        }
      }
    }
    return Optional.of(new SymmetricSystem(lower));
  }

  /** The vector that the matrix turns into this one. */
  public double[] solve(double[] right) {
    double[] result = divideByLower(right);
    for (int row = result.length - 1; row >= 0; row--) {
      for (int k = row + 1; k < result.length; k++) {
        result[row] -= lower[k][row] * result[k];
      }
      result[row] /= lower[row][row];
    }
    return result;
  }

  /** The vector that the lower triangle turns into this one. */
  public double[] divideByLower(double[] right) {
    double[] result = right.clone();
    for (int row = 0; row < result.length; row++) {
      for (int k = 0; k < row; k++) {
        result[row] -= lower[row][k] * result[k];
      }
      result[row] /= lower[row][row];
    }
    return result;
  }

  /** What the lower triangle makes of a vector. */
  public double[] timesLower(double[] vector) {
    double[] result = new double[vector.length];
    for (int row = 0; row < result.length; row++) {
      for (int k = 0; k <= row; k++) {
        result[row] += lower[row][k] * vector[k];
      }
    }
    return result;
  }

  public double[][] inverse() {
    double[][] inverse = new double[lower.length][];
    for (int i = 0; i < lower.length; i++) {
      double[] unit = new double[lower.length];
      unit[i] = 1;
      inverse[i] = solve(unit);
    }
    return inverse;
  }
}
