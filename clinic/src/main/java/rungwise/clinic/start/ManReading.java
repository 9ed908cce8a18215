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

  private ManReading() {}

  static Reading<Patient> of(
      String fullName, String birthDate, String recordNumber, LocalDate today) {
    Reading<String> name =
        OutsideText.line("His full name", fullName, LONGEST_NAME).at(ManDraft.FULL_NAME);
    Reading<String> number =
        OutsideText.line("His record number", recordNumber, LONGEST_NUMBER)
            .at(ManDraft.RECORD_NUMBER);
    Reading<LocalDate> birth = ClinicTime.readDate(birthDate);
    List<Fault> faults = new ArrayList<>(name.placed());
    faults.addAll(number.placed());
    birth.faults().stream().map(ManReading::ofBirth).forEach(faults::add);
    birth.found().flatMap(date -> ageFault(date, today)).ifPresent(faults::add);
    return faults.isEmpty()
        ? Reading.of(new Patient(name.orThrow(), birth.orThrow(), number.orThrow()))
        : new Reading.Refused<>(faults);
  }

  private static Fault ofBirth(String text) {
    return new Fault(ManDraft.BIRTH_DATE, "Birth date: " + text);
  }

  private static Optional<Fault> ageFault(LocalDate date, LocalDate today) {
    boolean isPossible =
        !date.isAfter(today.minusYears(YOUNGEST_YEARS))
            && !date.isBefore(today.minusYears(OLDEST_YEARS));
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
}
