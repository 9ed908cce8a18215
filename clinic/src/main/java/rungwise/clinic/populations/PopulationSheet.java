package rungwise.clinic.populations;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.response.Population;
import rungwise.dosing.response.RelativeStrength;

/**
 * A document as it is looked at before it is signed.
 *
 * @param reference the preparation whose strength is 1
 * @param fits what it can say of each preparation that the clinic keeps
 */
public record PopulationSheet(PopulationDocument document, Preparation reference, List<Fit> fits) {

  /**
   * What a population can say of a preparation.
   *
   * @param strength relative to the reference; empty if it is not known exactly
   */
  public record Fit(Preparation preparation, Optional<Double> strength, String words) {

    static Fit of(Preparation preparation, Preparation reference) {
      return switch (RelativeStrength.of(preparation, reference)) {
        case RelativeStrength.Exactly(double strength) ->
            new Fit(
                preparation,
                Optional.of(strength),
                strength == 1
                    ? "holds the same as the population's preparation"
                    : "holds the same single component, so that its strength is known exactly");
        case RelativeStrength.Uncertain uncertain ->
            new Fit(
                preparation,
                Optional.empty(),
                "holds the same components in other proportions: no table says how strong it is,"
                    + " so there is no forecast");
        case RelativeStrength.NotKnown unknown ->
            new Fit(
                preparation,
                Optional.empty(),
                "does not hold the same components: there is no forecast");
      };
    }
  }

  public PopulationSheet {
    fits = List.copyOf(fits);
  }

  /** The groups of which it says nothing: their men have no forecast. */
  public List<AetiologyGroup> groupsWithout() {
    return groupsWithout(document.population());
  }

  /** The groups of which a population says nothing. */
  public static List<AetiologyGroup> groupsWithout(Population population) {
    return Arrays.stream(AetiologyGroup.values())
        .filter(group -> population.meanOf(group.token()).isEmpty())
        .toList();
  }
}
