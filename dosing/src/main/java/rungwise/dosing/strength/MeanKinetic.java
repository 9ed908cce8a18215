package rungwise.dosing.strength;

import java.util.Collection;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;

/** The one warmth that takes as much as a changing one did: nearer the warm end than the mean. */
public final class MeanKinetic {

  /** Energy of activation over the gas constant, in K: 83.144 kJ per mole over 8.3144. */
  public static final Sourced<Double> STEEPNESS =
      new Sourced<>(
          10_000.0, Source.remembered(Citation.USP_STORAGE, "mean kinetic temperature, 83.144 kJ"));

  private MeanKinetic() {}

  /** The mean kinetic temperature in degrees Celsius of readings in equal times, at least one. */
  public static double celsius(Collection<Double> readings) {
    double steepness = STEEPNESS.value();
    double mean =
        readings.stream()
            .mapToDouble(one -> Math.exp(-steepness / Arrhenius.kelvin(one)))
            .average()
            .orElseThrow();
    return steepness / -Math.log(mean) - Arrhenius.ZERO_CELSIUS;
  }
}
