package rungwise.clinic.forecast;

import java.math.RoundingMode;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import rungwise.clinic.StillWanted;
import rungwise.clinic.populations.SignedPopulation;
import rungwise.dosing.choice.ByRuleAndModel;
import rungwise.dosing.fit.Priors;
import rungwise.dosing.history.Question;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.response.Forecast;
import rungwise.dosing.response.Population;
import rungwise.dosing.response.ResponseModel;
import rungwise.quantities.Volume;

/**
 * What the chances of one volume would be, if a number that was assumed were smaller or larger by
 * as much as it is uncertain.
 *
 * @param assumed which number, in words
 * @param useful the chance of a usable response as it is said, and between what it would lie
 * @param useful120 the same of one that lasts 2 hours or longer
 */
public record RestsOn(String assumed, Chance useful, Chance useful120) {

  private static final String GAMMA_OF = "gamma of ";

  /** One for each assumed number; what the chance of 2 hours rests on most comes first. */
  static List<RestsOn> of(SignedPopulation population, Question question, Volume volume) {
    Population said = population.document().population();
    Optional<Forecast> now = forecast(population, said, question, volume);
    return Priors.moved(said, population.document().assumed()).stream()
        .filter(moved -> isOfHim(moved.name(), question.group()))
        .flatMap(moved -> now.stream().flatMap(one -> of(population, question, volume, moved, one)))
        .sorted(Comparator.comparingDouble(RestsOn::width).reversed())
        .toList();
  }

  private static Stream<RestsOn> of(
      SignedPopulation population,
      Question question,
      Volume volume,
      Priors.Moved moved,
      Forecast now) {
    StillWanted.orStop();
    return forecast(population, moved.less(), question, volume).stream()
        .flatMap(
            less ->
                forecast(population, moved.more(), question, volume).stream()
                    .map(
                        more ->
                            new RestsOn(
                                words(moved.name()),
                                chance(less, now, more, Forecast::useful, RoundingMode.HALF_UP),
                                chance(
                                    less, now, more, Forecast::useful120, RoundingMode.CEILING))));
  }

  private static Optional<Forecast> forecast(
      SignedPopulation population, Population moved, Question question, Volume volume) {
    var model = new ResponseModel(population.key(), moved, population.reference());
    return new ByRuleAndModel(model).prospect(question).map(one -> one.forecast(volume));
  }

  private static Chance chance(
      Forecast less,
      Forecast now,
      Forecast more,
      ToDoubleFunction<Forecast> part,
      RoundingMode rounding) {
    double one = part.applyAsDouble(less);
    double other = part.applyAsDouble(more);
    double middle = part.applyAsDouble(now);
    return new Chance(
        middle,
        Math.min(middle, Math.min(one, other)),
        Math.max(middle, Math.max(one, other)),
        rounding);
  }

  /** What another group needs says nothing of him. */
  private static boolean isOfHim(String name, AetiologyGroup group) {
    return !name.startsWith(GAMMA_OF) || name.equals(GAMMA_OF + group.token());
  }

  private double width() {
    return useful120.high() - useful120.low();
  }

  private static String words(String name) {
    return switch (name) {
      case "mu" -> "how much men need on average";
      case "omega" -> "how far men differ in what they need";
      case "beta" -> "how steeply firmness rises with the dose";
      case "c2" -> "how much less makes it firm but not usable";
      case "c4" -> "how much more makes it fully firm";
      case "d0" -> "how long a response lasts that is just usable";
      case "d1" -> "how much longer a larger dose lasts";
      case "tau" -> "how far the times of one man differ";
      default -> "how much more or less men of his group need";
    };
  }
}
