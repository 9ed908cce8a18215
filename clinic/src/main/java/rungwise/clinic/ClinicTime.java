package rungwise.clinic;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;

/**
 * The clinic's wall clock. Instants are kept in UTC; this is how people write and read them.
 *
 * @param zone the clinic's time zone
 */
public record ClinicTime(ZoneId zone) {

  /** Which of two instants a local time means, when the clock was put back. */
  public enum Occurrence {
    NOT_SAID,
    FIRST,
    SECOND
  }

  private static final int DATE_LENGTH = "2026-11-25".length();

  /** The fields of a date, of a time of day, and of which one where it came twice. */
  public static final String DATE_FIELD = "date";

  public static final String TIME_FIELD = "time";
  public static final String OCCURRENCE_FIELD = "occurrence";

  private static final DateTimeFormatter DATE = DateTimeFormatter.ISO_LOCAL_DATE;

  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

  private static final DateTimeFormatter LONG_FORM =
      DateTimeFormatter.ofPattern("EEEE d MMMM yyyy HH:mm", Locale.ENGLISH);
  private static final DateTimeFormatter SHORT_FORM =
      DateTimeFormatter.ofPattern("EEEE d MMMM", Locale.ENGLISH);
  private static final DateTimeFormatter DAY_FORM =
      DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);
  private static final int HOURS_SHOWN_AS_HOURS = 48;

  /** The day that it is in the clinic. */
  public LocalDate today(InstantSource clock) {
    return dayOf(clock.instant());
  }

  /** The day of the clinic on which an instant falls. */
  public LocalDate dayOf(Instant instant) {
    return LocalDate.ofInstant(instant, zone);
  }

  /** When a day begins there. */
  public Instant startOf(LocalDate day) {
    return day.atStartOfDay(zone).toInstant();
  }

  /** "Sunday 29 November 2026 23:30". */
  public String words(Instant instant) {
    return LONG_FORM.format(instant.atZone(zone));
  }

  /** "23:30"; with its day if that is another one than now. */
  public String clock(Instant instant, Instant now) {
    return dayOf(instant).equals(dayOf(now)) ? timeText(instant) : words(instant);
  }

  /** "23:30", "yesterday 23:30", "Tuesday 10 November"; of another year "10 November 2025". */
  public String day(Instant then, Instant now) {
    LocalDate day = dayOf(then);
    LocalDate today = dayOf(now);
    if (day.equals(today)) {
      return timeText(then);
    }
    if (day.equals(today.minusDays(1))) {
      return "yesterday " + timeText(then);
    }
    return day.getYear() == today.getYear() ? SHORT_FORM.format(day) : words(day);
  }

  /** "29 November 2026". */
  public static String words(LocalDate date) {
    return DAY_FORM.format(date);
  }

  /** "in 3 h 20 min", "2 days ago". */
  public static String distance(Instant from, Instant to) {
    Duration between = Duration.between(from, to);
    Duration size = between.abs();
    String length;
    if (size.toMinutes() < 1) {
      return "now";
    } else if (size.toHours() < 1) {
      length = size.toMinutes() + " min";
    } else if (size.toHours() < HOURS_SHOWN_AS_HOURS) {
      length = TimeSpan.ofMinutes(size.toMinutes()).toString();
    } else {
      length = size.toDays() + " days";
    }
    return between.isNegative() ? length + " ago" : "in " + length;
  }

  /** A date as a form gives it. */
  public static String dateText(LocalDate day) {
    return DATE.format(day);
  }

  /** The date there now, for a form. */
  public String dateText(Instant instant) {
    return DATE.format(instant.atZone(zone));
  }

  /** The time of day there, for a form. */
  public String timeText(Instant instant) {
    return TIME.format(instant.atZone(zone));
  }

  /** A date as a form gives it, such as "1961-04-30": a year has four digits. */
  public static Reading<LocalDate> readDate(String text) {
    String typed = text.strip();
    try {
      return typed.length() == DATE_LENGTH
          ? Reading.of(LocalDate.parse(typed, DATE))
          : notADate(text);
    } catch (DateTimeException notADate) {
      return notADate(text);
    }
  }

  private static Reading<LocalDate> notADate(String text) {
    return Reading.refused(
        "\"" + text + "\" is not a date: write year, month and day, such as 2026-11-25");
  }

  /**
   * The instant of a date and a time of day there. A time that occurs twice is asked back unless
   * the occurrence is said; one that never occurs is refused.
   */
  public Reading<Instant> read(String dateText, String timeText, Occurrence occurrence) {
    Reading<LocalDate> date = readDate(dateText);
    Reading<LocalTime> time = ClockText.read(timeText);
    var faults = new ArrayList<>(date.at(DATE_FIELD).placed());
    faults.addAll(time.at(TIME_FIELD).placed());
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    return read(date.orThrow(), time.orThrow(), occurrence);
  }

  /** The same of a date and a time of day that are read already. */
  public Reading<Instant> read(LocalDate date, LocalTime time, Occurrence occurrence) {
    LocalDateTime local = date.atTime(time);
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
    if (offsets.isEmpty()) {
      return Reading.refused(
          new Fault(
              TIME_FIELD,
              "There was no "
                  + TIME.format(time)
                  + " on "
                  + words(local.toLocalDate())
                  + ": the clocks went forward. Ask for the time again."));
    }
    if (offsets.size() > 1 && occurrence == Occurrence.NOT_SAID) {
      return Reading.refused(
          new Fault(
              OCCURRENCE_FIELD,
              TIME.format(time)
                  + " came twice on "
                  + words(local.toLocalDate())
                  + ": the clocks went back. Say whether it was the first or the second."));
    }
    ZoneOffset offset = occurrence == Occurrence.SECOND ? offsets.getLast() : offsets.getFirst();
    return Reading.of(local.toInstant(offset));
  }

  /**
   * The first instant at or after another one at which the clocks show a time of day: a midnight
   * between them or a change of the clocks is crossed. One that came twice is asked back.
   */
  public Reading<Instant> readFrom(Instant start, LocalTime time, Occurrence occurrence) {
    LocalDate day = dayOf(start);
    boolean isOver =
        zone.getRules().getValidOffsets(day.atTime(time)).stream()
            .allMatch(offset -> day.atTime(time).toInstant(offset).isBefore(start));
    LocalDate on = isOver ? day.plusDays(1) : day;
    List<Instant> possible =
        zone.getRules().getValidOffsets(on.atTime(time)).stream()
            .map(offset -> on.atTime(time).toInstant(offset))
            .filter(instant -> !instant.isBefore(start))
            .toList();
    return possible.size() == 1 ? Reading.of(possible.getFirst()) : read(on, time, occurrence);
  }

  /** Whether a typed time of day came twice on its day, so that one of the two must be said. */
  public boolean comesTwice(String dateText, String timeText) {
    Optional<LocalDate> date = readDate(dateText).found();
    Optional<LocalTime> time = ClockText.read(timeText).found();
    return date.isPresent()
        && time.isPresent()
        && zone.getRules().getValidOffsets(date.get().atTime(time.get())).size() > 1;
  }

  /** Which of two instants of one local time this is; not said where there is only one. */
  public Occurrence occurrence(Instant instant) {
    List<ZoneOffset> offsets =
        zone.getRules().getValidOffsets(LocalDateTime.ofInstant(instant, zone));
    if (offsets.size() < 2) {
      return Occurrence.NOT_SAID;
    }
    return zone.getRules().getOffset(instant).equals(offsets.getFirst())
        ? Occurrence.FIRST
        : Occurrence.SECOND;
  }

  /** A time of day in hours and minutes: "09:05". */
  public static String clockText(LocalTime clock) {
    return TIME.format(clock);
  }
}
