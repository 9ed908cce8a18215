package rungwise.bench;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import rungwise.drawing.BarrelDrawing;
import rungwise.drawing.BarrelScale;
import rungwise.drawing.DrawnDose;
import rungwise.drawing.ScaleNumbers;
import rungwise.quantities.Volume;

/** One drawing of the syringe with the most lines, in microseconds. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class DrawingBenchmark {

  private DrawnDose dose =
      new DrawnDose(
          new BarrelScale(
              Volume.ofMicrolitres(1000),
              Volume.ofMicrolitres(10),
              Volume.ofMicrolitres(100),
              ScaleNumbers.U_100_UNITS,
              57),
          Volume.ofMicrolitres(640),
          "64-unit mark",
          "1 mL U-100 syringe");

  @Benchmark
  public String drawBarrel() {
    return BarrelDrawing.svg(dose, "dose");
  }
}
