package rungwise.dosing.response;

import rungwise.dosing.known.DurationLimits;
import rungwise.inference.Normal;
import rungwise.quantities.TimeSpan;

/**
 * What one amount may do, as probabilities.
 *
 * @param useful a response of grade 3 or 4
 * @param useful60 such a response, and it lasts 60 minutes or longer
 * @param useful120 such a response, and it lasts 120 minutes or longer
 * @param useful240 such a response, and it lasts 240 minutes or longer
 */
public record Forecast(double useful, double useful60, double useful120, double useful240) {

  static final double LOG_60 = logMinutes(DurationLimits.NO_HIGHER_DOSE.value());
  static final double LOG_120 = logMinutes(DurationLimits.CLOSES_VOLUME.value());
  static final double LOG_240 = logMinutes(DurationLimits.EMERGENCY.value());

  /** For a man whose requirement is known. */
  static Forecast at(Population population, double logDose, double requirement) {
    double useful = 1 / (1 + Math.exp(-population.beta() * (logDose - requirement)));
    double surplus =
        population.surplus(logDose, 0) - population.surplusPerRequirement() * requirement;
    double tau = population.tau();
    return new Forecast(
        useful,
        useful * Normal.cdf(surplus - LOG_60 / tau),
        useful * Normal.cdf(surplus - LOG_120 / tau),
        useful * Normal.cdf(surplus - LOG_240 / tau));
  }

  private static double logMinutes(TimeSpan span) {
    return Math.log(span.ratioTo(TimeSpan.ofMinutes(1)));
  }
}
