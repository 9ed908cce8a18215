package rungwise.dosing.urgent.rescue;

import rungwise.dosing.source.Sourced;
import rungwise.quantities.Mass;
import rungwise.quantities.TimeSpan;

/**
 * What a clinic signed for its rescues.
 *
 * @param inAnHour the sum in an hour above which the treating clinician gives a reason, more than 0
 * @param interval the shortest time between two doses; never below {@link #FLOOR}
 */
public record RescueLimits(Mass inAnHour, TimeSpan interval) {

  /** The shortest time between two doses that anything published allows, and nobody shortens. */
  public static final Sourced<TimeSpan> FLOOR =
      new Sourced<>(PublishedScheme.EAU.soonest(), PublishedScheme.EAU.source());

  /** The hour over which doses are added up: both of its ends count. */
  public static final TimeSpan HOUR = TimeSpan.ofHours(1);

  /** Where the published texts differ, the one with a largest sum. */
  public static final Sourced<RescueLimits> SAMPLE =
      new Sourced<>(
          new RescueLimits(PublishedScheme.EAU.inAnHour().orElseThrow(), FLOOR.value()),
          PublishedScheme.EAU.source());

  public RescueLimits {
    if (inAnHour.picograms() == 0 || interval.isLessThan(FLOOR.value())) {
      throw new IllegalArgumentException("bug: " + inAnHour + " in an hour, each " + interval);
    }
  }

  /** How many whole doses stay within the sum of an hour; none where one dose is above it. */
  public long dosesWithin(Mass dose) {
    return inAnHour.picograms() / dose.picograms();
  }

  /**
   * How long after the first dose the last of those is given, at an interval between them.
   *
   * @throws IllegalArgumentException if not even one dose stays within the sum
   */
  public TimeSpan lastAfter(Mass dose, TimeSpan every) {
    if (dosesWithin(dose) < 1) {
      throw new IllegalArgumentException("bug: " + dose + " is above " + inAnHour);
    }
    return new TimeSpan(Math.multiplyExact(dosesWithin(dose) - 1, every.milliseconds()));
  }
}
