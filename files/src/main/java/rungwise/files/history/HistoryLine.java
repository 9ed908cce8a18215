package rungwise.files.history;

import java.time.Instant;
import java.util.Optional;
import rungwise.clinic.past.PastInjection;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.response.Lasted;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * One line of a history file: an injection of one patient and what followed it.
 *
 * @param line its number in the file, the header being line 1
 * @param patient what the file calls him
 * @param group the token of his aetiology group, lower case letters and underscores
 * @param injection its number; a later injection of the patient has a larger one
 * @param potency what was left of the labelled strength, more than 0 and at most 1.2
 * @param strength the strength of the preparation relative to the reference preparation, above 0,
 *     where the file says it
 * @param lasted how long it lasted, in the file's own minutes
 * @param time when it was injected, where the file says so
 * @param preparation what the file calls what was injected, where it says so
 * @param barrel what the file calls the syringe, where it says so
 */
public record HistoryLine(
    long line,
    String patient,
    String group,
    int injection,
    Volume volume,
    double potency,
    Optional<Double> strength,
    Grade grade,
    Lasted lasted,
    Optional<Instant> time,
    Optional<String> preparation,
    Optional<String> barrel) {

  private static final double MILLISECONDS_IN_A_MINUTE = 60_000;

  /** How long it lasted for the guards: rounded up to a millisecond. */
  public SoftAfter softAfter() {
    return switch (lasted) {
      case Lasted.Exactly exactly -> new SoftAfter.Exactly(span(exactly.minutes()));
      case Lasted.AtLeast atLeast -> new SoftAfter.AtLeast(span(atLeast.minutes()));
      case Lasted.Between between -> between(between);
      case Lasted.NotRecorded none -> new SoftAfter.NotKnown();
    };
  }

  /** When, of what and with which syringe, where the line says all three. */
  Optional<PastInjection.Setting> setting() {
    return time.flatMap(
        at ->
            preparation.flatMap(
                name ->
                    barrel.map(
                        syringe ->
                            new PastInjection.Setting(at, new PreparationId(name), syringe))));
  }

  /** Bounds within one millisecond of each other are that millisecond. */
  private static SoftAfter between(Lasted.Between between) {
    TimeSpan from = span(between.fromMinutes());
    TimeSpan before = span(between.beforeMinutes());
    return before.isMoreThan(from)
        ? new SoftAfter.Between(from, before)
        : new SoftAfter.Exactly(before);
  }

  private static TimeSpan span(double minutes) {
    return new TimeSpan((long) Math.ceil(minutes * MILLISECONDS_IN_A_MINUTE));
  }
}
