package rungwise.dosing.history;

import java.time.Instant;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** A man who was injected in the clinic and of whom it is not yet recorded how it ended. */
public record Observing(long entry, Instant at, Volume drawn) {

  /** How often a man under observation is looked at. */
  public static final Sourced<TimeSpan> CHECK_EVERY =
      new Sourced<>(
          TimeSpan.ofMinutes(15), new Source.CommonPractice("looked at every quarter of an hour"));
}
