package rungwise.clinic.titration;

import java.util.Set;
import rungwise.dosing.history.Place;

/** Forms by which a dose is signed, each a little other than the one before. */
public final class SignForms {

  private SignForms() {}

  /** For the clinic. */
  public static SignDraft inClinic(long microlitres, long basis, String changed) {
    return new SignDraft(
        microlitres, Place.CLINIC, basis, changed, Set.of(), "", /* withNextStep= */ false);
  }

  /** The same with the last day of what asks for one. */
  public static SignDraft until(SignDraft draft, String day) {
    return new SignDraft(
        draft.volumeMicrolitres(),
        draft.place(),
        draft.basis(),
        draft.changed(),
        draft.overridden(),
        day,
        draft.reason(),
        draft.withNextStep());
  }

  /** The same of another volume. */
  public static SignDraft of(SignDraft draft, long microlitres) {
    return new SignDraft(
        microlitres,
        draft.place(),
        draft.basis(),
        draft.changed(),
        draft.overridden(),
        draft.until(),
        draft.reason(),
        draft.withNextStep());
  }

  public static SignDraft atHome(SignDraft draft) {
    return new SignDraft(
        draft.volumeMicrolitres(),
        Place.HOME,
        draft.basis(),
        draft.changed(),
        draft.overridden(),
        draft.until(),
        draft.reason(),
        draft.withNextStep());
  }

  public static SignDraft withNextStep(SignDraft draft) {
    return new SignDraft(
        draft.volumeMicrolitres(),
        draft.place(),
        draft.basis(),
        draft.changed(),
        draft.overridden(),
        draft.until(),
        draft.reason(),
        /* withNextStep= */ true);
  }
}
