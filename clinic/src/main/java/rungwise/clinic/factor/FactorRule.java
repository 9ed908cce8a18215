package rungwise.clinic.factor;

import java.time.Duration;

/**
 * When a clinic asks for the second proof.
 *
 * @param shift how long one that was given counts
 */
public record FactorRule(Asked asked, Duration shift) {

  private static final int SAMPLE_HOURS = 12;

  /** How long a shift is unless the clinic says otherwise: a sample, no source. */
  public static final Duration SAMPLE_SHIFT = Duration.ofHours(SAMPLE_HOURS);

  /** Of whom it is asked. */
  public enum Asked {
    /** Nobody opens a page without one. */
    OF_EVERYBODY_WHO_ENTERS,
    /** Nobody signs without one. */
    OF_EVERYBODY_WHO_SIGNS,
    /** Who has set one up gives it; who has not signs without. */
    OF_WHO_HAS_ONE
  }

  public FactorRule {
    if (!shift.isPositive()) {
      throw new IllegalArgumentException("bug: a shift that ends before it starts");
    }
  }
}
