package rungwise.clinic.forecast;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.function.ToDoubleFunction;
import rungwise.dosing.response.Forecast;
import rungwise.dosing.response.ForecastRange;

/**
 * A chance, and between what it lies for nine in ten such men, each from 0 to 1. Where a large
 * chance is the dangerous one it is rounded up.
 */
public record Chance(double middle, double low, double high, RoundingMode rounding) {

  private static final double PERCENT = 100;

  /** From here on whole percents are all that can be meant. */
  private static final double WHOLE_FROM = 10;

  private static final double SMALLEST = 0.1;
  private static final double LARGEST = 99.9;

  static Chance of(
      Forecast forecast,
      ForecastRange range,
      ToDoubleFunction<Forecast> part,
      RoundingMode rounding) {
    return new Chance(
        part.applyAsDouble(forecast),
        part.applyAsDouble(range.low()),
        part.applyAsDouble(range.high()),
        rounding);
  }

  /** "62 %". */
  public String words() {
    return percent(middle);
  }

  /** "41 to 80 %". */
  public String rangeWords() {
    String lower = percent(low);
    String upper = percent(high);
    return lower.equals(upper) ? lower : lower.replace(" %", "") + " to " + upper;
  }

  private String percent(double chance) {
    double number = chance * PERCENT;
    if (number < SMALLEST) {
      return "below 0.1 %";
    }
    if (number > LARGEST) {
      return "above 99.9 %";
    }
    return BigDecimal.valueOf(number)
            .setScale(number < WHOLE_FROM ? 1 : 0, rounding)
            .stripTrailingZeros()
            .toPlainString()
        + " %";
  }
}
