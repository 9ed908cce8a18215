package rungwise.dosing.history;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What stands around the dose.
 *
 * @param examined when he was last examined for curvature and scarring
 * @param recalled whether the clinic has taken the preparation out of use
 * @param lastTablet when he last took a PDE5 inhibitor, as far as anybody was told; one that a
 *     prescriber lets him take daily is left out
 * @param unfinished what may mean 4 hours and is neither complete nor reviewed
 */
public record Circumstances(
    Optional<Instant> examined,
    boolean recalled,
    Optional<Instant> lastTablet,
    List<Unfinished> unfinished) {

  public static final Circumstances NONE =
      new Circumstances(Optional.empty(), /* recalled= */ false, Optional.empty(), List.of());

  public Circumstances {
    unfinished = List.copyOf(unfinished);
  }
}
