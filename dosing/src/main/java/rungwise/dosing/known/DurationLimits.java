package rungwise.dosing.known;

import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.TimeSpan;

/** How long an erection may last before a rule speaks. No protocol can change these. */
public final class DurationLimits {

  /** Lasting that long or longer is an emergency. Some texts say 3 h, one old label 6 h. */
  public static final Sourced<TimeSpan> EMERGENCY =
      new Sourced<>(
          TimeSpan.ofHours(4),
          Source.read(Citation.US_SYRINGE_LABEL, "5.1 and 17; EU core safety profile the same"));

  /** Lasting that long or longer closes the volume and all above it. */
  public static final Sourced<TimeSpan> CLOSES_VOLUME =
      new Sourced<>(
          TimeSpan.ofHours(2), new Source.CommonPractice("clinics ask for a call at 2 to 3 hours"));

  /** Lasting longer than that never leads to a higher dose. */
  public static final Sourced<TimeSpan> NO_HIGHER_DOSE =
      new Sourced<>(
          TimeSpan.ofHours(1),
          Source.read(Citation.US_SYRINGE_LABEL, "2: an erection that lasts no more than 1 h"));

  private DurationLimits() {}
}
