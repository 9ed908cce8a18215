package rungwise.clinic.running;

/**
 * How a treatment ends, as typed.
 *
 * @param why a name of a reason
 * @param lastDose the day of the last injection, such as "2026-03-02"; may be empty
 * @param vials a name of what became of his vials
 * @param after a name of what treats him now
 * @param referredTo to whom he is referred
 * @param reason in words
 */
public record EndDraft(
    String why, String lastDose, String vials, String after, String referredTo, String reason) {

  /** The fields by their names in the form. */
  public static final String WHY = "why";

  public static final String LAST_DOSE = "lastDose";
  public static final String VIALS = "vials";
  public static final String AFTER = "after";
  public static final String REFERRED_TO = "referredTo";
}
