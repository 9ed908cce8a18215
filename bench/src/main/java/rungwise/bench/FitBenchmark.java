package rungwise.bench;

import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import rungwise.app.fit.ThreadWorkers;
import rungwise.dosing.fit.Courses;
import rungwise.dosing.fit.Fit;
import rungwise.dosing.fit.Fitting;
import rungwise.dosing.fit.Posterior;
import rungwise.dosing.fit.Posteriors;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Lasted;

/**
 * A fit with standard errors, and a posterior, each once in a virtual machine that has just started
 * and has the light compiler only, as the launcher starts it.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 3, jvmArgsAppend = "-XX:TieredStopAtLevel=1")
@Warmup(iterations = 0)
@Measurement(iterations = 1)
public class FitBenchmark {

  private static final int INJECTIONS = 8;
  private static final int COURSES_OF_POSTERIOR = 1000;
  private static final int INJECTIONS_OF_POSTERIOR = 6;
  private static final double[] THRESHOLDS = {-1.5, 0, 1.7};
  private static final double BETA = 2.2;
  private static final double OMEGA = 0.8;
  private static final double D0 = 3.8;
  private static final double D1 = 0.6;
  private static final double TAU = 0.5;
  private static final int MARKS = 10;
  private static final int KINDS = 4;
  private static final int STEP = 15;

  @Param({"5000", "100000"})
  int courses;

  @Param({"1", "2"})
  int threads;

  private Courses fitted = Courses.builder().build();
  private Courses drawn = Courses.builder().build();

  /** Courses from the model; of the durations three in four are known, two of them exactly. */
  @Setup
  public void fill() {
    fitted = made(courses, INJECTIONS);
    drawn = made(COURSES_OF_POSTERIOR, INJECTIONS_OF_POSTERIOR);
  }

  static Courses made(int count, int injections) {
    var random = new Random(1);
    Courses.Builder builder = Courses.builder();
    for (int course = 0; course < count; course++) {
      builder.course(course % 2 == 0 ? "vasculogenic" : "neurogenic");
      double requirement = course % 2 + OMEGA * random.nextGaussian();
      for (int injection = 0; injection < injections; injection++) {
        double dose = Math.log((1 + random.nextInt(MARKS)) / 2.0);
        builder.trial(dose, grade(random, dose - requirement), lasted(random, dose - requirement));
      }
    }
    return builder.build();
  }

  private static Grade grade(Random random, double surplus) {
    double uniform = random.nextDouble();
    double latent = BETA * surplus + Math.log(uniform / (1 - uniform));
    int grade = 1;
    for (double threshold : THRESHOLDS) {
      grade += latent > threshold ? 1 : 0;
    }
    return Grade.of(grade).orElseThrow();
  }

  private static Lasted lasted(Random random, double surplus) {
    double minutes = Math.exp(D0 + D1 * surplus + TAU * random.nextGaussian());
    double from = Math.floor(minutes / STEP) * STEP;
    return switch (random.nextInt(KINDS)) {
      case 0 -> new Lasted.NotRecorded();
      case 1 -> new Lasted.Between(from, from + STEP);
      default -> new Lasted.Exactly(minutes);
    };
  }

  @Benchmark
  public Fit fit() {
    try (var workers = new ThreadWorkers(threads)) {
      return Fitting.fit(fitted, "vasculogenic", workers, pass -> {});
    }
  }

  /** Of 1,000 courses of six injections, the search included, whatever the courses of the fit. */
  @Benchmark
  public Posterior posterior() {
    try (var workers = new ThreadWorkers(threads)) {
      Fit start = Fitting.fit(drawn, "vasculogenic", workers, pass -> {});
      return Posteriors.of(drawn, start, workers, new Random(1), pass -> {});
    }
  }
}
