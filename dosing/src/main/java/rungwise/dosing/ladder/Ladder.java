package rungwise.dosing.ladder;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import rungwise.dosing.known.Dose;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.syringe.Barrel;
import rungwise.quantities.Volume;

/**
 * The ordered volumes of one preparation in one syringe that a prescriber signs. Another
 * preparation or another syringe has a ladder of its own.
 *
 * @param rungs strictly rising, each on a printed line, none above the ceiling
 * @param ceiling the volume never to be passed
 */
public record Ladder(Preparation preparation, Barrel barrel, List<Volume> rungs, Volume ceiling) {

  public Ladder {
    rungs = List.copyOf(rungs);
    if (rungs.isEmpty()) {
      throw new IllegalArgumentException("bug: a ladder without a rung");
    }
    Volume below = Volume.ZERO;
    for (Volume rung : rungs) {
      if (!rung.isMoreThan(below) || !barrel.hasMarkAt(rung) || rung.isMoreThan(ceiling)) {
        throw new IllegalArgumentException("bug: the ladder " + rungs + " on a " + barrel);
      }
      below = rung;
    }
  }

  public Volume first() {
    return rungs.getFirst();
  }

  public Volume last() {
    return rungs.getLast();
  }

  public boolean hasRung(Volume volume) {
    return rungs.contains(volume);
  }

  /** The largest rung that is not above a volume. */
  public Optional<Volume> atOrBelow(Volume volume) {
    return highest(rung -> !rung.isMoreThan(volume));
  }

  /** The largest rung that is below a volume. */
  public Optional<Volume> below(Volume volume) {
    return highest(rung -> rung.isLessThan(volume));
  }

  private Optional<Volume> highest(Predicate<Volume> wanted) {
    for (Volume rung : rungs.reversed()) {
      if (wanted.test(rung)) {
        return Optional.of(rung);
      }
    }
    return Optional.empty();
  }

  /** The smallest rung that is above a volume. */
  public Optional<Volume> above(Volume volume) {
    for (Volume rung : rungs) {
      if (rung.isMoreThan(volume)) {
        return Optional.of(rung);
      }
    }
    return Optional.empty();
  }

  /** A rung as a dose that can be read out. */
  public Dose dose(Volume volume) {
    return new Dose(volume, preparation, barrel);
  }
}
