package rungwise.dosing.known;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rungwise.quantities.MassUnit;

final class LabelTest {

  @Test
  void a_label_is_read_as_exactly_what_it_says() {
    for (Preparation sample : SamplePreparations.all()) {
      assertThat(Preparation.ofLabel(sample.composition()))
          .hasValueSatisfying(read -> assertThat(read.isSameAs(sample)).isTrue());
    }
  }

  /** The strength is worked out by hand: 17.65 mg/mL of one component and nothing else. */
  @Test
  void a_strength_is_of_the_component_that_the_label_names() {
    Preparation read =
        Preparation.ofLabel("papaverine hydrochloride 17.65 mg per mL").orElseThrow();

    assertThat(read.ingredients()).hasSize(1);
    assertThat(read.ingredient(Component.PAPAVERINE).orElseThrow().strength())
        .hasToString("17.65 mg/mL");
    assertThat(read.ingredient(Component.PAPAVERINE).orElseThrow().component().unit())
        .isEqualTo(MassUnit.MILLIGRAM);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " per mL",
        "alprostadil 20 mcg",
        "alprostadil 20 mg per mL",
        "alprostadil 20.0 mcg per mL",
        "alprostadil 20 mcg per mL.",
        "alprostadil 20 mcg, alprostadil 20 mcg per mL",
        "alprostadil 20 mcg, something 1 mg per mL",
        "papaverine 30 mg per mL"
      })
  void whatever_is_no_composition_is_not_guessed(String label) {
    assertThat(Preparation.ofLabel(label)).isEmpty();
  }
}
