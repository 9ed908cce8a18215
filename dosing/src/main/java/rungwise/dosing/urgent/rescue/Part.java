package rungwise.dosing.urgent.rescue;

import java.util.List;
import java.util.Optional;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.dosing.syringe.DrawingError;
import rungwise.quantities.Volume;

/**
 * A volume that a named syringe really draws: a printed line stands there, and the drawing error is
 * not beyond what asks for another syringe ({@link DrawingError#ASK_FOR_ANOTHER_ABOVE_PERCENT}).
 * The error of the larger syringes is taken by the rule of those below 5 mL, which allows more.
 */
public record Part(Volume volume, Barrel on) {

  public Part {
    if (!isDrawn(volume, on)) {
      throw new IllegalArgumentException("bug: " + volume + " on a " + on);
    }
  }

  /** The volume on the smallest of the syringes that draws it; none if none does. */
  public static Optional<Part> of(Volume volume, List<Barrel> syringes) {
    return Barrels.smallestFor(
            volume, syringes.stream().filter(barrel -> isDrawn(volume, barrel)).toList())
        .map(barrel -> new Part(volume, barrel));
  }

  private static boolean isDrawn(Volume volume, Barrel barrel) {
    return barrel.hasMarkAt(volume)
        && DrawingError.of(volume, barrel)
            .filter(error -> !error.isMoreThan(DrawingError.ASK_FOR_ANOTHER_ABOVE_PERCENT.value()))
            .isPresent();
  }

  /** The worst case of drawing it. */
  public DrawingError error() {
    return DrawingError.of(volume, on).orElseThrow();
  }

  /** "0.2 mL (0.2 mL line on a 1 mL syringe marked in mL)". */
  @Override
  public String toString() {
    return volume + " (" + on.markWords(volume) + ")";
  }
}
