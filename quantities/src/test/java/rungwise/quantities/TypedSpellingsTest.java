package rungwise.quantities;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What a person may type for an amount, what is refused, and what the refusal tells him. */
final class TypedSpellingsTest {

  private static final String VOLUME_ADVICE =
      "; enter digits with at most 3 decimal places, such as 0.2 mL";
  private static final String MASS_ADVICE =
      "; enter digits with at most 6 decimal places, such as 2.5 mcg";
  private static final String STRENGTH_ADVICE =
      "; enter digits with at most 3 decimal places, such as 20 mcg/mL";

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      ignoreLeadingAndTrailingWhitespace = false,
      value = {
        "''|nothing was entered",
        "' '|nothing was entered",
        "'\u00A0'|nothing was entered",
        "1e3|powers of ten are not read",
        "1E-3 mL|powers of ten are not read",
        ".5|write a zero before the point, 0.5 mL",
        ".5 mL|write a zero before the point, 0.5 mL",
        "0,5|write a point, not a comma, and no comma between thousands",
        "1,000|write a point, not a comma, and no comma between thousands",
        "1,000,000|write a point, not a comma, and no comma between thousands",
        "1,000.5|write a point, not a comma, and no comma between thousands",
        "-1|leave out the sign",
        "+1|leave out the sign",
        "\u22121|leave out the sign",
        "00.5|leave out the zeros at the front",
        "05|leave out the zeros at the front",
        "1.|write a digit after the point, or leave the point out",
        "1 . 5|there is a space inside the number",
        "1 000|there is a space inside the number",
        "1\u00A0000|there is a space inside the number",
        "1/2|write a number with a point, not a fraction",
        "\u00BD|write it with the digits 0 to 9 and at most one point",
        "\u0663|write it with the digits 0 to 9 and at most one point",
        "\u0967.\u0968|write it with the digits 0 to 9 and at most one point",
        "\uFF11|write it with the digits 0 to 9 and at most one point",
        "1_000|write it with the digits 0 to 9 and at most one point",
        "1.2.3|write it with the digits 0 to 9 and at most one point",
        ".|write it with the digits 0 to 9 and at most one point",
        "0x10|\"x10\" is not a unit that is read here",
        "5f|\"f\" is not a unit that is read here",
        "5 %|\"%\" is not a unit that is read here",
        "0.2 mL.|\"mL.\" is not a unit that is read here",
        "NaN|the number is missing",
        "Infinity|the number is missing",
        "mL|the number is missing",
        "0|it must be more than 0",
        "0.0|it must be more than 0",
        "0.000 mL|it must be more than 0",
        "0.0625|it has more decimal places than can be kept",
        "1001|it is too large, the most that is read is 1,000 mL",
        "5 U|a syringe's units are marks, not an amount",
        "5U|a syringe's units are marks, not an amount",
        "5 units|a syringe's units are marks, not an amount",
        "5 iu|a syringe's units are marks, not an amount",
        "5cc|\"cc\" is misread as \"u\" or as zeros",
        "5 CC|\"cc\" is misread as \"u\" or as zeros",
        "200 \u00B5L|write the volume in mL",
        "200 \u03BCL|write the volume in mL",
        "200 uL|write the volume in mL",
        "2 mg|that is a mass, and a volume is asked for",
        "2 mcg|that is a mass, and a volume is asked for",
      })
  void a_refused_volume_says_what_was_given_and_what_to_write(String given, String why) {
    Reading<Volume> reading = Volume.parseMillilitres(given);

    assertThat(reading.faults())
        .containsExactly("\"" + given + "\" is not a volume in mL: " + why + VOLUME_ADVICE);
    assertThat(reading.found()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1 mL|that is a volume, and a mass is asked for",
        "10 \u00B5g|the micro sign is misread as mg, write mcg",
        "10 \u03BCg|the micro sign is misread as mg, write mcg",
        "10 ug|\"ug\" is a code for machines, write mcg",
        "10 U|units are marks on a syringe, not an amount",
        "10 IU|units are marks on a syringe, not an amount",
        "1 g|write the mass in mcg or mg",
        "2.5|the unit is missing",
        "0.0000001 mcg|it has more decimal places than can be kept",
      })
  void a_refused_mass_says_what_was_given_and_what_to_write(String given, String why) {
    Reading<Mass> reading = Mass.parse(given);

    assertThat(reading.faults())
        .containsExactly("\"" + given + "\" is not a mass in mcg or mg: " + why + MASS_ADVICE);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "20|the unit is missing",
        "20 mcg|the volume is missing, write mcg/mL",
        "30 mg|the volume is missing, write mg/mL",
        "20 \u00B5g/mL|the micro sign is misread as mg, write mcg/mL",
        "20 \u03BCg/mL|the micro sign is misread as mg, write mcg/mL",
        "20 ug/mL|\"ug\" is a code for machines, write mcg/mL",
        "20 mcg/cc|\"cc\" is misread as \"u\" or as zeros, write mcg/mL",
        "20 mcg per mL|\"mcg per mL\" is not a unit that is read here",
        "20 units/mL|\"units/mL\" is not a unit that is read here",
        "0 mcg/mL|it must be more than 0",
      })
  void a_refused_strength_says_what_was_given_and_what_to_write(String given, String why) {
    Reading<Concentration> reading = Concentration.parse(given);

    assertThat(reading.faults())
        .containsExactly(
            "\"" + given + "\" is not a strength in mcg/mL or mg/mL: " + why + STRENGTH_ADVICE);
  }

  @Test
  void the_advice_speaks_of_the_unit_that_was_written() {
    Reading<Mass> reading = Mass.parse("0.0000000001 mg");

    assertThat(reading.faults())
        .containsExactly(
            "\"0.0000000001 mg\" is not a mass in mcg or mg: it has more decimal places than can"
                + " be kept; enter digits with at most 9 decimal places, such as 2.5 mg");
  }

  @ParameterizedTest
  @CsvSource(
      ignoreLeadingAndTrailingWhitespace = false,
      value = {
        "0.2",
        "' 0.2 '",
        "0.2mL",
        "0.2 mL",
        "0.2 ml",
        "0.2 ML",
        "0.2  mL",
        "0.2\u00A0mL",
        "0.2\u202FmL",
        "0.2\u2009mL",
        "\u00A00.2 mL\u00A0",
        "0.2\tmL",
      })
  void spaces_and_the_case_of_the_unit_do_not_matter(String given) {
    Reading<Volume> reading = Volume.parseMillilitres(given);

    assertThat(reading).isEqualTo(Reading.of(Volume.ofMicrolitres(200)));
  }

  @ParameterizedTest
  @CsvSource({
    "1.0, 1 mL, 1000",
    "1.00 mL, 1 mL, 1000",
    "0.20, 0.2 mL, 200",
    "0.1250, 0.125 mL, 125",
    "1.000000, 1 mL, 1000",
  })
  void zeros_at_the_end_are_read_with_a_notice(String given, String understood, long microlitres) {
    Reading<Volume> reading = Volume.parseMillilitres(given);

    assertThat(reading.found()).contains(Volume.ofMicrolitres(microlitres));
    assertThat(reading.notices())
        .containsExactly(
            "\""
                + given
                + "\" was read as "
                + understood
                + ": leave out zeros at the end, because a missed point makes ten times as much");
  }

  @Test
  void a_very_long_text_is_refused_quickly_and_is_not_repeated_whole() {
    String number = "1." + "0".repeat(200_000) + "1";

    Reading<Volume> reading = Volume.parseMillilitres(number);

    assertThat(reading.faults())
        .containsExactly(
            "\"1."
                + "0".repeat(38)
                + "...\" is not a volume in mL: it is longer than any amount"
                + VOLUME_ADVICE);
  }

  @Test
  void characters_that_cannot_be_seen_are_shown_as_question_marks() {
    Reading<Volume> reading = Volume.parseMillilitres("0.2\u001B[31m\u202E");

    assertThat(reading.faults())
        .containsExactly(
            "\"0.2?[31m?\" is not a volume in mL: \"m?\" is not a unit that is read here"
                + VOLUME_ADVICE);
  }

  static Stream<Arguments> every_reader() {
    return Stream.of(
        reader("volume in mL", Volume::parseMillilitres),
        reader("volume with its unit", Volume::parse),
        reader("mass with its unit", Mass::parse),
        reader("mass in mcg", Mass::parseMicrograms),
        reader("mass in mg", Mass::parseMilligrams),
        reader("strength with its unit", Concentration::parse),
        reader(
            "strength in mg/mL",
            text -> Concentration.parsePerMillilitre(MassUnit.MILLIGRAM, text)),
        reader("minutes", TimeSpan::parseMinutes),
        reader("minutes from zero", TimeSpan::parseMinutesFromZero),
        reader("minutes of a file", TimeSpan::parseDecimalMinutes));
  }

  private static Arguments reader(String name, Function<String, Reading<?>> read) {
    return Arguments.of(name, read);
  }

  private static Stream<String> dangerousSpellings() {
    return Stream.of(
        "",
        " ",
        "1e3",
        ".5",
        "0,5",
        "5 U",
        "5U",
        "5 units",
        "5cc",
        "00.5",
        "1,000",
        "-1",
        "+1",
        "\u0663",
        "10 \u00B5g",
        "10 \u03BCg",
        "1/2",
        "NaN",
        "Infinity",
        "0x10",
        "1_000",
        "1.",
        "1 . 5",
        "9".repeat(30),
        "0.00000000000001",
        "1d",
        "1L",
        "1 2",
        "--1",
        "1-2",
        "~1");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("every_reader")
  void every_reader_refuses_each_dangerous_spelling(
      String name, Function<String, Reading<?>> read) {
    assertThat(dangerousSpellings().map(read))
        .as(name)
        .allSatisfy(
            reading -> {
              assertThat(reading).isInstanceOf(Reading.Refused.class);
              assertThat(reading.faults()).singleElement().asString().contains("; enter digits");
            });
  }
}
