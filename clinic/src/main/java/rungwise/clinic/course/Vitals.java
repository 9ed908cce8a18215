package rungwise.clinic.course;

/**
 * Blood pressure and pulse.
 *
 * @param systolic in mmHg, 40 to 300
 * @param diastolic in mmHg, 20 to 200, below the systolic
 * @param pulse in beats a minute, 20 to 250
 */
public record Vitals(int systolic, int diastolic, int pulse) {

  private static final int LEAST_SYSTOLIC = 40;
  private static final int MOST_SYSTOLIC = 300;
  private static final int LEAST_DIASTOLIC = 20;
  private static final int MOST_DIASTOLIC = 200;
  private static final int LEAST_PULSE = 20;
  private static final int MOST_PULSE = 250;

  public Vitals {
    if (!isPossible(systolic, diastolic, pulse)) {
      throw new IllegalArgumentException("bug: " + systolic + "/" + diastolic + ", " + pulse);
    }
  }

  /** Whether a person can have these. */
  public static boolean isPossible(int systolic, int diastolic, int pulse) {
    return isWithin(systolic, LEAST_SYSTOLIC, MOST_SYSTOLIC)
        && isWithin(diastolic, LEAST_DIASTOLIC, MOST_DIASTOLIC)
        && isWithin(pulse, LEAST_PULSE, MOST_PULSE)
        && diastolic < systolic;
  }

  private static boolean isWithin(int value, int least, int most) {
    return value >= least && value <= most;
  }

  /** "128/76 mmHg, pulse 72". */
  public String words() {
    return systolic + "/" + diastolic + " mmHg, pulse " + pulse;
  }
}
