package rungwise.clinic.titration;

import java.util.Set;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Place;

/**
 * What the sign form holds, with the names of its fields as a fault gives them; that of the reason
 * is {@link rungwise.clinic.standing.CourseChanges#REASON}.
 *
 * @param volumeMicrolitres the volume of the step that was chosen
 * @param basis the number of the last entry that the page showed
 * @param changed a name of {@link rungwise.clinic.coded.ChangeReason}, or empty
 * @param overridden the holds that the prescriber overrides, of those that the page showed
 * @param until the last day on which those hold that ask for one, as typed; may be empty
 * @param reason why, in words, where something was changed or overridden
 * @param withNextStep whether the step above may follow at home without a new signature
 * @param acceptedMinutes how long an erection may last at this dose, in minutes as typed; empty
 *     where nothing over an hour is accepted
 */
public record SignDraft(
    long volumeMicrolitres,
    Place place,
    long basis,
    String changed,
    Set<GuardRule> overridden,
    String until,
    String reason,
    boolean withNextStep,
    String acceptedMinutes) {

  public static final String VOLUME = "volume";
  public static final String PLACE = "place";
  public static final String CHANGED = "changed";
  public static final String OVERRIDDEN = "overridden";
  public static final String UNTIL = "until";
  public static final String ACCEPTED = "accepted";
  public static final String NEXT_STEP = "nextStep";

  public SignDraft {
    overridden = Set.copyOf(overridden);
  }

  /** A draft that overrides nothing that asks for a day. */
  public SignDraft(
      long volumeMicrolitres,
      Place place,
      long basis,
      String changed,
      Set<GuardRule> overridden,
      String reason,
      boolean withNextStep) {
    this(volumeMicrolitres, place, basis, changed, overridden, "", reason, withNextStep);
  }

  /** A draft that accepts nothing over an hour. */
  public SignDraft(
      long volumeMicrolitres,
      Place place,
      long basis,
      String changed,
      Set<GuardRule> overridden,
      String until,
      String reason,
      boolean withNextStep) {
    this(volumeMicrolitres, place, basis, changed, overridden, until, reason, withNextStep, "");
  }

  /** The same, with how long an erection may last at this dose. */
  public SignDraft accepting(String minutes) {
    return new SignDraft(
        volumeMicrolitres, place, basis, changed, overridden, until, reason, withNextStep, minutes);
  }
}
