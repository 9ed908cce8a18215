package rungwise.dosing.decision;

import java.util.Optional;
import rungwise.quantities.Volume;

/** What the engine proposes. A prescriber decides. */
public sealed interface Decision {

  /** The first dose of this preparation. */
  record Start(Volume volume) implements Decision {}

  record StepUp(Volume volume) implements Decision {}

  record Repeat(Volume volume) implements Decision {}

  record StepDown(Volume volume) implements Decision {}

  /** No dose until a question is answered. */
  record Pause() implements Decision {}

  /** No further dose of this preparation. */
  record Stop() implements Decision {}

  /** No rule leads further: a prescriber looks at the whole. */
  record Refer() implements Decision {}

  /** The volume that is proposed, if any. */
  default Optional<Volume> proposed() {
    return switch (this) {
      case Start start -> Optional.of(start.volume());
      case StepUp up -> Optional.of(up.volume());
      case Repeat repeat -> Optional.of(repeat.volume());
      case StepDown down -> Optional.of(down.volume());
      case Pause pause -> Optional.empty();
      case Stop stop -> Optional.empty();
      case Refer refer -> Optional.empty();
    };
  }

  /** What a clinician reads. */
  default String words() {
    return switch (this) {
      case Start start -> "Start";
      case StepUp up -> "Increase";
      case Repeat repeat -> "Same dose";
      case StepDown down -> "Decrease";
      case Pause pause -> "Wait";
      case Stop stop -> "Stop";
      case Refer refer -> "Prescriber to review";
    };
  }

  /** Its name and volume, as a stored decision remembers it. */
  default String key() {
    return getClass().getSimpleName() + proposed().map(volume -> " " + volume).orElse("");
  }
}
