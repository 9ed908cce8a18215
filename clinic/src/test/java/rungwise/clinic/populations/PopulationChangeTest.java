package rungwise.clinic.populations;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rungwise.clinic.people.AccountId;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.response.Population;

/** What another population says otherwise, in volumes that can be set side by side. */
final class PopulationChangeTest {

  private static final double HALF_AT_200_MICROLITRES = Math.log(2);

  private static Population population(double mu) {
    return new Population(
        mu, Map.of("vasculogenic", 0.0), 0.7, 2.2, -1.5, 1.5, Math.log(40), 0.5, 0.4);
  }

  private static SignedPopulation inUse(Population population, Preparation reference) {
    return new SignedPopulation(
        new PopulationShelf.Signed(
            "before", 1, "", List.of(reference.id()), AccountId.PROGRAM, Instant.EPOCH),
        new PopulationDocument(population, reference.id().value(), Origin.BROUGHT_IN, Set.of()),
        reference,
        List.of(reference),
        List.of(reference),
        Optional.empty());
  }

  private static String nowOf(PopulationChange change) {
    return change.lines().getFirst().now();
  }

  @Test
  void a_population_of_a_stronger_preparation_is_read_in_volumes_of_the_weaker_one() {
    SignedPopulation strong =
        inUse(population(HALF_AT_200_MICROLITRES), SamplePreparations.ALPROSTADIL_40);

    PopulationChange change =
        PopulationChange.of(
                strong, population(HALF_AT_200_MICROLITRES), SamplePreparations.ALPROSTADIL_20)
            .orElseThrow();

    // 0.2 mL of 40 mcg/mL holds as much as 0.4 mL of 20 mcg/mL.
    assertThat(nowOf(change)).startsWith("0.4 mL ");
    assertThat(change.lines().getFirst().then()).startsWith("0.2 mL ");
  }

  @Test
  void the_same_population_says_the_same() {
    SignedPopulation same = inUse(population(1), SamplePreparations.ALPROSTADIL_20);

    PopulationChange change =
        PopulationChange.of(same, population(1), SamplePreparations.ALPROSTADIL_20).orElseThrow();

    assertThat(change.inUse()).isEqualTo("before version 1");
    assertThat(change.lines()).hasSize(6).allMatch(line -> line.now().equals(line.then()));
  }

  @Test
  void nothing_is_compared_where_no_strength_is_known() {
    Preparation mixture =
        SamplePreparations.all().stream()
            .filter(one -> one.ingredients().size() > 1)
            .findFirst()
            .orElseThrow();

    assertThat(
            PopulationChange.of(
                inUse(population(1), mixture), population(1), SamplePreparations.ALPROSTADIL_20))
        .isEmpty();
  }
}
