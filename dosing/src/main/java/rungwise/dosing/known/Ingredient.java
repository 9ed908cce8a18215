package rungwise.dosing.known;

import java.util.Arrays;
import java.util.Optional;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.Volume;

/**
 * One component of a preparation.
 *
 * @param strength of the salt named by the component
 * @param limit the largest mass in one injection, where the clinic or a label sets one
 */
public record Ingredient(Component component, Concentration strength, Optional<Mass> limit) {

  /** No syringe has more than 200 lines, so a fourth digit would say what nobody can draw. */
  private static final int DIGITS = 3;

  /** The exact mass in a volume. */
  public Mass in(Volume volume) {
    return strength.in(volume);
  }

  /** Whether a volume holds more of this component than its limit. */
  public boolean isPassedBy(Volume volume) {
    return limit.filter(most -> in(volume).isMoreThan(most)).isPresent();
  }

  /**
   * "papaverine 6 mg": what a volume holds of it, in no more digits than a syringe can tell apart.
   */
  public String contentWords(Volume volume) {
    return component.token() + " " + in(volume).toSignificant(DIGITS).in(component.unit());
  }

  /** The same to the last digit, where it stands beside a limit. */
  public String exactWords(Volume volume) {
    return component.token() + " " + in(volume).in(component.unit());
  }

  /** "papaverine hydrochloride 30 mg", to be followed by "per mL". */
  public String strengthWords() {
    return component.fullName()
        + " "
        + strength.numberIn(component.unit())
        + " "
        + component.unit().word();
  }

  /** What such words say, of an ingredient without a limit; empty if they say anything else. */
  static Optional<Ingredient> ofStrengthWords(String words) {
    return Arrays.stream(Component.values())
        .filter(component -> words.startsWith(component.fullName() + " "))
        .flatMap(component -> strength(component, words).stream())
        .filter(read -> read.strengthWords().equals(words))
        .findFirst();
  }

  private static Optional<Ingredient> strength(Component component, String words) {
    String strength = words.substring(component.fullName().length()).strip();
    return Concentration.parse(strength + "/mL")
        .found()
        .map(read -> new Ingredient(component, read, Optional.empty()));
  }
}
