package rungwise.quantities;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class DoseTextLintTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "10 U",
        "10U",
        "10 IU",
        "10 u",
        "1.0 mL",
        "0.10 mL",
        "2.50 mcg",
        "5.0 units",
        "0.20-mL",
        ".1 mL",
        "inject .5 mL",
        "5 cc",
        "0.5cc",
        "0.5 mL/cc",
        "10 µg",
        "10 μg",
        "200 mcL",
        "q.d.",
        "QD",
        "qod",
        "q.o.d.",
        "0.2 mg QD",
      })
  void what_has_been_misread_is_refused_in_a_dose_and_in_a_sentence(String text) {
    assertThat(DoseTextLint.faultsInDose(text)).isNotEmpty();
    assertThat(DoseTextLint.faultsInProse(text)).isNotEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "0.2 mL.",
        "10mg",
        "0.2mL",
        "1000 units",
        "10000 mcg",
        "> 4 hours",
        "<2 mL",
        "≥ 4 hours",
        "inject IJ",
        "2 mg SC",
        "MSO4 2 mg",
      })
  void what_is_wrong_in_a_dose_only_is_refused_there(String text) {
    assertThat(DoseTextLint.faultsInDose(text)).isNotEmpty();
    assertThat(DoseTextLint.faultsInProse(text)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "0.1 mL",
        "1 mL",
        "10 mL",
        "100 mcg",
        "10 mcg",
        "10.5 mg",
        "0.105 mL",
        "10,000 units",
        "more than 4 hours",
        "U-100 insulin syringe",
        "0.2 mL (20-unit mark on a 0.5 mL U-100 syringe)",
        "30 U-100 syringes",
        "twice a week",
        "20 mcg/mL",
        "every 20 minutes",
        "success",
        "0.2 mL (20-unit mark on a 0.5 mL U-100 syringe) of papaverine hydrochloride 30 mg, "
            + "phentolamine mesylate 1 mg, alprostadil 10 mcg per mL: papaverine 6 mg, "
            + "phentolamine 0.2 mg, alprostadil 2 mcg",
      })
  void what_is_plain_is_accepted(String text) {
    assertThat(DoseTextLint.faultsInDose(text)).isEmpty();
    assertThat(DoseTextLint.faultsInProse(text)).isEmpty();
  }

  @Test
  void each_kind_of_fault_is_reported_once_with_what_to_write_instead() {
    String text = ".5 cc of 1.0 mL";

    var faults = DoseTextLint.faultsInDose(text);

    assertThat(faults).hasSize(3);
    assertThat(faults).anySatisfy(fault -> assertThat(fault).contains("write mL"));
    assertThat(faults).anySatisfy(fault -> assertThat(fault).contains("write a zero before it"));
    assertThat(faults).anySatisfy(fault -> assertThat(fault).contains("leave it out"));
  }

  @Test
  void amounts_print_themselves_without_a_fault() {
    for (long microlitres = 1; microlitres <= 2000; microlitres++) {
      String printed = Volume.ofMicrolitres(microlitres).toString();

      assertThat(DoseTextLint.faultsInDose(printed)).isEmpty();
    }
    for (long picograms = 1; picograms < 1_000_000_000_000L; picograms = picograms * 3 + 1) {
      String printed = Mass.ofPicograms(picograms).toString();

      assertThat(DoseTextLint.faultsInDose(printed)).isEmpty();
    }
  }
}
