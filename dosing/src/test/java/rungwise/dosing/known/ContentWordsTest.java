package rungwise.dosing.known;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import rungwise.quantities.Mass;
import rungwise.quantities.Volume;

/** A content is read in no more digits than a syringe can tell apart, and reckoned with exactly. */
final class ContentWordsTest {

  /** Arithmetic: 0.33 mL of 17.65 mg, 0.59 mg and 5.88 mcg per mL. */
  @Test
  void no_more_than_three_digits_are_shown() {
    Volume volume = Volume.ofMicrolitres(330);

    assertThat(SamplePreparations.THREE_DRUG_BENNETT.contentOf(volume))
        .isEqualTo("papaverine 5.82 mg, phentolamine 0.195 mg, alprostadil 1.94 mcg");
    assertThat(
            SamplePreparations.THREE_DRUG_BENNETT
                .ingredient(Component.PAPAVERINE)
                .orElseThrow()
                .in(volume))
        .isEqualTo(Mass.parse("5.8245 mg").orThrow());
  }

  @Test
  void a_content_that_needs_fewer_digits_keeps_them() {
    assertThat(SamplePreparations.THREE_DRUG.contentOf(Volume.ofMicrolitres(200)))
        .isEqualTo("papaverine 6 mg, phentolamine 0.2 mg, alprostadil 2 mcg");
    assertThat(SamplePreparations.ALPROSTADIL_20.contentOf(Volume.ofMicrolitres(125)))
        .isEqualTo("alprostadil 2.5 mcg");
  }

  /** Rounded, 0.701 mL of 20 mcg/mL would read as the limit of 14 mcg that it passes. */
  @Test
  void beside_a_limit_every_digit_is_shown() {
    Ingredient alprostadil = SamplePreparations.ALPROSTADIL_20.ingredients().getFirst();

    assertThat(alprostadil.exactWords(Volume.ofMicrolitres(701)))
        .isEqualTo("alprostadil 14.02 mcg");
    assertThat(alprostadil.contentWords(Volume.ofMicrolitres(701))).isEqualTo("alprostadil 14 mcg");
  }
}
