package rungwise.inference;

/**
 * A function of several variables near one point: its value, its first and its second derivatives.
 * The arrays are not copied and are not to be changed.
 */
@SuppressWarnings("ArrayRecordComponent")
public record Curved(double value, double[] gradient, double[][] hessian) {}
