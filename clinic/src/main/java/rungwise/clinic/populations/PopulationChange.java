package rungwise.clinic.populations;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rungwise.clinic.populations.PopulationWords.GroupLine;
import rungwise.clinic.populations.PopulationWords.Parameter;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.response.Population;
import rungwise.dosing.response.RelativeStrength;

/**
 * What another population says otherwise than the one in use.
 *
 * @param inUse the name and version of the one in use
 * @param lines both in volumes of the preparation of strength 1 of the other one
 */
public record PopulationChange(String inUse, List<Line> lines) {

  private static final String NOTHING = "says nothing";
  private static final MathContext THREE_DIGITS = new MathContext(3, RoundingMode.HALF_UP);

  /** The parameters that mean the same whatever the preparation of strength 1. */
  private static final Map<String, String> SHARED =
      Map.of(
          "omega", "How far men of a group differ (omega)",
          "beta", "How steep firmness rises (beta)",
          "d1", "How duration rises with the dose (d1)",
          "tau", "How far durations of one man differ (tau)");

  /** One thing that both say. */
  public record Line(String what, String now, String then) {}

  public PopulationChange {
    lines = List.copyOf(lines);
  }

  /**
   * The difference; empty where the strengths of their preparations stand in no exact relation, so
   * that their volumes cannot be set side by side.
   *
   * @param reference the preparation whose strength is 1 in the other one
   */
  public static Optional<PopulationChange> of(
      SignedPopulation inUse, Population other, Preparation reference) {
    return RelativeStrength.of(reference, inUse.reference())
            instanceof RelativeStrength.Exactly(double strength)
        ? Optional.of(
            new PopulationChange(
                inUse.key(),
                lines(
                    PopulationWords.of(shifted(inUse.document().population(), strength)),
                    PopulationWords.of(other))))
        : Optional.empty();
  }

  /** The same men, their requirements counted in a preparation that is so much stronger. */
  private static Population shifted(Population population, double strength) {
    return new Population(
        population.mu() - Math.log(strength),
        population.gammas(),
        population.omega(),
        population.beta(),
        population.c2(),
        population.c4(),
        population.d0(),
        population.d1(),
        population.tau());
  }

  private static List<Line> lines(PopulationWords now, PopulationWords then) {
    var lines = new ArrayList<Line>();
    Map<String, GroupLine> before = byGroup(now);
    Map<String, GroupLine> after = byGroup(then);
    var groups = new LinkedHashMap<>(before);
    after.forEach(groups::putIfAbsent);
    for (String group : groups.keySet()) {
      lines.add(
          new Line(
              "Half of the injections usable, " + group,
              words(Optional.ofNullable(before.get(group))),
              words(Optional.ofNullable(after.get(group)))));
    }
    lines.add(
        new Line(
            "There, half of the usable responses last longer than", now.minutes(), then.minutes()));
    for (Parameter parameter : then.parameters()) {
      Optional.ofNullable(SHARED.get(parameter.name()))
          .ifPresent(
              what ->
                  lines.add(
                      new Line(what, value(now, parameter.name()), value(then, parameter.name()))));
    }
    return lines;
  }

  private static Map<String, GroupLine> byGroup(PopulationWords words) {
    var lines = new LinkedHashMap<String, GroupLine>();
    words.groups().forEach(line -> lines.put(line.group(), line));
    return lines;
  }

  private static String words(Optional<GroupLine> line) {
    return line.map(one -> one.half() + " (nine in ten men: " + one.range() + ")").orElse(NOTHING);
  }

  private static String value(PopulationWords words, String name) {
    return words.parameters().stream()
        .filter(one -> one.name().equals(name))
        .map(one -> new BigDecimal(one.value()).round(THREE_DIGITS).stripTrailingZeros())
        .map(BigDecimal::toPlainString)
        .findFirst()
        .orElse(NOTHING);
  }
}
