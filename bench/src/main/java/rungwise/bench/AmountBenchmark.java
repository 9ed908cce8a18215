package rungwise.bench;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/** Reading, exact arithmetic and printing of one amount, in nanoseconds a call. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
public class AmountBenchmark {

  private String typedVolume = "0.2 mL";
  private String refusedVolume = "0.2 cc";
  private String typedStrength = "17.65 mg/mL";
  private Volume volume = Volume.ofMicrolitres(200);
  private Volume graduation = Volume.ofMicrolitres(10);
  private Mass wanted = Mass.ofPicograms(1_250_000);
  private Concentration strength = new Concentration(20_000);

  @Benchmark
  public Reading<Volume> readVolume() {
    return Volume.parse(typedVolume);
  }

  @Benchmark
  public Reading<Volume> refuseVolume() {
    return Volume.parse(refusedVolume);
  }

  @Benchmark
  public Reading<Concentration> readStrength() {
    return Concentration.parse(typedStrength);
  }

  @Benchmark
  public Mass contentOfVolume() {
    return strength.in(volume);
  }

  @Benchmark
  public Volume roundDownToMark() {
    return strength.volumeOf(wanted).roundDownTo(graduation);
  }

  @Benchmark
  public String printVolume() {
    return volume.toString();
  }
}
