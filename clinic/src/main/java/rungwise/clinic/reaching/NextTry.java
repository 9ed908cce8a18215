package rungwise.clinic.reaching;

import java.time.Instant;
import java.time.LocalDateTime;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.reach.Hours;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.TimeSpan;

/** When somebody who was not reached is called again. */
public final class NextTry {

  /** While an erection is not known to be over, at any hour. */
  public static final Sourced<TimeSpan> WHILE_NOT_OVER =
      new Sourced<>(
          TimeSpan.ofMinutes(10),
          new Source.Assumption("hours are counted then, and somebody may be away for a while"));

  /** Otherwise, within his hours. */
  public static final Sourced<TimeSpan> OTHERWISE =
      new Sourced<>(
          TimeSpan.ofMinutes(240), new Source.Assumption("at another part of the same day"));

  /** The hours of who named none. */
  public static final Sourced<Hours> HOURS =
      new Sourced<>(Hours.DAYTIME, new Source.Assumption("nobody is woken without need"));

  private NextTry() {}

  /** When the next try is due after one that did not reach him. */
  static Instant after(Instant tried, boolean isNotOver, Optional<Hours> hours, ClinicTime time) {
    if (isNotOver) {
      return WHILE_NOT_OVER.value().after(tried);
    }
    Instant earliest = OTHERWISE.value().after(tried);
    LocalDateTime local = LocalDateTime.ofInstant(earliest, time.zone());
    LocalDateTime next = hours.orElse(HOURS.value()).next(local);
    return next.equals(local) ? earliest : next.atZone(time.zone()).toInstant();
  }
}
