package rungwise.clinic.measured;

import java.util.List;
import java.util.Optional;
import rungwise.quantities.Reading;

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

  /** As typed, or why they cannot be. All three or none. */
  public static Reading<Optional<Vitals>> read(String systolic, String diastolic, String pulse) {
    boolean isEmpty = systolic.isBlank() && diastolic.isBlank() && pulse.isBlank();
    if (isEmpty) {
      return Reading.of(Optional.empty());
    }
    boolean areNumbers =
        List.of(systolic, diastolic, pulse).stream()
            .allMatch(text -> text.strip().matches("[0-9]{2,3}"));
    if (areNumbers) {
      int high = Integer.parseInt(systolic.strip());
      int low = Integer.parseInt(diastolic.strip());
      int beats = Integer.parseInt(pulse.strip());
      if (isPossible(high, low, beats)) {
        return Reading.of(Optional.of(new Vitals(high, low, beats)));
      }
    }
    return Reading.refused(
        "Blood pressure and pulse: give all three as whole numbers, such as 128, 76 and 72.");
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
