package rungwise.clinic.past;

import java.util.Comparator;
import java.util.List;
import rungwise.clinic.course.Patient;

/**
 * All that a file says of one patient.
 *
 * @param patient what the file calls him; a course of that record number is his
 * @param group the token of his aetiology group, as the file has it
 * @param injections at least one, in the order of their numbers
 */
public record PastHistory(String patient, String group, List<PastInjection> injections) {

  public PastHistory {
    injections =
        injections.stream().sorted(Comparator.comparingInt(PastInjection::number)).toList();
    if (injections.isEmpty()) {
      throw new IllegalArgumentException("bug: a history without an injection");
    }
  }

  /** Whether each injection says when, of what and with which syringe. */
  public boolean isDated() {
    return injections.stream().allMatch(one -> one.setting().isPresent());
  }

  /** His record number in the one form that all its spellings share. */
  public String recordKey() {
    return Patient.keyOf(patient);
  }
}
