package rungwise.web.urgent;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rungwise.quantities.DoseTextLint;
import rungwise.quantities.Fault;

/** The page's question: what is refused at which field, and what is shown. */
final class RescueFormTest {

  private static final Map<String, String> USUAL =
      Map.of(
          "stock",
          "10 mg/mL",
          "way",
          "two",
          "wanted",
          "100 mcg/mL",
          "total",
          "10 mL",
          "dose",
          "200 mcg");

  private static RescueForm.Outcome usualBut(String... changes) {
    var typed = new HashMap<>(USUAL);
    for (int index = 0; index < changes.length; index += 2) {
      typed.put(changes[index], changes[index + 1]);
    }
    return new RescueForm(typed).answer();
  }

  private static List<String> fieldsOf(RescueForm.Outcome outcome) {
    return outcome.faults().all().stream().map(Fault::field).toList();
  }

  private static Prepared prepared(RescueForm.Outcome outcome) {
    return Prepared.of(outcome).orElseThrow();
  }

  @Test
  void nothing_asked_is_nothing_refused_and_nothing_shown() {
    RescueForm.Outcome outcome = new RescueForm(Map.of()).answer();

    assertThat(outcome.faults().isEmpty()).isTrue();
    assertThat(Prepared.of(outcome)).isEmpty();
    assertThat(outcome.gas()).isEmpty();
  }

  /** 1 mL and 9 mL, twice: rows G008 and G013 of clinical-checks.csv. */
  @Test
  void two_steps_are_shown_with_both_strengths_and_the_volume_of_a_dose() {
    Prepared shown = prepared(usualBut());

    assertThat(shown.dose().volume()).isEqualTo("2 mL");
    assertThat(shown.dose().content()).isEqualTo("phenylephrine 200 mcg");
    assertThat(shown.steps()).hasSize(2);
    assertThat(shown.steps().get(0).gives()).isEqualTo("10 mL of 1,000 mcg/mL (1 mg/mL)");
    assertThat(shown.steps().get(0).isForHim()).isFalse();
    assertThat(shown.steps().get(1).gives()).isEqualTo("10 mL of 100 mcg/mL");
    assertThat(shown.steps().get(1).isForHim()).isTrue();
    assertThat(shown.leftOut()).contains("1,000 mcg/mL", "2 mL", "2,000 mcg instead of 200 mcg");
    assertThat(shown.sum()).contains("5 such doses", "12 min", "20 min");
    assertThat(shown.label()).isEqualTo(new Prepared.Label("phenylephrine 100 mcg/mL", "10 mL"));
  }

  @ParameterizedTest
  @CsvSource({"500 mcg,2 such doses", "600 mcg,1 such dose ", "1100 mcg,One such dose is above"})
  void the_sum_of_an_hour_is_told_with_the_dose(String dose, String words) {
    assertThat(prepared(usualBut("dose", dose, "dose-again", dose)).sum())
        .startsWith(words.strip());
  }

  @Test
  void a_label_of_a_published_strength_is_used_as_it_is_when_it_is_typed_twice() {
    RescueForm.Outcome once = usualBut("stock", "200 mcg/mL", "way", "label");
    RescueForm.Outcome twice =
        usualBut("stock", "200 mcg/mL", "stock-again", "200 mcg/mL", "way", "label");

    assertThat(fieldsOf(once)).containsExactly("stock-again");
    assertThat(prepared(twice).dose().volume()).isEqualTo("1 mL");
    assertThat(prepared(twice).leftOut()).isEmpty();
    assertThat(prepared(twice).label().total()).isEmpty();
    assertThat(fieldsOf(usualBut("stock-again", "10 mg/mL", "way", "label")))
        .containsExactly("stock");
  }

  @ParameterizedTest
  @ValueSource(strings = {"1:1000", "1 in 1000", "1%", "10", "10 mL", "10 mg", ""})
  void what_is_no_strength_is_refused_at_the_stock_and_nothing_is_shown(String stock) {
    RescueForm.Outcome outcome = usualBut("stock", stock);

    assertThat(fieldsOf(outcome)).containsExactly("stock");
    assertThat(outcome.mixing()).isEmpty();
    assertThat(outcome.volume()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "wanted,501 mcg/mL,wanted",
    "wanted,1000 mcg/mL,wanted",
    "wanted,99 mcg/mL,wanted",
    "wanted,100,wanted",
    "total,10,total",
    "total,10.3 mL,way",
    "way,,way",
    "way,three,way",
    "dose,200,dose",
    "dose,2 mL,dose",
    "dose,600 mcg,dose-again",
    "dose,99 mcg,dose-again",
    "dose-again,20 mcg,dose-again",
    "dose-again,20,dose-again",
    "dose,110.5 mcg,dose",
    "stock,5 mg/mL,stock-again",
    "stock-again,1 mg/mL,stock-again"
  })
  void each_refusal_stands_at_its_field(String field, String typed, String at) {
    RescueForm.Outcome outcome = usualBut(field, typed == null ? "" : typed);

    assertThat(fieldsOf(outcome)).containsExactly(at);
    assertThat(Prepared.of(outcome)).isEmpty();
  }

  @Test
  void every_fault_of_both_forms_is_told_at_once_in_the_order_of_the_page() {
    RescueForm.Outcome outcome =
        usualBut(
            "stock",
            "1:1000",
            "wanted",
            "1000 mcg/mL",
            "total",
            "10",
            "dose",
            "900 mcg",
            "oxygen",
            "400 mmHg",
            "carbon-dioxide",
            "65",
            "ph",
            "6.4");

    assertThat(fieldsOf(outcome))
        .containsExactly(
            "stock", "wanted", "total", "dose-again", "oxygen-again", "carbon-dioxide", "ph-again");
    assertThat(outcome.gas()).isEmpty();
  }

  private static GasLine gas(String oxygen, String carbonDioxide, String ph) {
    var typed = Map.of("oxygen", oxygen, "carbon-dioxide", carbonDioxide, "ph", ph);
    RescueForm.Outcome outcome = new RescueForm(typed).answer();
    assertThat(outcome.faults().all()).isEmpty();
    return outcome.gas().flatMap(GasLine::of).orElseThrow();
  }

  /** Rows G036 and G037 of clinical-checks.csv. */
  @Test
  void a_mixed_blood_gas_is_treated_as_ischaemic_until_that_is_excluded() {
    assertThat(gas("25 mmHg", "55 mmHg", "7.3").headline()).contains("treat as ischaemic until");
    assertThat(gas("25 mmHg", "55 mmHg", "7.3").sentence()).startsWith("One of three criteria");
    assertThat(gas("60 mmHg", "30 mmHg", "7.25").sentence()).contains("another sample");
    assertThat(gas("3.3 kPa", "8.7 kPa", "7.2").headline()).isEqualTo("Ischaemic");
    assertThat(gas("95 mmHg", "35 mmHg", "7.40").isGrave()).isFalse();
  }

  @Test
  void a_blood_gas_without_its_units_is_refused() {
    RescueForm.Outcome outcome =
        new RescueForm(Map.of("oxygen", "12", "carbon-dioxide", "5", "ph", "7.4")).answer();

    assertThat(fieldsOf(outcome)).containsExactly("oxygen", "carbon-dioxide");
  }

  @Test
  void what_was_typed_into_one_form_goes_along_with_the_other() {
    RescueForm form = usualBut("oxygen", "25 mmHg", "ph", "7.2").form();

    assertThat(form.held(/* ofGas= */ true)).extracting("name").containsExactly("oxygen", "ph");
    assertThat(form.held(/* ofGas= */ false))
        .extracting("name")
        .containsExactly("stock", "way", "wanted", "total", "dose");
  }

  @Test
  void no_sentence_holds_a_dose_that_can_be_misread() {
    Prepared shown = prepared(usualBut());

    assertThat(shown.steps())
        .allSatisfy(
            step ->
                assertThat(
                        DoseTextLint.faultsInProse(
                            step.draw() + " " + step.add() + " " + step.gives()))
                    .isEmpty());
    assertThat(DoseTextLint.faultsInProse(shown.leftOut() + " " + shown.sum())).isEmpty();
    assertThat(RescueFacts.drug()).contains("raises blood pressure");
    assertThat(RescueFacts.lookAlike()).contains("lowers blood pressure");
  }
}
