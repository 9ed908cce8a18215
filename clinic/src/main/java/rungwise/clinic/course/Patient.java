package rungwise.clinic.course;

import java.time.LocalDate;
import rungwise.clinic.Spelling;

/**
 * The man, by name and two identifiers that are confirmed at each contact.
 *
 * @param fullName 1 to 100 characters
 * @param recordNumber his number in the clinic's records, 1 to 40 characters
 */
public record Patient(String fullName, LocalDate birthDate, String recordNumber) {

  public Patient {
    if (fullName.isBlank() || recordNumber.isBlank()) {
      throw new IllegalArgumentException("bug: a patient who was not read");
    }
  }

  /**
   * Whether both may be one man: a record number that may be taken for the other's, or a name that
   * may and the same birth date.
   */
  public boolean isLike(Patient other) {
    return Spelling.areLikeNumbers(recordNumber, other.recordNumber)
        || (birthDate.equals(other.birthDate) && Spelling.areLikeNames(fullName, other.fullName));
  }

  /** The name in the one form that all its spellings share: case and spaces make no difference. */
  public String nameKey() {
    return Spelling.key(fullName);
  }

  /** The record number in the one form that all its spellings share. */
  public String recordKey() {
    return recordKeyOf(recordNumber);
  }

  /** The same of a record number that somebody looks for. */
  public static String recordKeyOf(String recordNumber) {
    return Spelling.key(recordNumber);
  }

  /** A record number in the one form that all its spellings share. */
  public static String keyOf(String recordNumber) {
    return Spelling.key(recordNumber);
  }
}
