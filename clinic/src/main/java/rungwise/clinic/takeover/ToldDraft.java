package rungwise.clinic.takeover;

/**
 * What he injects elsewhere, as typed.
 *
 * @param preparation the id of a preparation that the clinic has, or had
 * @param dose the line of the syringe, or the volume in mL where there is none
 * @param syringe the token of the syringe; empty for a dose in mL
 * @param from where he is treated
 * @param lastDay the day of his last injection there, such as "2026-03-02"; empty if not known
 * @param grade its number
 * @param end a name of {@link End}
 * @param minutes how long it lasts, where that is said
 * @param by a name of what it is known from
 */
public record ToldDraft(
    String preparation,
    String dose,
    String syringe,
    String from,
    String lastDay,
    String grade,
    String end,
    String minutes,
    String by) {

  /** The fields by their names in the form. */
  public static final String PREPARATION = "preparation";

  public static final String DOSE = "dose";
  public static final String SYRINGE = "syringe";
  public static final String FROM = "from";
  public static final String LAST_DAY = "lastDay";
  public static final String GRADE = "grade";
  public static final String END = "end";
  public static final String MINUTES = "minutes";
  public static final String BY = "by";

  /** What is told of the end. */
  public enum End {
    EXACTLY("fully soft after so many minutes, at the longest"),
    AT_LEAST("longer than so many minutes, the end is not known"),
    NOT_KNOWN("not known");

    private final String words;

    End(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }
}
