package rungwise.clinic.course;

import java.time.LocalDate;

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
}
