package rungwise.dosing.ladder;

import java.util.List;
import java.util.Optional;
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
    return rungs.stream().filter(rung -> !rung.isMoreThan(volume)).reduce((low, high) -> high);
  }

  /** The largest rung that is below a volume. */
  public Optional<Volume> below(Volume volume) {
    return rungs.stream().filter(rung -> rung.isLessThan(volume)).reduce((low, high) -> high);
  }

  /** The smallest rung that is above a volume. */
  public Optional<Volume> above(Volume volume) {
    return rungs.stream().filter(rung -> rung.isMoreThan(volume)).findFirst();
  }

  /** A rung as a dose that can be read out. */
  public Dose dose(Volume volume) {
    return new Dose(volume, preparation, barrel);
  }
}
