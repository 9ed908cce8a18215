package rungwise.app.fuzz;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.ClockText;

/** A date and a time of day, with a blank between them, in zones that change their clocks. */
final class Times implements Target.Reader {

  static final List<String> SEEDS =
      List.of(
          "2026-03-02 21:30",
          "2026-03-29 02:30",
          "2026-10-25 02:30",
          "2026-03-08 02:30",
          "2026-11-01 01:30",
          "2026-10-04 02:15",
          "2026-02-30 24:00",
          "9999-12-31 23:59",
          "0000-01-01 00:00",
          "1961-04-30 9.30 pm",
          "1961-04-30 12 am",
          "1961-04-30 930",
          "1961-04-30 noon");

  private static final List<ClinicTime> ZONES =
      List.of("Europe/London", "America/Chicago", "Australia/Lord_Howe", "Pacific/Apia", "UTC")
          .stream()
          .map(zone -> new ClinicTime(ZoneId.of(zone)))
          .toList();
  private static final Instant START = Instant.parse("2026-10-25T00:15:00Z");

  @Override
  public void read(byte[] input) {
    String text = new String(input, StandardCharsets.UTF_8);
    int blank = text.indexOf(' ');
    String date = blank < 0 ? text : text.substring(0, blank);
    String clock = text.substring(blank + 1);
    Hold.readsBack(date, ClinicTime::readDate, ClinicTime::dateText);
    Hold.readsBack(clock, ClockText::read, ClinicTime::clockText);
    for (ClinicTime time : ZONES) {
      for (Occurrence occurrence : Occurrence.values()) {
        read(time, date, clock, occurrence);
      }
    }
  }

  private static void read(ClinicTime time, String date, String clock, Occurrence occurrence) {
    Hold.sound(time.read(date, clock, occurrence))
        .found()
        .ifPresent(
            instant ->
                Hold.that(
                    time.read(
                            time.dateText(instant),
                            time.timeText(instant),
                            time.occurrence(instant))
                        .found()
                        .filter(instant::equals)
                        .isPresent(),
                    () -> date + " " + clock + " in " + time.zone() + " is " + instant));
    for (LocalTime told : ClockText.read(clock).found().stream().toList()) {
      Hold.sound(time.readFrom(START, told, occurrence))
          .found()
          .ifPresent(
              instant ->
                  Hold.that(
                      !instant.isBefore(START), () -> told + " is before the start: " + instant));
    }
  }
}
