package rungwise.dosing.response;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rungwise.dosing.history.Grade;

/**
 * A firmer or longer report never lowers the chance of a long response, at any volume. All
 * histories of up to three reports at two doses are walked through, under three populations.
 *
 * <p>Two reports are compared where each is fuller of the same kind: a duration counts from grade 3
 * on only, so a report of grade 2 with a duration is not less than one of grade 3 with the same.
 */
final class MonotoneTest {

  /** What rounding may do; a probability is right to 1e-8. */
  private static final double ROUNDING = 1e-11;

  private static final String GROUP = "all";
  private static final List<Double> DOSES = List.of(0.0, 0.9);
  private static final List<Double> VOLUMES = List.of(-0.7, 0.2, 0.9, 1.7);

  /** A report without its dose. */
  private record Report(Grade grade, Lasted lasted) {}

  private static final Lasted NONE = new Lasted.NotRecorded();
  private static final Report NOTHING = new Report(Grade.NONE, NONE);
  private static final Report FULLER = new Report(Grade.FULLER, NONE);
  private static final Report FIRM = new Report(Grade.FIRM_NOT_USABLE, NONE);
  private static final Report USABLE = new Report(Grade.USABLE, NONE);
  private static final Report FULL = new Report(Grade.FULLY_FIRM, NONE);
  private static final Report USABLE_30 = new Report(Grade.USABLE, new Lasted.Exactly(30));
  private static final Report USABLE_30_90 = new Report(Grade.USABLE, new Lasted.Between(30, 90));
  private static final Report USABLE_90 = new Report(Grade.USABLE, new Lasted.Exactly(90));
  private static final Report FULL_90 = new Report(Grade.FULLY_FIRM, new Lasted.Exactly(90));
  private static final Report USABLE_FROM_90 = new Report(Grade.USABLE, new Lasted.AtLeast(90));
  private static final Report USABLE_FROM_240 = new Report(Grade.USABLE, new Lasted.AtLeast(240));

  /** Each pair: the first is less firm or shorter than the second. */
  private static final List<List<Report>> RISING =
      List.of(
          List.of(NOTHING, FULLER),
          List.of(FULLER, FIRM),
          List.of(FIRM, USABLE),
          List.of(USABLE, FULL),
          List.of(USABLE_30, USABLE_30_90),
          List.of(USABLE_30_90, USABLE_90),
          List.of(USABLE_90, FULL_90),
          List.of(USABLE_90, USABLE_FROM_90),
          List.of(USABLE, USABLE_FROM_90),
          List.of(USABLE_FROM_90, USABLE_FROM_240),
          List.of(FIRM, USABLE_FROM_240));

  static List<Population> populations() {
    return List.of(
        new Population(0.8, Map.of(GROUP, 0.0), 0.9, 2.2, -1.4, 1.6, 3.8, 0.6, 0.45),
        new Population(0.3, Map.of(GROUP, 0.0), 1.6, 4, -3, 0.5, 4.4, 1.2, 0.2),
        new Population(1.5, Map.of(GROUP, 0.0), 0.3, 1, -0.5, 2.5, 3.2, 0, 0.8));
  }

  private final Map<List<Trial>, List<Forecast>> known = new HashMap<>();

  private List<Forecast> forecasts(Population population, List<Trial> history) {
    return known.computeIfAbsent(
        history,
        trials -> {
          Requirement requirement = Requirement.of(population, GROUP, trials);
          return VOLUMES.stream().map(requirement::forecast).toList();
        });
  }

  private static List<List<Trial>> histories(int length) {
    if (length == 0) {
      return List.of(List.of());
    }
    var histories = new ArrayList<List<Trial>>();
    for (List<Trial> shorter : histories(length - 1)) {
      for (Report report : RISING.stream().flatMap(List::stream).distinct().toList()) {
        for (double dose : DOSES) {
          histories.add(plus(shorter, new Trial(dose, report.grade(), report.lasted())));
        }
      }
    }
    return histories;
  }

  private static List<Trial> plus(List<Trial> history, Trial trial) {
    var longer = new ArrayList<>(history);
    longer.add(trial);
    return List.copyOf(longer);
  }

  @ParameterizedTest
  @MethodSource("populations")
  void a_firmer_or_longer_report_never_lowers_the_chance_of_a_long_response(Population population) {
    int compared = 0;
    for (int length = 0; length < 3; length++) {
      for (List<Trial> history : histories(length)) {
        for (List<Report> pair : RISING) {
          for (double dose : DOSES) {
            List<Trial> less = plus(history, trial(dose, pair.getFirst()));
            List<Trial> more = plus(history, trial(dose, pair.getLast()));
            assertNotLower(forecasts(population, less), forecasts(population, more), more);
            compared++;
          }
        }
      }
    }
    assertThat(compared).isEqualTo(22 * (1 + 22 + 22 * 22));
  }

  private static Trial trial(double dose, Report report) {
    return new Trial(dose, report.grade(), report.lasted());
  }

  private static void assertNotLower(List<Forecast> less, List<Forecast> more, Object as) {
    for (int i = 0; i < VOLUMES.size(); i++) {
      double[] below = numbers(less.get(i));
      double[] above = numbers(more.get(i));
      for (int k = 0; k < below.length; k++) {
        if (!(above[k] >= below[k] - ROUNDING)) {
          throw new AssertionError(
              as + " lowers " + Arrays.toString(below) + " to " + Arrays.toString(above));
        }
      }
    }
  }

  private static double[] numbers(Forecast forecast) {
    return new double[] {
      forecast.useful(), forecast.useful60(), forecast.useful120(), forecast.useful240()
    };
  }

  @ParameterizedTest
  @MethodSource("populations")
  void more_is_never_less_likely_to_be_useful_or_long(Population population) {
    for (List<Trial> history : histories(2)) {
      List<Forecast> forecasts = forecasts(population, history);
      for (int i = 1; i < VOLUMES.size(); i++) {
        double[] below = numbers(forecasts.get(i - 1));
        double[] above = numbers(forecasts.get(i));
        for (int k = 0; k < below.length; k++) {
          assertThat(above[k]).isGreaterThanOrEqualTo(below[k] - ROUNDING);
        }
      }
    }
  }
}
