package rungwise.inference;

import java.util.function.DoubleUnaryOperator;

/**
 * Gauss and Legendre's rule with 20 points, which is exact for polynomials of degree 39. Points and
 * weights as numpy 2 computes them; Abramowitz and Stegun, table 25.4, print the same digits.
 */
public final class GaussLegendre {

  private static final double[] POINTS = {
    0.07652652113349734,
    0.22778585114164507,
    0.37370608871541955,
    0.5108670019508271,
    0.636053680726515,
    0.7463319064601508,
    0.8391169718222188,
    0.912234428251326,
    0.9639719272779138,
    0.993128599185095
  };

  private static final double[] WEIGHTS = {
    0.15275338713072628,
    0.14917298647260424,
    0.1420961093183824,
    0.1316886384491769,
    0.1181945319615186,
    0.1019301198172407,
    0.08327674157670471,
    0.06267204833410879,
    0.040601429800386446,
    0.017614007139150893
  };

  private GaussLegendre() {}

  /**
   * The integral over a stretch.
   *
   * @param half half the length of the stretch; below 0 for the integral from right to left
   */
  public static double integral(DoubleUnaryOperator function, double centre, double half) {
    double sum = 0;
    for (int i = 0; i < POINTS.length; i++) {
      double shift = half * POINTS[i];
      sum +=
          WEIGHTS[i]
              * (function.applyAsDouble(centre - shift) + function.applyAsDouble(centre + shift));
    }
    return sum * half;
  }
}
