package rungwise.dosing.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The fit against reference/fit_scipy.txt and against ordinal::clmm. */
final class FittingTest {

  private static Fit fit(Courses courses, String reference) {
    return Fitting.fit(courses, reference, Workers.alone(), pass -> {});
  }

  @ParameterizedTest
  @ValueSource(strings = {"n60", "n300", "n1000", "n5000"})
  void it_is_that_of_dense_sums_by_scipy(String name) {
    Courses courses = ReferenceFits.courses(name);
    ReferenceFits.Printed expected = ReferenceFits.of("fit_scipy", name);
    String reference = ReferenceFits.referenceOf("fit_scipy", name);

    Fit fit = fit(courses, reference);

    assertThat(Fitting.mostFrequentGroup(courses)).contains(reference);
    assertThat(fit.parameters()).hasSize(expected.estimates().size() - 1);
    assertThat(fit.log()).isCloseTo(expected.of("logLik").value(), within(1e-6));
    fit.parameters()
        .forEach(
            (parameter, estimate) -> {
              ReferenceFits.Estimate wanted = expected.of(parameter);
              assertThat(estimate.value())
                  .as(parameter)
                  .isCloseTo(wanted.value(), near(wanted.value()));
              assertThat(estimate.error().orElseThrow())
                  .as("error of " + parameter)
                  .isCloseTo(wanted.error(), near(wanted.error()));
            });
  }

  private static Offset<Double> near(double value) {
    return within(1e-6 * Math.abs(value));
  }

  @Test
  void grades_alone_are_fitted_as_by_clmm() {
    ReferenceFits.Printed expected = ReferenceFits.of("fit_clmm", "grades");

    Fit fit = fit(ReferenceFits.courses("grades"), "vasculogenic");

    assertThat(fit.population()).isEmpty();
    assertThat(fit.doubts()).containsExactly(new Doubt.NoDurations());
    assertThat(fit.log()).isCloseTo(expected.of("logLik").value(), within(1e-6));
    fit.parameters()
        .forEach(
            (parameter, estimate) ->
                assertThat(estimate.value())
                    .as(parameter)
                    .isCloseTo(expected.of(parameter).value(), within(1e-5)));
  }
}
