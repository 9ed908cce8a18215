package rungwise.dosing.response;

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

  private static void require(boolean isSound, double minutes) {
    if (!isSound) {
      throw new IllegalArgumentException("bug: a duration of " + minutes + " minutes");
    }
  }
}
