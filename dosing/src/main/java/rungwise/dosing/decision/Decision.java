package rungwise.dosing.decision;

import java.util.Optional;
import rungwise.dosing.history.Injection;
import rungwise.quantities.Volume;

/** What the engine proposes. A prescriber decides. */
public sealed interface Decision {

  /** The first dose of this preparation. */
  record Start(Volume volume) implements Decision {}

  /** More than was drawn last. */
  record StepUp(Volume volume) implements Decision {}

  /** Exactly what was drawn last. */
  record Repeat(Volume volume) implements Decision {}

  /** Less than was drawn last. */
  record StepDown(Volume volume) implements Decision {}

  /** No volume is proposed. */
  sealed interface WithoutDose extends Decision {}

  /** No dose until a question is answered. */
  record Pause() implements WithoutDose {}

  /** No further dose of this preparation. */
  record Stop() implements WithoutDose {}

  /** No rule leads further: a prescriber looks at the whole. */
  record Refer() implements WithoutDose {}

  /**
   * What giving a volume is called. Only what was really drawn is compared with: nothing is the
   * same, more or less than what was ordered and not drawn.
   *
   * @param last the last injection of this preparation; empty if none is on record since he began
   *     it
   */
  static Decision ofDose(Volume volume, Optional<Injection> last) {
    if (last.isEmpty()) {
      return new Start(volume);
    }
    Volume drawn = last.get().drawn();
    if (volume.isMoreThan(drawn)) {
      return new StepUp(volume);
    }
    return volume.isLessThan(drawn) ? new StepDown(volume) : new Repeat(volume);
  }

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
