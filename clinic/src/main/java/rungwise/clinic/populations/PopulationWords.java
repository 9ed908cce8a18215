package rungwise.clinic.populations;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.response.Population;

/**
 * A population in words.
 *
 * @param groups what each group needs
 * @param parameters each with its value, as the document spells it
 * @param minutes how long a usable response lasts where it has probability one half
 */
public record PopulationWords(List<GroupLine> groups, List<Parameter> parameters, String minutes) {

  /** Where nine in ten of a normal variable lie, in standard deviations (tables). */
  private static final double NINE_IN_TEN = 1.6448536269514722;

  private static final double REFERENCE_MILLILITRES = 0.1;
  private static final MathContext TWO_DIGITS = new MathContext(2, RoundingMode.HALF_UP);

  /**
   * What the men of a group need.
   *
   * @param half the volume of the reference preparation at which half of the injections of the man
   *     in the middle are usable
   * @param range between what it lies for nine in ten of the group
   */
  public record GroupLine(String group, String half, String range) {}

  /** One parameter. */
  public record Parameter(String name, String value) {}

  public PopulationWords {
    groups = List.copyOf(groups);
    parameters = List.copyOf(parameters);
  }

  /** The words for a population. */
  public static PopulationWords of(Population population) {
    double apart = NINE_IN_TEN * population.omega();
    return new PopulationWords(
        Arrays.stream(AetiologyGroup.values())
            .flatMap(
                group ->
                    population.meanOf(group.token()).stream()
                        .map(mean -> line(group.words(), mean, apart)))
            .toList(),
        parameters(population),
        twoDigits(Math.exp(population.d0())) + " min");
  }

  private static GroupLine line(String group, double mean, double apart) {
    return new GroupLine(
        group,
        millilitres(mean) + " mL",
        millilitres(mean - apart) + " to " + millilitres(mean + apart) + " mL");
  }

  private static String millilitres(double requirement) {
    return twoDigits(REFERENCE_MILLILITRES * Math.exp(requirement));
  }

  private static String twoDigits(double number) {
    BigDecimal rounded = new BigDecimal(number).round(TWO_DIGITS).stripTrailingZeros();
    return rounded.toPlainString();
  }

  private static List<Parameter> parameters(Population population) {
    var all = new ArrayList<Parameter>();
    all.add(parameter("mu", population.mu()));
    new TreeMap<>(population.gammas())
        .forEach((group, gamma) -> all.add(parameter("gamma of " + group, gamma)));
    all.add(parameter("omega", population.omega()));
    all.add(parameter("beta", population.beta()));
    all.add(parameter("c2", population.c2()));
    all.add(parameter("c4", population.c4()));
    all.add(parameter("d0", population.d0()));
    all.add(parameter("d1", population.d1()));
    all.add(parameter("tau", population.tau()));
    return all;
  }

  private static Parameter parameter(String name, double value) {
    BigDecimal exact = BigDecimal.valueOf(value);
    return new Parameter(
        name, exact.signum() == 0 ? "0" : exact.stripTrailingZeros().toPlainString());
  }
}
