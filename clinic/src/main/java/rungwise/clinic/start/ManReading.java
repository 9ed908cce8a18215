package rungwise.clinic.start;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.OutsideText;
import rungwise.clinic.course.Patient;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/** Reads who a man is, or gives everything that is wrong with it. */
final class ManReading {

  private static final int LONGEST_NAME = 100;
  private static final int LONGEST_NUMBER = 40;
  private static final int OLDEST_YEARS = 120;
  private static final int YOUNGEST_YEARS = 18;
  private static final int YEARS_FOR_A_CLOCK = 1;

  private ManReading() {}

  /**
   * Who he is.
   *
   * @param isDayKnown whether the clock is believed that says what day it is; else his age must be
   *     right by a year to either side
   */
  static Reading<Patient> of(
      String fullName, String birthDate, String recordNumber, LocalDate today, boolean isDayKnown) {
    Reading<String> name =
        OutsideText.line("His full name", fullName, LONGEST_NAME).at(ManDraft.FULL_NAME);
    Reading<String> number =
        OutsideText.line("His record number", recordNumber, LONGEST_NUMBER)
            .at(ManDraft.RECORD_NUMBER);
    Reading<LocalDate> birth = ClinicTime.readDate(birthDate);
    List<Fault> faults = new ArrayList<>(name.placed());
    faults.addAll(number.placed());
    birth.faults().stream().map(ManReading::ofBirth).forEach(faults::add);
    birth.found().flatMap(date -> ageFault(date, today, isDayKnown)).ifPresent(faults::add);
    return faults.isEmpty()
        ? Reading.of(new Patient(name.orThrow(), birth.orThrow(), number.orThrow()))
        : new Reading.Refused<>(faults);
  }

  private static Fault ofBirth(String text) {
    return new Fault(ManDraft.BIRTH_DATE, "Birth date: " + text);
  }

  private static Optional<Fault> ageFault(LocalDate date, LocalDate today, boolean isDayKnown) {
    boolean isPossible = isAge(date, today, 0);
    if (isPossible && !isDayKnown && !isAge(date, today, YEARS_FOR_A_CLOCK)) {
      return Optional.of(
          ofBirth(
              ClinicTime.words(date)
                  + " may make him younger than "
                  + YOUNGEST_YEARS
                  + " or older than "
                  + OLDEST_YEARS
                  + ", and it is not known what day it is: have the clock set right or confirmed,"
                  + " then open his course."));
    }
    return isPossible
        ? Optional.empty()
        : Optional.of(
            ofBirth(
                ClinicTime.words(date)
                    + " makes him younger than "
                    + YOUNGEST_YEARS
                    + " or older than "
                    + OLDEST_YEARS
                    + ": check the year."));
  }

  private static boolean isAge(LocalDate date, LocalDate today, int margin) {
    return !date.isAfter(today.minusYears(YOUNGEST_YEARS + margin))
        && !date.isBefore(today.minusYears(OLDEST_YEARS - margin));
  }
}
