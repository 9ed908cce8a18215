package rungwise.clinic.course;

import java.text.Normalizer;
import java.time.LocalDate;
import java.util.Locale;
import rungwise.clinic.OutsideText;

/**
 * The man, by name and two identifiers that are confirmed at each contact.
 *
 * @param fullName 1 to 100 characters
 * @param recordNumber his number in the clinic's records, 1 to 40 characters
 */
public record Patient(String fullName, LocalDate birthDate, String recordNumber) {

  private static final int DECIMAL = 10;
  private static final String DASHES = "[\\p{Pd}\u2212]";
  private static final String APOSTROPHES = "[\u2018\u2019\u201B\u02BC\u02B9`\u00B4]";

  public Patient {
    if (fullName.isBlank() || recordNumber.isBlank()) {
      throw new IllegalArgumentException("bug: a patient who was not read");
    }
  }

  /** Whether both may be one man: the same record number, or the same name and birth date. */
  public boolean isLike(Patient other) {
    return recordKey().equals(other.recordKey())
        || (nameKey().equals(other.nameKey()) && birthDate.equals(other.birthDate));
  }

  /** The name in the one form that all its spellings share: case and spaces make no difference. */
  public String nameKey() {
    return key(fullName);
  }

  /** The record number in the one form that all its spellings share. */
  public String recordKey() {
    return recordKeyOf(recordNumber);
  }

  /** The same of a record number that somebody looks for. */
  public static String recordKeyOf(String recordNumber) {
    return key(recordNumber);
  }

  /** A record number in the one form that all its spellings share. */
  public static String keyOf(String recordNumber) {
    return key(recordNumber);
  }

  /**
   * Digits of every script as 0 to 9, one dash and one apostrophe for all that look alike. Large
   * letters first, because some small letters have the same large one.
   */
  private static String key(String text) {
    String form = Normalizer.normalize(OutsideText.visible(text), Normalizer.Form.NFKC);
    return form.codePoints()
        .map(point -> Character.isDigit(point) ? '0' + Character.digit(point, DECIMAL) : point)
        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
        .toString()
        .replaceAll(DASHES, "-")
        .replaceAll(APOSTROPHES, "'")
        .strip()
        .replaceAll("[\\s\\p{Z}]+", " ")
        .toUpperCase(Locale.ROOT)
        .toLowerCase(Locale.ROOT);
  }
}
