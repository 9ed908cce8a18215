package rungwise.dosing.history;

import java.time.Instant;
import java.util.Optional;

/**
 * What stands around the dose.
 *
 * @param examined when he was last examined for curvature and scarring
 * @param recalled whether the clinic has taken the preparation out of use
 * @param lastTablet when he last took a PDE5 inhibitor, as far as anybody was told
 */
public record Circumstances(
    Optional<Instant> examined, boolean recalled, Optional<Instant> lastTablet) {

  public static final Circumstances NONE =
      new Circumstances(Optional.empty(), /* recalled= */ false, Optional.empty());
}
