package rungwise.dosing.history;

import java.time.Instant;
import java.util.Set;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.Protocol;
import rungwise.dosing.ladder.Ladder;

/**
 * Everything that advice may depend on. The same question always has the same answer.
 *
 * @param contraindication whether he has a contraindication
 * @param readiness what is on record for home use
 * @param ladder the signed ladder, or the one proposed for the first signature
 * @param now the instant at which it is asked
 */
public record Question(
    AetiologyGroup group,
    Answer contraindication,
    Set<Readiness> readiness,
    Protocol protocol,
    Ladder ladder,
    History history,
    Instant now) {

  public Question {
    readiness = Set.copyOf(readiness);
  }

  /** The preparation that the ladder is for. */
  public PreparationId preparation() {
    return ladder.preparation().id();
  }
}
