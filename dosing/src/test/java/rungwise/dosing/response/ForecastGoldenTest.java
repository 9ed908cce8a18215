package rungwise.dosing.response;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Every number of the model against reference/forecasts.txt, which SciPy 1.17.1 has summed densely
 * over random and contradictory histories; its last line says how far it is from itself.
 */
final class ForecastGoldenTest {

  /** A forecast may be off by 1e-8; the largest difference seen was 2.3e-10, of a range's end. */
  private static final double PROBABILITY = 1e-9;

  /** The requirement is a number of order one, whose error enters a probability about once. */
  private static final double REQUIREMENT = 1e-8;

  private static final List<GoldenCases.Case> CASES = GoldenCases.all();

  private static void assertForecast(
      Forecast forecast, GoldenCases.Line line, int from, String as) {
    assertThat(
            List.of(
                forecast.useful(), forecast.useful60(), forecast.useful120(), forecast.useful240()))
        .as(as)
        .zipSatisfy(
            line.numbers().subList(from, from + 4),
            (ours, theirs) -> assertThat(ours).isCloseTo(theirs, within(PROBABILITY)));
  }

  @Test
  void there_are_as_many_cases_as_the_reference_program_made() {
    assertThat(CASES).hasSize(425);
    assertThat(CASES).filteredOn(one -> one.strength().isPresent()).hasSize(25);
    assertThat(CASES).filteredOn(one -> one.trials().size() == 40).hasSizeGreaterThan(70);
  }

  @Test
  void every_forecast_is_within_1e_8_of_dense_sums() {
    for (int i = 0; i < CASES.size(); i++) {
      Requirement requirement = CASES.get(i).requirement();
      for (GoldenCases.Line line : CASES.get(i).expected("forecast")) {
        assertForecast(requirement.forecast(line.number(0)), line, 1, "case " + i);
      }
    }
  }

  @Test
  void every_range_is_within_1e_8_of_dense_sums() {
    for (int i = 0; i < CASES.size(); i++) {
      Requirement requirement = CASES.get(i).requirement();
      for (GoldenCases.Line line : CASES.get(i).expected("low")) {
        assertForecast(requirement.range(line.number(0)).low(), line, 1, "low of case " + i);
      }
      for (GoldenCases.Line line : CASES.get(i).expected("high")) {
        assertForecast(requirement.range(line.number(0)).high(), line, 1, "high of case " + i);
      }
    }
  }

  @Test
  void mean_deviation_and_probability_of_every_history_are_those_of_dense_sums() {
    for (int i = 0; i < CASES.size(); i++) {
      Requirement requirement = CASES.get(i).requirement();
      var posterior = CASES.get(i).expected("posterior").getFirst();

      assertThat(requirement.mean())
          .as("case %d", i)
          .isCloseTo(posterior.number(0), within(REQUIREMENT));
      assertThat(requirement.standardDeviation())
          .as("case %d", i)
          .isCloseTo(posterior.number(1), within(REQUIREMENT));
      // A logarithm of a number as small as exp(-1000): relative to its size.
      assertThat(requirement.logProbabilityOfTrials())
          .as("case %d", i)
          .isCloseTo(posterior.number(2), within(1e-9 + 1e-11 * Math.abs(posterior.number(2))));
    }
  }

  @Test
  void the_median_minutes_of_a_usable_response_are_those_of_dense_sums() {
    for (int i = 0; i < CASES.size(); i++) {
      var median = CASES.get(i).expected("median").getFirst();

      // Where next to no requirement allows a usable response the median is badly determined.
      assertThat(
              CASES.get(i).requirement().medianMinutesIfUseful(median.number(0)) / median.number(1))
          .as("case %d", i)
          .isCloseTo(1, within(1e-6));
    }
  }

  @Test
  void an_uncertain_delivery_is_integrated_as_densely() {
    var withSpread = CASES.stream().filter(one -> !one.expected("spread").isEmpty()).toList();
    for (GoldenCases.Case one : withSpread) {
      var line = one.expected("spread").getFirst();
      var delivery = new Delivery(line.number(1), line.number(2), line.number(3), line.number(4));

      assertForecast(delivery.forecast(one.requirement(), line.number(0)), line, 5, "spread");
    }
    assertThat(withSpread).hasSize(10);
  }
}
