package rungwise.bench;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import rungwise.dosing.Dosing;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.history.Circumstances;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Stock;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.ladder.LadderProposal;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Screening;
import rungwise.dosing.syringe.Barrels;
import rungwise.files.ProtocolFile;
import rungwise.files.SampleProtocols;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** Advice by rule under the sample protocol, in microseconds a call. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class AdviceBenchmark {

  private static final Instant START = Instant.parse("2026-03-02T20:00:00Z");
  private static final Duration APART = Duration.ofDays(3);
  private static final SoftAfter SHORT = new SoftAfter.Exactly(TimeSpan.ofMinutes(40));

  @Param({"3", "40"})
  private int injections;

  private Question question = question(1);

  @Setup
  public void ask() {
    question = question(injections);
  }

  private static Question question(int count) {
    Protocol protocol = ProtocolFile.read(SampleProtocols.documents().getFirst()).orThrow();
    Ladder ladder =
        LadderProposal.of(
                protocol,
                SamplePreparations.ALPROSTADIL_20,
                Barrels.U100_1,
                AetiologyGroup.VASCULOGENIC)
            .orThrow()
            .ladder();
    Volume second = ladder.rungs().get(1);
    var history = new ArrayList<Injection>();
    for (int entry = 1; entry <= count; entry++) {
      history.add(
          new Injection(
              entry,
              START.plus(APART.multipliedBy(entry)),
              ladder.preparation(),
              second,
              Optional.of(second),
              Grade.FIRM_NOT_USABLE,
              SHORT,
              SimpleCauses.NONE_FOUND,
              Injection.Setting.CLINIC_OBSERVED,
              Stock.NOT_RECORDED));
    }
    return new Question(
        AetiologyGroup.VASCULOGENIC,
        Screening.all(Answer.NO, START),
        EnumSet.allOf(Readiness.class),
        protocol,
        ladder,
        History.of(history),
        Optional.empty(),
        Circumstances.NONE,
        START.plus(APART.multipliedBy(count + 1L)));
  }

  @Benchmark
  public Advice advise() {
    return Dosing.advise(question);
  }
}
