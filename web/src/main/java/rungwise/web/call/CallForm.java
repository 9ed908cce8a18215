package rungwise.web.call;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Map;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.ClockText;
import rungwise.quantities.Reading;

/** What somebody on the line has said, as it was typed or picked. */
record CallForm(Map<String, String> typed) {

  static final String DAY = "day";
  static final String AT = ClinicTime.TIME_FIELD;
  static final String FIRM = "firm";
  static final String SINCE = "since";

  static final String TODAY = "today";
  static final String YESTERDAY = "yesterday";
  static final String YES = "yes";
  static final String SOFT = "soft";
  static final String NOT_KNOWN = "not-known";

  CallForm {
    typed = Map.copyOf(typed);
  }

  String text(String field) {
    return typed.getOrDefault(field, "");
  }

  /** Whether he says that it is soft again; firm is what holds until then. */
  boolean isSoft() {
    return text(FIRM).equals(SOFT);
  }

  /** Whether it was picked that nobody knows since when. */
  boolean isNotKnown() {
    return text(SINCE).equals(NOT_KNOWN);
  }

  /** Whether anything was said of when it began. */
  boolean saysStart() {
    return isNotKnown() || !text(AT).isBlank();
  }

  /**
   * When it began: the earlier one where the clocks showed that time twice. A time of today that
   * has not come yet was yesterday's.
   */
  Reading<Optional<Instant>> start(ClinicTime time, Instant now) {
    if (!saysStart() || isNotKnown()) {
      return Reading.of(Optional.empty());
    }
    return switch (ClockText.read(text(AT))) {
      case Reading.Read<LocalTime> read -> start(read.value(), time, now).map(Optional::of);
      case Reading.Refused<LocalTime> refused -> new Reading.Refused<>(refused.at(AT).placed());
    };
  }

  private Reading<Instant> start(LocalTime at, ClinicTime time, Instant now) {
    LocalDate today = time.dayOf(now);
    LocalDate yesterday = today.minusDays(1);
    if (text(DAY).equals(YESTERDAY)) {
      return time.read(yesterday, at, Occurrence.FIRST);
    }
    Reading<Instant> read = time.read(today, at, Occurrence.FIRST);
    return read.found().filter(start -> start.isAfter(now)).isPresent()
        ? time.read(yesterday, at, Occurrence.FIRST)
        : read;
  }
}
