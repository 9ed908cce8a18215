package rungwise.web.page;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Times as the clinic says them: weekday, date and clock in its own zone. */
public final class ClinicTime {

  private static final DateTimeFormatter SAID =
      DateTimeFormatter.ofPattern("EEEE d MMMM uuuu, HH:mm", Locale.ENGLISH);

  private final ZoneId zone;

  public ClinicTime(ZoneId zone) {
    this.zone = zone;
  }

  /** "Sunday 14 June 2026, 23:30". */
  public String say(Instant instant) {
    return SAID.format(instant.atZone(zone));
  }
}
