package rungwise.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;

/** Against Hipparchus 4.0.3, which decomposes in another way. */
final class SymmetricSystemTest {

  private static RealMatrix made(int size) {
    var random = new Random(4);
    RealMatrix root = MatrixUtils.createRealMatrix(size, size);
    for (int row = 0; row < size; row++) {
      for (int column = 0; column < size; column++) {
        root.setEntry(row, column, random.nextGaussian());
      }
    }
    return root.multiply(root.transpose()).add(MatrixUtils.createRealIdentityMatrix(size));
  }

  @Test
  void solution_and_inverse_are_right() {
    RealMatrix matrix = made(12);
    var other = new LUDecomposition(matrix);
    SymmetricSystem system = SymmetricSystem.of(matrix.getData()).orElseThrow();
    double[] right = matrix.getColumn(3);

    double[] unit = system.solve(right);
    double[][] inverse = system.inverse();

    for (int i = 0; i < 12; i++) {
      assertThat(unit[i]).isCloseTo(i == 3 ? 1 : 0, within(1e-12));
      assertThat(inverse[i])
          .containsExactly(other.getSolver().getInverse().getRow(i), within(1e-12));
    }
    assertThat(system.timesLower(system.divideByLower(right)))
        .containsExactly(right, within(1e-12));
  }

  @Test
  void a_matrix_that_is_not_positive_definite_is_refused() {
    assertThat(SymmetricSystem.of(new double[][] {{1, 2}, {2, 1}})).isEmpty();
    assertThat(SymmetricSystem.of(new double[][] {{Double.NaN}})).isEmpty();
  }
}
