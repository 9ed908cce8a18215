package rungwise.dosing.response;

import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.quantities.TimeSpan;

/** How long an erection lasted, in minutes, as the response model reads it. */
public sealed interface Lasted {

  /**
   * Known.
   *
   * @param minutes 0 or more, and more than 0 where the model is to read it
   */
  record Exactly(double minutes) implements Lasted {
    public Exactly {
      require(minutes >= 0 && Double.isFinite(minutes), minutes);
    }
  }

  /**
   * Still firm when last seen.
   *
   * @param minutes 0 or more
   */
  record AtLeast(double minutes) implements Lasted {
    public AtLeast {
      require(minutes >= 0 && Double.isFinite(minutes), minutes);
    }
  }

  /**
   * Not less than the first and less than the second.
   *
   * @param fromMinutes 0 or more
   * @param beforeMinutes more than the first
   */
  record Between(double fromMinutes, double beforeMinutes) implements Lasted {
    public Between {
      require(fromMinutes >= 0, fromMinutes);
      require(beforeMinutes > fromMinutes && Double.isFinite(beforeMinutes), beforeMinutes);
    }
  }

  /** Nothing is known of it; the model leaves it out. */
  record NotRecorded() implements Lasted {}

  /** What a report says; a usable response that lasted 0 minutes exactly is read as not known. */
  static Lasted of(Grade grade, SoftAfter soft) {
    return switch (soft) {
      case SoftAfter.Exactly(TimeSpan duration) ->
          grade.isUseful() && duration.equals(TimeSpan.ofMinutes(0))
              ? new NotRecorded()
              : new Exactly(minutes(duration));
      case SoftAfter.AtLeast(TimeSpan duration) -> new AtLeast(minutes(duration));
      case SoftAfter.Between(TimeSpan from, TimeSpan before) ->
          new Between(minutes(from), minutes(before));
      case SoftAfter.NotKnown none -> new NotRecorded();
    };
  }

  private static double minutes(TimeSpan span) {
    return span.ratioTo(TimeSpan.ofMinutes(1));
  }

  private static void require(boolean isSound, double minutes) {
    if (!isSound) {
      throw new IllegalArgumentException("bug: a duration of " + minutes + " minutes");
    }
  }
}
