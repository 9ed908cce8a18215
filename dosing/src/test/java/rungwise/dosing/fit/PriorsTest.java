package rungwise.dosing.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rungwise.dosing.response.Population;

/** Assumed parameters, moved by what is believed of them. */
final class PriorsTest {

  private static final Population POPULATION =
      new Population(
          1.2, Map.of("vasculogenic", 0.0, "mixed", -0.1), 1.69, 3, -1.5, 1.5, 3.7, 0.5, 0.45);
  private static final double EXACT = 1e-12;

  private static Priors.Moved only(String name) {
    List<Priors.Moved> found = Priors.moved(POPULATION, Set.of(name));
    assertThat(found).singleElement().extracting(Priors.Moved::name).isEqualTo(name);
    return found.getFirst();
  }

  /** The deviations stand in docs/model-card.md, with the beliefs of the fit. */
  @Test
  void each_is_moved_by_one_deviation_on_its_own_scale() {
    double twice = Math.exp(0.7);

    assertThat(only("beta").more().beta()).isCloseTo(3 * twice, within(EXACT));
    assertThat(only("beta").less().beta()).isCloseTo(3 / twice, within(EXACT));
    assertThat(only("c2").more().c2()).isCloseTo(-1.5 * twice, within(EXACT));
    assertThat(only("d1").less().d1()).isCloseTo(0.5 / Math.E, within(EXACT));
    assertThat(only("d0").more().d0()).isCloseTo(4.7, within(EXACT));
    assertThat(only("mu").less().mu()).isCloseTo(-0.8, within(EXACT));
    assertThat(only("gamma of mixed").more().gammas()).containsEntry("mixed", 0.9);
  }

  @Test
  void nothing_else_moves_with_it() {
    Population more = only("tau").more();

    assertThat(more)
        .usingRecursiveComparison()
        .ignoringFields("tau")
        .withComparatorForType((one, other) -> Math.abs(one - other) < EXACT ? 0 : 1, Double.class)
        .isEqualTo(POPULATION);
  }

  @Test
  void it_stays_what_a_population_may_be() {
    assertThat(only("omega").more().omega()).isCloseTo(2.5, within(EXACT));
  }

  @Test
  void everything_is_every_parameter_and_other_words_are_none() {
    assertThat(Priors.moved(POPULATION, Set.of("everything")))
        .extracting(Priors.Moved::name)
        .containsExactly("mu", "gamma of mixed", "omega", "beta", "c2", "c4", "d0", "d1", "tau");
    assertThat(Priors.moved(POPULATION, Set.of("groups"))).isEmpty();
    assertThat(Priors.moved(POPULATION, Set.of())).isEmpty();
  }
}
