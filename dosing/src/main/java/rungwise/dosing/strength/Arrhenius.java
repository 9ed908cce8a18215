package rungwise.dosing.strength;

import java.util.Optional;

/**
 * The line on which the rates of one loss lie at different degrees.
 *
 * @param celsius the degrees of the known rate
 * @param perTime the rate there, more than 0
 * @param kilojoulesPerMole the energy of activation
 */
public record Arrhenius(double celsius, double perTime, double kilojoulesPerMole) {

  /** Degrees Celsius above the absolute zero. */
  static final double ZERO_CELSIUS = 273.15;

  /** The gas constant in J per mole and K, with the digits of the rows it is compared with. */
  private static final double GAS_CONSTANT = 8.314;

  private static final double JOULES = 1000;

  /** The line through the rates at two degrees. */
  public static Arrhenius through(
      double celsius, double perTime, double otherCelsius, double otherPerTime) {
    double steepness =
        Math.log(perTime / otherPerTime) / (1 / kelvin(otherCelsius) - 1 / kelvin(celsius));
    return new Arrhenius(celsius, perTime, GAS_CONSTANT * steepness / JOULES);
  }

  static double kelvin(double celsius) {
    return celsius + ZERO_CELSIUS;
  }

  /** The rate at some degrees. A frozen vial is another matter, of which the line says nothing. */
  public Optional<Double> perTimeAt(double degrees) {
    if (degrees < 0) {
      return Optional.empty();
    }
    double turn = 1 / kelvin(celsius) - 1 / kelvin(degrees);
    return Optional.of(perTime * Math.exp(kilojoulesPerMole * JOULES / GAS_CONSTANT * turn));
  }
}
