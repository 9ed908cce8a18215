package rungwise.dosing.urgent.rescue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;

/** What is typed of a strength or a dose, and why it is not read. */
final class TypedTest {

  private static final long SEED = 20_261_130;
  private static final int CASES = 5_000;

  private static Class<?> why(Typed<?> typed) {
    return typed instanceof Typed.Refused<?> refused ? refused.why().getClass() : Void.class;
  }

  private static Class<?> whyStrength(String text) {
    return why(Typed.strength(Asked.STOCK, text));
  }

  private static Class<?> whyDose(String text) {
    return why(Typed.dose(text));
  }

  @ParameterizedTest
  @CsvSource({
    "10 mg/mL,10000000",
    "10mg/ml,10000000",
    "10000 mcg/mL,10000000",
    "100 mcg/mL,100000",
    "0.1 mg/mL,100000",
    "10.0 mg/mL,10000000"
  })
  void a_mass_per_millilitre_is_read(String text, long picogramsPerMicrolitre) {
    assertThat(Typed.strength(Asked.STOCK, text))
        .isInstanceOfSatisfying(
            Typed.Read.class,
            read -> assertThat(read.value()).isEqualTo(new Concentration(picogramsPerMicrolitre)));
  }

  @Test
  void a_zero_at_the_end_is_read_with_a_notice() {
    var read = (Typed.Read<Concentration>) Typed.strength(Asked.STOCK, "10.0 mg/mL");

    assertThat(read.notices()).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1:1000",
        "1:100",
        "1 : 1000",
        "1:1,000",
        "1\u22361000",
        "1\uFF1A1000",
        "1\uA7891000",
        "1/1000",
        "1 / 1000",
        "1\u20441000",
        "1\u22151000",
        "1 in 1000",
        "1 in 1,000",
        "1in1000",
        "1 to 1000",
        "1 per 1000",
        "1-in-1000",
        "1\u2011in\u20111000",
        "1 in a 1000",
        "1 IN 1000",
        "1-1000",
        "1\u20131000",
        "1 part in 1000",
        "one part per thousand",
        "one in a thousand",
        "1%",
        "0.1 %",
        "1 percent",
        "1 per cent",
        "1\uFF05",
        "1\u066A",
        "1\u2030",
        "1 pct",
        "10 mg/mL (1:100)",
        "1:1000 mg/mL",
        "10 mg/mL = 1%",
        "1000 ppm",
        "1 w/v",
        "1 out of 1000"
      })
  void every_ratio_and_percentage_is_refused_as_one(String text) {
    assertThat(whyStrength(text)).isEqualTo(Refusal.Ratio.class);
    assertThat(whyDose(text)).isEqualTo(Refusal.Ratio.class);
  }

  @Test
  void a_ratio_of_any_two_numbers_in_any_of_its_spellings_is_never_read() {
    var random = new Random(SEED);
    List<String> between = List.of(":", " : ", "/", " in ", " to ", " per ", "\u2236", " over ");
    for (int i = 0; i < CASES; i++) {
      String text =
          1
              + random.nextInt(100)
              + between.get(random.nextInt(between.size()))
              + (1 + random.nextInt(1_000_000))
              + (random.nextBoolean() ? "" : " mg/mL");

      assertThat(whyStrength(text)).as("seed %s: %s", SEED, text).isEqualTo(Refusal.Ratio.class);
      assertThat(whyDose(text)).as("seed %s: %s", SEED, text).isEqualTo(Refusal.Ratio.class);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"10", " 10 ", "0.1", "10,000", "1000"})
  void a_number_without_a_unit_is_refused_as_one(String text) {
    assertThat(whyStrength(text)).isEqualTo(Refusal.NoUnit.class);
    assertThat(whyDose(text)).isEqualTo(Refusal.NoUnit.class);
  }

  @ParameterizedTest
  @ValueSource(strings = {"10 mL", "1 ml", "10mL", "0.5 cc", "10 mL/mL", "2 mls", "5 millilitres"})
  void a_volume_for_a_mass_is_refused_as_one(String text) {
    assertThat(whyStrength(text)).isEqualTo(Refusal.VolumeForMass.class);
    assertThat(whyDose(text)).isEqualTo(Refusal.VolumeForMass.class);
  }

  @ParameterizedTest
  @ValueSource(strings = {"10 mg", "200 mcg"})
  void a_mass_alone_is_no_strength_and_is_a_dose(String text) {
    assertThat(whyStrength(text)).isEqualTo(Refusal.MassWithoutVolume.class);
    assertThat(Typed.dose(text)).isInstanceOf(Typed.Read.class);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "mg/mL",
        "10 \u00B5g/mL",
        "10 ug/mL",
        "10 units/mL",
        "1e1 mg/mL",
        "-10 mg/mL",
        ".5 mg/mL",
        "0 mg/mL",
        "10 mg/5 mL",
        "ten mg/mL",
        "10 g/mL",
        "10 mcg/cc"
      })
  void anything_else_is_refused_with_what_to_write(String text) {
    assertThat(whyStrength(text)).isEqualTo(Refusal.NotRead.class);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "mcg", "200 \u00B5g", "200 ug", "20 units", "2e2 mcg", "0 mcg"})
  void no_other_spelling_of_a_dose_is_read(String text) {
    assertThat(whyDose(text)).isEqualTo(Refusal.NotRead.class);
  }

  @Test
  void a_dose_keeps_its_unit() {
    assertThat(Typed.dose("200 mcg")).isEqualTo(Typed.dose("0.2 mg"));
    assertThat(((Typed.Read<Mass>) Typed.dose("0.2 mg")).value())
        .isEqualTo(Mass.ofPicograms(200_000_000));
  }

  @Test
  void what_was_typed_is_shown_short_and_with_nothing_that_acts() {
    var refused = (Typed.Refused<Mass>) Typed.dose("1:1000\u202E" + "0".repeat(100));

    assertThat(refused.why().words()).contains("\"1:1000?").doesNotContain("\u202E");
    assertThat(refused.why().words().length()).isLessThan(250);
  }

  @Test
  void forty_characters_are_shown_whole_and_one_more_is_not() {
    String forty = "1:1000" + "0".repeat(34);

    assertThat(why("dose", forty)).contains("\"" + forty + "\"");
    assertThat(why("dose", forty + "0")).contains("\"" + forty + "...\"");
  }

  private static String why(String what, String typed) {
    return Typed.dose(typed) instanceof Typed.Refused<?> refused ? refused.why().words() : what;
  }
}
