package rungwise.dosing.supply;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Optional;

/**
 * When a vial was first punctured, or its powder dissolved.
 *
 * @param clock the time of day; where nobody wrote it down, the day counts from its beginning
 */
public record Opening(LocalDate day, Optional<LocalTime> clock) {

  public static Opening on(LocalDate day) {
    return new Opening(day, Optional.empty());
  }

  /** The earliest instant that this can mean. An hour that comes twice is the first one. */
  public Instant earliest(ZoneId zone) {
    return clock
        .map(time -> day.atTime(time).atZone(zone))
        .orElseGet(() -> day.atStartOfDay(zone))
        .toInstant();
  }

  /** The opening that an injection proves: it was open at that instant at the latest. */
  public static Opening byUseAt(Instant at, ZoneId zone) {
    var local = at.atZone(zone);
    return new Opening(local.toLocalDate(), Optional.of(local.toLocalTime()));
  }

  /** The earlier one of the two. */
  public Opening orEarlier(Opening other, ZoneId zone) {
    return other.earliest(zone).isBefore(earliest(zone)) ? other : this;
  }
}
