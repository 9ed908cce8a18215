package rungwise.dosing.strength;

import java.util.Collection;
import java.util.EnumSet;
import java.util.Set;
import rungwise.dosing.known.Component;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;

/** How much of its alprostadil a vial may still hold. */
public sealed interface StrengthLeft {

  /**
   * Somewhere between two parts of what its label says.
   *
   * @param least from 0 to 1
   * @param most from the least to 1
   */
  record Between(double least, double most) implements StrengthLeft {}

  /** Nobody has measured it: its label alone says when to throw it away. */
  record NotMeasured(Why why) implements StrengthLeft {}

  /** Why nothing is known. */
  enum Why {
    OTHER_COMPOSITION("no study of this mixture is known"),
    FROZEN("it was colder than 0 \u00b0C, and no study of a frozen vial is known"),
    TOO_WARM("it was warmer than any studied vial"),
    TOO_LONG("it was kept for longer than any studied vial"),
    TOO_MUCH_LOST("it may have lost more than any studied vial");

    private final String words;

    Why(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** The true rate may be so many times the measured one, or the measured so many times it. */
  Sourced<Double> UNSURE =
      new Sourced<>(
          2.0,
          new Source.Assumption(
              "two points give no error bar; another report, from memory, lost about twice as fast"
                  + " in the cold and half as fast at 23 \u00b0C"));

  Set<Component> STUDIED =
      Set.copyOf(EnumSet.of(Component.PAPAVERINE, Component.PHENTOLAMINE, Component.ALPROSTADIL));

  /**
   * What is left in a solution after all of this.
   *
   * <p>A fridge colder than 4 degrees counts as one of 4 where it may have lost much, and as taking
   * nothing where it may have lost little.
   */
  static StrengthLeft of(Set<Component> components, Collection<Kept> kept) {
    if (!components.equals(STUDIED)) {
      return new NotMeasured(Why.OTHER_COMPOSITION);
    }
    Measured cold = Measured.ALPROSTADIL_COLD;
    Measured warm = Measured.ALPROSTADIL_WARM;
    var spells = kept.stream().filter(one -> one.days() > 0).toList();
    if (spells.stream().anyMatch(one -> one.coldest() < 0)) {
      return new NotMeasured(Why.FROZEN);
    }
    if (spells.stream().anyMatch(one -> one.warmest() > warm.celsius())) {
      return new NotMeasured(Why.TOO_WARM);
    }
    if (spells.stream().mapToDouble(Kept::days).sum() > cold.days()) {
      return new NotMeasured(Why.TOO_LONG);
    }
    double slow =
        spells.stream()
            .filter(one -> one.coldest() >= cold.celsius())
            .mapToDouble(one -> perDay(one.coldest()) * one.days())
            .sum();
    double fast =
        spells.stream()
            .mapToDouble(one -> perDay(Math.max(one.warmest(), cold.celsius())) * one.days())
            .sum();
    return Math.exp(-fast) * WHOLE < warm.percent()
        ? new NotMeasured(Why.TOO_MUCH_LOST)
        : new Between(Math.exp(-fast * UNSURE.value()), Math.exp(-slow / UNSURE.value()));
  }

  private static double perDay(double celsius) {
    Measured cold = Measured.ALPROSTADIL_COLD;
    Measured warm = Measured.ALPROSTADIL_WARM;
    return Arrhenius.through(
            warm.celsius(), warm.decay().perTime(), cold.celsius(), cold.decay().perTime())
        .perTimeAt(celsius)
        .orElseThrow();
  }

  /** A whole as percent. */
  int WHOLE = 100;
}
