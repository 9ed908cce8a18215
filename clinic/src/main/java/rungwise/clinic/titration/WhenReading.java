package rungwise.clinic.titration;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.ClockText;
import rungwise.clinic.clock.Present;
import rungwise.dosing.source.Source;

/**
 * Reads when he injected: last night, today, or another day by its date.
 *
 * @param told when that is
 */
record WhenReading(ReportDraft draft, ClinicTime time, Present told, PartFaults faults) {

  static final String LAST_NIGHT = "last_night";
  static final String TODAY = "today";

  /** From when to when a night lasts, where somebody says "last night". */
  static final Source NIGHT_SOURCE =
      new Source.Assumption("last night is from 18:00 of the day before to 06:00");

  private static final LocalTime EVENING = LocalTime.of(18, 0);
  private static final LocalTime MORNING = LocalTime.of(6, 0);

  /** The instant; empty if it must be asked back. */
  Optional<Instant> read() {
    Optional<LocalTime> clock =
        faults.take(ReportPart.TIME, ClockText.read(draft.text(ReportPart.TIME)));
    Optional<LocalDate> date = date(clock);
    if (clock.isEmpty() || date.isEmpty()) {
      return Optional.empty();
    }
    boolean isTwice = time.comesTwice(date.get().toString(), clock.get().toString());
    Optional<Instant> at =
        faults.take(
            isTwice ? ReportPart.OCCURRENCE : ReportPart.TIME,
            time.read(date.get(), clock.get(), draft.occurrence(ReportPart.OCCURRENCE)));
    at.filter(told::isStillToCome)
        .ifPresent(
            instant ->
                faults.add(
                    ReportPart.TIME,
                    time.words(instant) + " is still to come: check the date and time."));
    return at.filter(instant -> !told.isStillToCome(instant));
  }

  private Optional<LocalDate> date(Optional<LocalTime> clock) {
    LocalDate today = time.dayOf(told.now());
    String day = draft.text(ReportPart.DAY);
    boolean isNear = day.equals(LAST_NIGHT) || day.equals(TODAY);
    if (isNear && draft.has(ReportPart.DATE)) {
      faults.add(
          ReportPart.DATE,
          "You chose \""
              + (day.equals(TODAY) ? "today" : "last night")
              + "\" and a date of another day. Choose the right one, or empty the date.");
      return Optional.empty();
    }
    if (isNear && !told.isKnown()) {
      faults.add(
          ReportPart.DAY,
          "It is not known here which day it is, so write the date of the injection: choose"
              + " another day.");
      return Optional.empty();
    }
    if (day.equals(TODAY)) {
      return Optional.of(today);
    }
    if (day.equals(LAST_NIGHT)) {
      return clock.flatMap(at -> lastNight(at, today));
    }
    if (!draft.has(ReportPart.DATE)) {
      faults.add(ReportPart.DAY, "Choose the day: last night, today, or another one by its date.");
      return Optional.empty();
    }
    return faults.take(ReportPart.DATE, ClinicTime.readDate(draft.text(ReportPart.DATE)));
  }

  private Optional<LocalDate> lastNight(LocalTime at, LocalDate today) {
    if (!at.isBefore(EVENING)) {
      return Optional.of(today.minusDays(1));
    }
    if (at.isBefore(MORNING)) {
      return Optional.of(today);
    }
    faults.add(
        ReportPart.DAY, at + " is not at night, which is from 18:00 to 06:00: choose the day.");
    return Optional.empty();
  }
}
