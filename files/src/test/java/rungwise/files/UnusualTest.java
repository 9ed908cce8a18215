package rungwise.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import rungwise.dosing.protocol.ToConfirm;
import rungwise.dosing.protocol.Unusual;

/**
 * What a signer confirms singly. Published: first dose 2.5 mcg, 1.25 mcg after a spinal cord
 * injury, steps of 5 to 10 mcg, at most 60 mcg (US syringe label, 2); at most 40 mcg and steps of
 * 2.5 to 5 mcg (UK text, 4.2); at most 40 mcg (US cartridge label).
 */
final class UnusualTest {

  private static final String LABEL = document("us-vial-syringe-label");
  private static final String UK = document("uk-label");
  private static final String MIXTURE = document("cautious-mixture");

  private static String document(String name) {
    return SampleProtocols.documents().stream()
        .filter(document -> document.contains("protocol: " + name))
        .findFirst()
        .orElseThrow();
  }

  private static List<ToConfirm> in(String document) {
    return Unusual.in(ProtocolFile.read(document).orThrow());
  }

  private static List<String> numbers(String document) {
    return in(document).stream().map(ToConfirm::number).toList();
  }

  @Test
  void no_sample_has_a_number_to_confirm() {
    assertThat(SampleProtocols.documents())
        .allSatisfy(document -> assertThat(in(document)).isEmpty());
  }

  @Test
  void a_maximum_past_the_text_that_it_cites_is_named_with_number_and_source() {
    String higher = LABEL.replace("dose: 60 mcg of", "dose: 61 mcg of");

    assertThat(in(higher))
        .singleElement()
        .extracting(ToConfirm::number)
        .isEqualTo("ceiling: 61 mcg");
    assertThat(in(higher).getFirst().words())
        .contains("60 mcg", "dual-chamber syringe", "2: above 60 not recommended");
    assertThat(numbers(UK.replace("dose: 40 mcg of", "dose: 41 mcg of")))
        .containsExactly("ceiling: 41 mcg");
  }

  @Test
  void another_kind_of_source_does_not_hide_that_no_text_goes_so_far() {
    String own = "source: {common_practice: \"as we do it\"}";
    String higher =
        LABEL.replaceFirst(
            "dose: 60 mcg of alprostadil\n  source: .*", "dose: 80 mcg of alprostadil\n  " + own);

    assertThat(in(higher)).singleElement().asString().contains("80 mcg", "as we do it");
    assertThat(in(higher.replace("dose: 80 mcg of", "dose: 60 mcg of"))).isEmpty();
  }

  @Test
  void a_first_dose_past_the_label_is_named_for_each_group() {
    assertThat(numbers(LABEL.replace("dose: 2.5 mcg of", "dose: 5 mcg of")))
        .containsExactly(
            "start vasculogenic: 5 mcg", "start psychogenic: 5 mcg", "start mixed: 5 mcg");
    assertThat(numbers(LABEL.replaceFirst("dose: 1.25 mcg of", "dose: 2.5 mcg of")))
        .containsExactly("start spinal_cord: 2.5 mcg");
  }

  /** From 2.5 mcg, 2.5 mcg more is exactly double: not more. */
  @Test
  void a_step_that_more_than_doubles_a_dose_is_named_with_that_dose() {
    String steep = LABEL.replaceFirst("add: 2.5 mcg", "add: 3 mcg");

    assertThat(in(steep))
        .singleElement()
        .extracting(ToConfirm::why)
        .isEqualTo("more than doubles a dose of 2.5 mcg");
  }

  /** Nine times more of everything: 0.05 mL, then 0.5 mL. */
  @Test
  void a_ninefold_step_of_a_mixture_is_named() {
    String steep =
        MIXTURE.replace("add: 0.05 mL", "add: 0.45 mL").replace("at_most: 0.05", "at_most: 0.45");

    assertThat(numbers(steep)).containsExactly("steps up to 0.5 mL: 0.45 mL");
  }

  /** 10 mcg is the most that a label adds; 0.2 mL of a mixture of 60 mcg per mL holds 12. */
  @Test
  void a_step_of_more_than_ten_micrograms_is_named_in_a_mixture_too() {
    String more =
        LABEL.replace("add: 5 mcg", "add: 10.1 mcg").replace("most: 10 mcg", "most: 11 mcg");
    assertThat(numbers(more)).contains("steps up to 60 mcg: 10.1 mcg");

    String strong =
        MIXTURE
            .replace("10 mcg/mL", "60 mcg/mL")
            .replace("most: 5 mcg of alprostadil", "most: 30 mcg of alprostadil")
            .replace("dose: 0.05 mL", "dose: 0.2 mL")
            .replace("add: 0.05 mL", "add: 0.2 mL")
            .replace("at_most: 0.05", "at_most: 0.2");
    assertThat(in(strong).stream().filter(one -> one.number().startsWith("steps")))
        .singleElement()
        .asString()
        .contains("10 mcg of alprostadil");
  }

  @Test
  void another_number_is_another_thing_to_confirm() {
    assertThat(numbers(LABEL.replace("dose: 60 mcg of", "dose: 70 mcg of")))
        .doesNotContainAnyElementsOf(numbers(LABEL.replace("dose: 60 mcg of", "dose: 80 mcg of")));
  }
}
