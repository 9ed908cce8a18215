package rungwise.clinic.handout;

/**
 * What is typed and chosen when a sheet is made. What he will read is typed in his language.
 *
 * @param order the entry of the signed dose that was shown
 * @param language a tag
 * @param paper a token
 * @param keeping how his vial is kept
 * @param clinicNumber the number that is answered by day
 * @param transport how he gets to the hospital
 */
public record SheetDraft(
    String order,
    String language,
    String paper,
    String keeping,
    String clinicNumber,
    String afterHoursNumber,
    String hospital,
    String transport) {

  public static final String ORDER = "order";
  public static final String LANGUAGE = "language";
  public static final String PAPER = "paper";
  public static final String KEEPING = "keeping";
  public static final String CLINIC_NUMBER = "clinic_number";
  public static final String AFTER_HOURS = "after_hours";
  public static final String HOSPITAL = "hospital";
  public static final String TRANSPORT = "transport";
}
