package rungwise.clinic.fitting;

import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;

/** What a posterior is drawn with, wherever a fit is asked for. */
public final class Draws {

  private static final String GENERATOR = "L64X128MixRandom";

  private Draws() {}

  /** Draws that are the same for the same seed. */
  public static RandomGenerator generator(long seed) {
    return RandomGeneratorFactory.of(GENERATOR).create(seed);
  }
}
