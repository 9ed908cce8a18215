package rungwise.dosing.response;

import rungwise.dosing.syringe.DrawingError;

/**
 * How far the amount that reaches him may lie from the amount that is meant. Each part is uniform
 * between its limits, independent of the others: reading and barrel add to the volume, the label's
 * tolerance and the loss of strength multiply it. That a part is uniform is an assumption; the
 * limits are those of the error budget.
 *
 * @param reading half a graduation as a part of the volume
 * @param barrel the barrel's permitted deviation as a part of the volume
 * @param label the permitted deviation from the labelled strength, as a part of it
 * @param mostLost the largest part of the strength that time and warmth may have taken
 */
public record Delivery(double reading, double barrel, double label, double mostLost) {

  private static final double PERCENT = 100;

  /** Points and weights of Gauss and Legendre's rule with 8 points (numpy 2). */
  private static final double[] POINTS = {
    0.18343464249564984, 0.525532409916329, 0.7966664774136267, 0.9602898564975362
  };

  private static final double[] WEIGHTS = {
    0.36268378337836205, 0.31370664587788705, 0.22238103445337445, 0.10122853629037676
  };

  private static final int COUNT = 8;

  public Delivery {
    boolean isSound =
        reading >= 0
            && barrel >= 0
            && label >= 0
            && mostLost >= 0
            && reading + barrel < 1
            && label < 1
            && mostLost < 1;
    if (!isSound) {
      throw new IllegalArgumentException(
          "bug: a delivery of " + reading + ", " + barrel + ", " + label + ", " + mostLost);
    }
  }

  /** The error budget of a volume in a syringe, of a product that keeps its label's tolerance. */
  public static Delivery of(DrawingError error, double mostLost) {
    return new Delivery(
        error.readingPercent() / PERCENT,
        error.tolerancePercent() / PERCENT,
        DrawingError.LABEL_TOLERANCE_PERCENT.value() / PERCENT,
        mostLost);
  }

  /** The least that may be delivered, as a part of what is meant. */
  public double least() {
    return (1 - reading - barrel) * (1 - label) * (1 - mostLost);
  }

  /** The most that may be delivered, as a part of what is meant. */
  public double most() {
    return (1 + reading + barrel) * (1 + label);
  }

  /** The forecast of an amount, averaged over what may be delivered. */
  public Forecast forecast(Requirement requirement, double logDose) {
    var sums = new double[4];
    for (int r = 0; r < COUNT; r++) {
      for (int b = 0; b < COUNT; b++) {
        double drawn = Math.log1p(reading * point(r) + barrel * point(b));
        double weight = weight(r) * weight(b);
        overStrength(requirement, logDose + drawn, weight, sums);
      }
    }
    return new Forecast(sums[0], sums[1], sums[2], sums[2 + 1]);
  }

  private void overStrength(Requirement requirement, double logDose, double weight, double[] sums) {
    for (int l = 0; l < COUNT; l++) {
      for (int q = 0; q < COUNT; q++) {
        double left = 1 - mostLost * (1 + point(q)) / 2;
        double shift = Math.log1p(label * point(l)) + Math.log(left);
        add(requirement.forecast(logDose + shift), weight * weight(l) * weight(q), sums);
      }
    }
  }

  private static void add(Forecast forecast, double weight, double[] sums) {
    sums[0] += weight * forecast.useful();
    sums[1] += weight * forecast.useful60();
    sums[2] += weight * forecast.useful120();
    sums[2 + 1] += weight * forecast.useful240();
  }

  private static double point(int index) {
    return index % 2 == 0 ? POINTS[index / 2] : -POINTS[index / 2];
  }

  /** The weights of a mean, so they sum to 1. */
  private static double weight(int index) {
    return WEIGHTS[index / 2] / 2;
  }
}
