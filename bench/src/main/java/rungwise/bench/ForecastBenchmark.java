package rungwise.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Forecast;
import rungwise.dosing.response.Given;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.response.Population;
import rungwise.dosing.response.Requirement;
import rungwise.dosing.response.Trial;
import rungwise.quantities.Volume;

/** One posterior and its forecasts, four probabilities a volume, in microseconds. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class ForecastBenchmark {

  private static final String GROUP = "vasculogenic";
  private static final int STEP = 10;
  private static final int RUNGS = 4;

  /** In the middle of the range that the forecasts are tested over. */
  private static final Population POPULATION =
      new Population(0.8, Map.of(GROUP, 0.0), 0.9, 2.2, -1.4, 1.6, 3.8, 0.6, 0.45);

  @Param({"10", "50"})
  int volumes;

  @Param({"0", "10", "40"})
  int injections;

  private final List<Trial> trials = new ArrayList<>();
  private final List<Double> doses = new ArrayList<>();

  /** Rising doses; some reports say how long exactly, some at least, some between two looks. */
  @Setup
  public void fill() {
    for (int i = 0; i < injections; i++) {
      Grade grade = Grade.of(i % Grade.values().length).orElseThrow();
      double minutes = 30 + i;
      Lasted lasted =
          switch (i % RUNGS) {
            case 0 -> new Lasted.Exactly(minutes);
            case 1 -> new Lasted.AtLeast(minutes);
            case 2 -> new Lasted.Between(minutes, 2 * minutes);
            default -> new Lasted.NotRecorded();
          };
      trials.add(new Trial(dose(1 + i % RUNGS), grade, lasted));
    }
    for (int i = 1; i <= volumes; i++) {
      doses.add(dose(i));
    }
  }

  private static double dose(int marks) {
    return new Given(Volume.ofMicrolitres((long) marks * STEP), 1, 1).logDose();
  }

  @Benchmark
  public List<Forecast> forecasts() {
    Requirement requirement = Requirement.of(POPULATION, GROUP, trials);
    var forecasts = new ArrayList<Forecast>(doses.size());
    for (double dose : doses) {
      forecasts.add(requirement.forecast(dose));
    }
    return forecasts;
  }
}
