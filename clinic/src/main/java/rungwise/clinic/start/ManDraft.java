package rungwise.clinic.start;

/**
 * Who he is, as typed into the form that corrects it.
 *
 * @param birthDate such as "1961-04-30"
 * @param group a token of an aetiology group
 * @param namesakeConfirmed whether the writer has seen that another course is alike
 * @param reason in words
 */
public record ManDraft(
    String fullName,
    String birthDate,
    String recordNumber,
    String group,
    boolean namesakeConfirmed,
    String reason) {

  /** The fields by their names in the form. */
  public static final String FULL_NAME = "fullName";

  public static final String BIRTH_DATE = "birthDate";
  public static final String RECORD_NUMBER = "recordNumber";
  public static final String GROUP = "group";
  public static final String NAMESAKE = "namesake";
}
