package rungwise.quantities;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class ConcentrationTest {

  private static final long SEED = 20_260_103;
  private static final int CASES = 20_000;
  private static final long PICOGRAMS_IN_A_MICROGRAM = 1_000_000;

  @ParameterizedTest
  @CsvSource({
    "30 mg/mL, 0.2 mL, 6 mg",
    "1 mg/mL, 0.2 mL, 200 mcg",
    "10 mcg/mL, 0.2 mL, 2 mcg",
    "20 mcg/mL, 0.06 mL, 1.2 mcg",
    "12.5 mcg/mL, 0.001 mL, 0.0125 mcg",
    "0.001 mcg/mL, 0.001 mL, 0.000001 mcg",
    "12.6 mg/mL, 0.24 mL, 3.024 mg",
  })
  void the_content_of_a_volume_is_exact(String strength, String volume, String content) {
    Concentration concentration = Concentration.parse(strength).orThrow();

    Mass mass = concentration.in(Volume.parse(volume).orThrow());

    assertThat(mass).hasToString(content);
  }

  @Test
  void the_content_is_the_decimal_product_of_what_was_typed() {
    var random = new Random(SEED);

    for (int i = 0; i < CASES; i++) {
      BigDecimal perMillilitre = BigDecimal.valueOf(1 + random.nextLong(999_999_998), 3);
      BigDecimal millilitres = BigDecimal.valueOf(1 + random.nextLong(999_999), 3);

      Mass content =
          Concentration.parsePerMillilitre(MassUnit.MICROGRAM, typed(perMillilitre))
              .orThrow()
              .in(Volume.parseMillilitres(typed(millilitres)).orThrow());

      assertThat(BigDecimal.valueOf(content.picograms()))
          .isEqualByComparingTo(
              perMillilitre
                  .multiply(millilitres)
                  .multiply(BigDecimal.valueOf(PICOGRAMS_IN_A_MICROGRAM)));
    }
  }

  private static String typed(BigDecimal number) {
    return number.stripTrailingZeros().toPlainString();
  }

  @Test
  void the_largest_strength_and_volume_that_can_be_typed_have_an_exact_content() {
    Concentration strength = Concentration.parse("1000 mg/mL").orThrow();
    Volume volume = Volume.parse("1000 mL").orThrow();

    assertThat(Concentration.parse("1000.000001 mg/mL").found()).isEmpty();
    assertThat(Volume.parse("1000.001 mL").found()).isEmpty();
    assertThat(strength.in(volume).picograms()).isEqualTo(1_000_000_000_000_000L);
  }

  @Test
  void a_content_that_is_too_large_is_refused_and_does_not_wrap() {
    var strength = new Concentration(Long.MAX_VALUE);

    assertThatThrownBy(() -> strength.in(Volume.ofMicrolitres(2)))
        .isInstanceOf(ArithmeticException.class);
  }

  @Test
  void a_mass_in_a_volume_makes_a_strength() {
    Concentration made =
        Concentration.of(Mass.parse("10 mcg").orThrow(), Volume.parse("0.5 mL").orThrow());

    assertThat(made).isEqualTo(Concentration.parse("20 mcg/mL").orThrow());
  }

  @Test
  void a_strength_that_would_need_rounding_is_not_made() {
    Mass mass = Mass.ofPicograms(10);

    assertThatThrownBy(() -> Concentration.of(mass, Volume.ofMicrolitres(3)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("bug:");
    assertThatThrownBy(() -> Concentration.of(mass, Volume.ZERO))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("bug:");
    assertThatThrownBy(() -> new Concentration(0)).hasMessageStartingWith("bug:");
    assertThatThrownBy(() -> new Concentration(-1)).hasMessageStartingWith("bug:");
  }

  @Test
  void a_strength_prints_in_the_unit_of_its_label() {
    Concentration strength = Concentration.parse("30 mg/mL").orThrow();

    assertThat(strength.in(MassUnit.MILLIGRAM)).isEqualTo("30 mg/mL");
    assertThat(strength.in(MassUnit.MICROGRAM)).isEqualTo("30,000 mcg/mL");
    assertThat(strength.numberIn(MassUnit.MILLIGRAM)).isEqualTo("30");
    assertThat(strength.numberIn(MassUnit.MICROGRAM)).isEqualTo("30,000");
    assertThat(strength).hasToString("30 mg/mL");
    assertThat(Concentration.parse("0.02 mg/mL").orThrow()).hasToString("20 mcg/mL");
  }

  @Test
  void every_strength_reads_back_as_it_was_printed() {
    var random = new Random(SEED);

    for (int i = 0; i < CASES; i++) {
      var weak = new Concentration(1 + random.nextLong(999_999));
      var strong = new Concentration(1 + random.nextLong(999_999_999));

      assertThat(Concentration.parse(weak.toString())).isEqualTo(Reading.of(weak));
      assertThat(Concentration.parse(strong.toString())).isEqualTo(Reading.of(strong));
      assertThat(
              Concentration.parsePerMillilitre(
                  MassUnit.MILLIGRAM, strong.numberIn(MassUnit.MILLIGRAM)))
          .isEqualTo(Reading.of(strong));
    }
  }

  @Test
  void strengths_compare_whatever_unit_they_were_written_in() {
    Concentration weak = Concentration.parse("20 mcg/mL").orThrow();
    Concentration strong = Concentration.parse("1 mg/mL").orThrow();

    assertThat(weak).isLessThan(strong);
    assertThat(weak).isEqualTo(Concentration.parse("0.02 mg/mL").orThrow());
    assertThat(strong.ratioTo(weak)).isEqualTo(50.0);
  }
}
