package rungwise.clinic.past;

import java.time.Instant;
import java.util.Optional;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.Volume;

/**
 * One injection as a file tells it.
 *
 * @param line the line of the file
 * @param number its number among those of the patient
 * @param potency what was left of the labelled strength
 * @param strength in relation to the reference preparation of the file, where that is known; where
 *     there is no setting it is
 * @param setting when, of what and with which syringe, where the file says all three
 * @param named of what, where the file says that and not the rest
 */
public record PastInjection(
    long line,
    int number,
    Volume volume,
    double potency,
    Optional<Double> strength,
    Grade grade,
    SoftAfter soft,
    Optional<Setting> setting,
    Optional<PreparationId> named) {

  public PastInjection {
    if (setting.isPresent() && named.isPresent()) {
      throw new IllegalArgumentException("bug: line " + line + " names its preparation twice");
    }
  }

  /** One of which the file says when, of what and with which syringe, or none of it. */
  public PastInjection(
      long line,
      int number,
      Volume volume,
      double potency,
      Optional<Double> strength,
      Grade grade,
      SoftAfter soft,
      Optional<Setting> setting) {
    this(line, number, volume, potency, strength, grade, soft, setting, Optional.empty());
  }

  /** Of what it was, where the file says so. */
  public Optional<PreparationId> preparation() {
    return setting.map(Setting::preparation).or(() -> named);
  }

  /**
   * What a guard needs to know of it.
   *
   * @param barrel the token of the syringe
   */
  public record Setting(Instant at, PreparationId preparation, String barrel) {}
}
