package rungwise.dosing.ladder;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.protocol.ProtocolAmount;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.dosing.syringe.DrawingError;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/**
 * The ladder that a protocol makes of a preparation and a syringe, for a prescriber to sign.
 *
 * @param notes what a reader must know: each step that was rounded down, and why the ladder ends
 */
public record LadderProposal(Ladder ladder, List<String> notes) {

  public LadderProposal {
    notes = List.copyOf(notes);
  }

  /**
   * The ladder of a preparation that follows another one. Where its volumes carry over, the volume
   * that holds no more of any component than he tolerated becomes a step. Where they do not, the
   * protocol's own start is lowered to what he tolerated of a shared component. Where nothing was
   * tolerated and something was too long, the last line with less of everything becomes one.
   *
   * @return the proposal, or every reason why the first dose cannot be drawn
   */
  public static Reading<LadderProposal> of(
      Protocol protocol,
      Preparation preparation,
      Barrel barrel,
      AetiologyGroup group,
      Beginning beginning) {
    ProtocolAmount start = startOf(protocol, preparation, group, beginning);
    return switch (from(protocol, preparation, barrel, start)) {
      case Reading.Refused<LadderProposal> refused -> refused;
      case Reading.Read<LadderProposal> read -> read.value().from(beginning);
    };
  }

  private Reading<LadderProposal> from(Beginning beginning) {
    return switch (beginning) {
      case Beginning.AsNew asNew -> Reading.of(this);
      case Beginning.AtMost(Carried carried) ->
          carried
              .most(ladder.preparation())
              .map(most -> with(carried, most))
              .orElseGet(() -> Reading.of(this));
      case Beginning.AsTold told -> asTold(told);
      case Beginning.BelowTooLong tooLong -> below(tooLong);
    };
  }

  /**
   * The ladder of a plan whatever he tolerated, so that a course can be shown of which a late
   * report has left no first dose. The guards forbid its steps then.
   */
  public static Reading<LadderProposal> whateverHeTolerated(
      Protocol protocol, Preparation preparation, Barrel barrel, AetiologyGroup group) {
    ProtocolAmount own = protocol.startFor(group).amount();
    ProtocolAmount start =
        leastOf(protocol, preparation).filter(least -> least.isMoreThan(own)).orElse(own);
    return from(protocol, preparation, barrel, start);
  }

  /**
   * The first amount. Where a strength is not offered for it, because it is too strong to measure
   * so little, a man who tolerated more begins at the least that is offered.
   */
  private static ProtocolAmount startOf(
      Protocol protocol, Preparation preparation, AetiologyGroup group, Beginning beginning) {
    ProtocolAmount start = protocol.startFor(group).amount();
    return leastOf(protocol, preparation)
        .filter(least -> least.isMoreThan(start))
        .filter(
            least ->
                beginning instanceof Beginning.AtMost(Carried carried)
                    && carried.carriesTo(preparation)
                    && carried
                        .most(preparation)
                        .filter(most -> most.compareTo(least.in(preparation).orElseThrow()) >= 0)
                        .isPresent())
        .orElse(start);
  }

  /** The least that is offered of a strength, where the protocol has a rule for it. */
  private static Optional<ProtocolAmount> leastOf(Protocol protocol, Preparation preparation) {
    return protocol.strengthRuleFor(preparation).map(Protocol.StrengthRule::notBelow);
  }

  private Reading<LadderProposal> asTold(Beginning.AsTold told) {
    var step = new ToldStep(told, ladder);
    return step.refusal()
        .<Reading<LadderProposal>>map(Reading::refused)
        .orElseGet(
            () ->
                step.mark()
                    .map(this::atMostCeiling)
                    .map(mark -> withStep(mark, step.note(mark)))
                    .orElseGet(() -> Reading.of(this)));
  }

  private Reading<LadderProposal> below(Beginning.BelowTooLong tooLong) {
    Preparation preparation = ladder.preparation();
    return tooLong
        .highestMark(preparation, ladder.barrel())
        .map(mark -> mark.isMoreThan(ladder.first()) ? ladder.first() : mark)
        .map(
            mark ->
                withStep(
                    mark,
                    "Nothing before is known to have been tolerated, and these lasted too long or"
                        + " nobody knows how long: "
                        + tooLong.words()
                        + ". No first dose is proposed. A prescriber may sign at most "
                        + mark
                        + " ("
                        + preparation.contentOf(mark)
                        + "), which holds less of everything, as a test in the clinic."))
        .orElseGet(
            () ->
                Reading.refused(
                    "Nothing before is known to have been tolerated, and these lasted too long or"
                        + " nobody knows how long: "
                        + tooLong.words()
                        + ". No line of a "
                        + ladder.barrel()
                        + " holds less of everything in "
                        + preparation
                        + ". Choose a weaker strength, ask how those injections ended, or stop."));
  }

  private Reading<LadderProposal> with(Carried carried, ExactVolume most) {
    Volume first = ladder.first();
    boolean carries = carried.carriesTo(ladder.preparation());
    if (!carries && most.compareTo(ExactVolume.of(first)) >= 0) {
      return Reading.of(this);
    }
    Optional<Volume> mark =
        ladder
            .barrel()
            .lastMarkWithin(most)
            .filter(one -> !one.isLessThan(DrawingError.BLOCK_BELOW.value()));
    if (mark.isEmpty()) {
      return Reading.refused(
          "He tolerated "
              + carried.words()
              + ": as much of "
              + ladder.preparation()
              + " would be "
              + most
              + ", which a "
              + ladder.barrel()
              + " cannot measure. Choose a weaker strength.");
    }
    Volume entry = atMostCeiling(mark.get());
    return withStep(
        entry,
        "He tolerated "
            + carried.words()
            + ": the first dose of this preparation is at most "
            + entry
            + " ("
            + ladder.preparation().contentOf(entry)
            + "), as a new test in the clinic.");
  }

  private Volume atMostCeiling(Volume mark) {
    return mark.isMoreThan(ladder.ceiling()) ? ladder.last() : mark;
  }

  /** The same ladder with another step, and a note that says why. */
  private Reading<LadderProposal> withStep(Volume mark, String note) {
    List<Volume> rungs =
        Stream.concat(ladder.rungs().stream(), Stream.of(atMostCeiling(mark)))
            .distinct()
            .sorted()
            .toList();
    var said = new ArrayList<>(notes);
    said.add(note);
    return Reading.of(
        new LadderProposal(
            new Ladder(ladder.preparation(), ladder.barrel(), rungs, ladder.ceiling()), said));
  }

  /**
   * Builds the ladder: from the group's first amount by the protocol's smallest steps, each rounded
   * down to a printed line.
   *
   * @return the proposal, or every reason why the first dose cannot be drawn
   */
  public static Reading<LadderProposal> of(
      Protocol protocol, Preparation preparation, Barrel barrel, AetiologyGroup group) {
    return from(protocol, preparation, barrel, protocol.startFor(group).amount());
  }

  private static Reading<LadderProposal> from(
      Protocol protocol, Preparation preparation, Barrel barrel, ProtocolAmount start) {
    List<String> faults = faultsOf(protocol, preparation, barrel, start);
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    var rungs = new ArrayList<Volume>();
    var notes = new ArrayList<String>();
    ProtocolAmount amount = start;
    while (true) {
      ExactVolume exact = amount.in(preparation).orElseThrow();
      Optional<String> end = endBefore(protocol, preparation, barrel, amount, exact);
      if (end.isPresent()) {
        notes.add(end.get());
        break;
      }
      Volume rung = barrel.markAtOrBelow(exact).orElseThrow();
      if (!exact.isExactly(rung)) {
        notes.add(
            amount
                + " would be "
                + exact
                + ", between two lines: rounded down to "
                + rung
                + " ("
                + preparation.contentOf(rung)
                + ").");
      }
      if (rungs.isEmpty() || rung.isMoreThan(rungs.getLast())) {
        rungs.add(rung);
      }
      Optional<Protocol.Step> step = protocol.stepFrom(amount);
      if (step.isEmpty()) {
        break;
      }
      amount = amount.plus(step.get().smallest());
    }
    hardToMeasure(rungs.getFirst(), barrel).ifPresent(notes::add);
    var ladder = new Ladder(preparation, barrel, rungs, ceilingOf(protocol, preparation));
    return Reading.of(new LadderProposal(ladder, notes));
  }

  /** Said before anybody signs: a first dose that is on hold each time teaches to override. */
  private static Optional<String> hardToMeasure(Volume first, Barrel barrel) {
    return DrawingError.of(first, barrel)
        .filter(error -> error.isMoreThan(DrawingError.ASK_FOR_ANOTHER_ABOVE_PERCENT.value()))
        .map(
            error ->
                "The first dose of "
                    + first
                    + " is hard to measure on a "
                    + barrel
                    + ": the drawing error may be up to "
                    + error.totalPercentWords()
                    + ", and it is on hold until a prescriber overrides that. "
                    + Barrels.smallestFor(first, Barrels.all())
                        .filter(best -> !best.equals(barrel))
                        .map(best -> "A " + best + " draws it better.")
                        .orElse("A weaker strength would be drawn better."));
  }

  private static List<String> faultsOf(
      Protocol protocol, Preparation preparation, Barrel barrel, ProtocolAmount start) {
    if (!protocol.isFor(preparation)) {
      return List.of(
          "The protocol \""
              + protocol.title()
              + "\" is not written for "
              + preparation
              + ", it is written for "
              + protocol.writtenFor()
              + ": choose another preparation or another protocol.");
    }
    var faults = new ArrayList<String>();
    strengthFault(protocol, preparation, start).ifPresent(faults::add);
    if (barrel.marking().graduationVolume().isEmpty()) {
      faults.add(
          "No line of a "
              + barrel
              + " is known here, so no dose on it can be ordered: choose a"
              + " syringe with printed lines.");
      return faults;
    }
    faults.addAll(measuringFaults(protocol, preparation, barrel, start));
    return faults;
  }

  private static Optional<String> strengthFault(
      Protocol protocol, Preparation preparation, ProtocolAmount start) {
    return protocol
        .strengthRuleFor(preparation)
        .filter(rule -> rule.notBelow().isMoreThan(start))
        .map(
            rule ->
                start
                    + " is not offered with "
                    + preparation
                    + ": choose a weaker strength ("
                    + rule.source().words()
                    + ").");
  }

  private static List<String> measuringFaults(
      Protocol protocol, Preparation preparation, Barrel barrel, ProtocolAmount start) {
    var faults = new ArrayList<String>();
    ExactVolume exact = start.in(preparation).orElseThrow();
    Optional<Volume> first = barrel.markAtOrBelow(exact);
    if (first.isEmpty()) {
      faults.add(
          start
              + " would be "
              + exact
              + ", which a "
              + barrel
              + " cannot measure: choose another"
              + " syringe or strength.");
    }
    first
        .filter(volume -> volume.isLessThan(DrawingError.BLOCK_BELOW.value()))
        .ifPresent(
            volume ->
                faults.add(
                    volume
                        + " is below "
                        + DrawingError.BLOCK_BELOW.value()
                        + ", the least that can be measured: choose a weaker strength."));
    if (first.isPresent() && first.get().isMoreThan(ceilingOf(protocol, preparation))) {
      faults.add(start + " is above the maximum dose.");
    }
    return faults;
  }

  /** Why no rung stands at an amount; empty while one does. */
  private static Optional<String> endBefore(
      Protocol protocol,
      Preparation preparation,
      Barrel barrel,
      ProtocolAmount amount,
      ExactVolume exact) {
    if (amount.isMoreThan(protocol.ceiling().value())) {
      return Optional.of(
          "The schedule ends at the protocol's maximum of " + protocol.ceiling().value() + ".");
    }
    if (exact.compareTo(ExactVolume.of(barrel.capacity())) > 0) {
      return Optional.of(
          amount
              + " would be "
              + exact
              + ", more than a "
              + barrel
              + " holds: a larger syringe or"
              + " a stronger preparation would be needed.");
    }
    Volume rung = barrel.markAtOrBelow(exact).orElseThrow();
    Optional<Protocol.ComponentLimit> passed =
        protocol.componentLimits().stream()
            .filter(limit -> limit.isPassedBy(preparation, rung))
            .findFirst();
    if (passed.isPresent()) {
      return passed.map(limit -> "The schedule ends at the protocol's maximum of " + limit + ".");
    }
    return rung.isMoreThan(preparation.ceiling())
        ? Optional.of("The schedule ends at the maximum of this preparation.")
        : Optional.empty();
  }

  /** The lowest of the protocol's limits in this preparation and of its own. */
  private static Volume ceilingOf(Protocol protocol, Preparation preparation) {
    Volume step = Volume.ofMicrolitres(1);
    Volume lowest = protocol.ceiling().value().in(preparation).orElseThrow().roundDownTo(step);
    for (Protocol.ComponentLimit limit : protocol.componentLimits()) {
      Optional<Volume> most =
          preparation
              .ingredient(limit.component())
              .map(one -> one.strength().volumeOf(limit.most()).roundDownTo(step));
      lowest = most.filter(lowest::isMoreThan).orElse(lowest);
    }
    return lowest.isLessThan(preparation.ceiling()) ? lowest : preparation.ceiling();
  }
}
