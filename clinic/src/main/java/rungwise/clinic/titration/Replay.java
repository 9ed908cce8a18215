package rungwise.clinic.titration;

import java.util.List;
import java.util.Optional;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Difference;
import rungwise.dosing.decision.KeptAdvice;

/**
 * A stored decision asked again.
 *
 * @param entry the number of the signature
 * @param stored what was stored when it was signed
 * @param again what the engine says now of the record as it was then
 */
public record Replay(long entry, KeptAdvice stored, Advice again) {

  /** In what they differ; empty if in nothing. */
  public List<Difference> differences() {
    return stored.differencesTo(again);
  }

  /** Whether another version of the engine said it: what differs then is no fault of the record. */
  public boolean isOfAnotherVersion() {
    return !stored.engine().equals(Optional.of(again.engine()));
  }
}
