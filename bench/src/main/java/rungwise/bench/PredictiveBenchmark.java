package rungwise.bench;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import rungwise.app.fit.ThreadWorkers;
import rungwise.dosing.fit.Courses;
import rungwise.dosing.fit.Posterior;
import rungwise.dosing.predictive.Predicted;
import rungwise.dosing.predictive.PredictiveCheck;
import rungwise.dosing.response.Population;

/**
 * A predictive check of as many courses as are looked at, once in a virtual machine that has just
 * started and has the light compiler only, as the launcher starts it.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 3, jvmArgsAppend = "-XX:TieredStopAtLevel=1")
@Warmup(iterations = 0)
@Measurement(iterations = 1)
public class PredictiveBenchmark {

  private static final Population CENTRE =
      new Population(
          0, Map.of("vasculogenic", 0.0, "neurogenic", 1.0), 0.8, 2.2, -1.5, 1.7, 3.8, 0.6, 0.5);

  private static final double APART = 0.001;

  private static final List<Population> DRAWS =
      IntStream.range(0, Posterior.SAMPLE).mapToObj(PredictiveBenchmark::draw).toList();

  @Param({"8", "40"})
  int injections;

  @Param({"1", "2"})
  int threads;

  private static Population draw(int number) {
    double moved = number * APART;
    return new Population(
        CENTRE.mu() + moved,
        CENTRE.gammas(),
        CENTRE.omega() + moved,
        CENTRE.beta() + moved,
        CENTRE.c2(),
        CENTRE.c4(),
        CENTRE.d0(),
        CENTRE.d1(),
        CENTRE.tau() + moved);
  }

  @Benchmark
  public Predicted check() {
    Courses courses = FitBenchmark.made(PredictiveCheck.MOST_COURSES, injections);
    try (var workers = new ThreadWorkers(threads)) {
      return PredictiveCheck.of(courses, DRAWS, new Random(1), workers);
    }
  }
}
