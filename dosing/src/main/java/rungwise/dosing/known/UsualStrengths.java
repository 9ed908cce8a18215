package rungwise.dosing.known;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rungwise.quantities.Concentration;

/**
 * The strengths that published compositions have. One far outside is most often a slip of the
 * decimal point or of the unit, so it is asked back; it is not refused, because a clinic may have
 * what nobody has published.
 */
public final class UsualStrengths {

  /** Outside half of the weakest to twice the strongest; a ten-fold slip always lies outside. */
  private static final double FACTOR = 2;

  private UsualStrengths() {}

  /** What to say of a strength that lies far outside the published ones. */
  public static Optional<String> notice(Component component, Concentration strength) {
    List<Concentration> published =
        SamplePreparations.all().stream()
            .flatMap(one -> one.ingredient(component).stream())
            .map(Ingredient::strength)
            .sorted(Comparator.naturalOrder())
            .toList();
    Concentration weakest = published.getFirst();
    Concentration strongest = published.getLast();
    if (strength.ratioTo(strongest) <= FACTOR && weakest.ratioTo(strength) <= FACTOR) {
      return Optional.empty();
    }
    return Optional.of(
        component.fullName()
            + " "
            + strength.in(component.unit())
            + " is far outside the published strengths of "
            + weakest.in(component.unit())
            + " to "
            + strongest.in(component.unit())
            + ": check the point and the unit against the label.");
  }
}
