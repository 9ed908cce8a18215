package rungwise.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;

final class ProtocolFileTest {

  private static final String SAMPLE = SampleProtocols.documents().getFirst();

  @Test
  void a_document_of_lists_within_lists_is_refused_with_words_and_overflows_nothing() {
    for (String deep :
        List.of("[".repeat(250_000), "[".repeat(60) + "]".repeat(60), "- ".repeat(100_000))) {
      assertThat(ProtocolFile.read(deep).faults())
          .singleElement()
          .asString()
          .contains("lists or parts within each other");
    }
  }

  @Test
  void every_sample_is_read_and_says_that_it_is_a_sample() {
    for (String document : SampleProtocols.documents()) {
      Protocol protocol = ProtocolFile.read(document).orThrow();

      assertThat(protocol.sample()).isTrue();
    }
  }

  @Test
  void the_us_label_sample_starts_and_limits_as_the_label_says() {
    Protocol protocol = ProtocolFile.read(SAMPLE).orThrow();

    assertThat(protocol.startFor(AetiologyGroup.VASCULOGENIC).amount()).hasToString("2.5 mcg");
    assertThat(protocol.startFor(AetiologyGroup.SPINAL_CORD).amount()).hasToString("1.25 mcg");
    assertThat(protocol.ceiling().value()).hasToString("60 mcg");
    assertThat(protocol.limits().spacing().value()).isEqualTo(TimeSpan.ofHours(24));
    assertThat(protocol.limits().inSevenDays().value()).isEqualTo(3);
  }

  @Test
  void a_group_that_is_not_known_takes_the_lowest_start() {
    Protocol protocol = ProtocolFile.read(SAMPLE).orThrow();

    var unknown = protocol.startFor(AetiologyGroup.UNKNOWN).amount();

    assertThat(protocol.starts()).noneMatch(start -> unknown.isMoreThan(start.amount()));
  }

  @Test
  void all_faults_are_named_at_once_with_their_place() {
    String broken =
        SAMPLE
            .replace("version: 1\n", "version: none\n")
            .replace("dose: 2.5 mcg of alprostadil", "dose: 2.5 ug of alprostadil")
            .replace("add_at_most: 10 mcg", "add_at_most: 10 mcg per day")
            .replace("value: 24", "value: 0")
            .replace("satisfactory_minutes", "satisfactory_minute");

    Reading<Protocol> reading = ProtocolFile.read(broken);

    assertThat(reading.faults())
        .anyMatch(fault -> fault.startsWith("version: "))
        .anyMatch(fault -> fault.startsWith("start 1, dose: ") && fault.contains("mcg"))
        .anyMatch(fault -> fault.startsWith("steps 3, add_at_most: "))
        .anyMatch(fault -> fault.startsWith("spacing_hours, value: "))
        .anyMatch(fault -> fault.contains("unknown [satisfactory_minute]"));
  }

  @Test
  void a_protocol_that_contradicts_itself_is_refused() {
    String contradiction =
        SAMPLE
            .replace("groups: [spinal_cord]", "groups: [spinal_cord, mixed]")
            .replace("dose: 60 mcg", "dose: 2 mcg");

    assertThat(ProtocolFile.read(contradiction).faults())
        .anyMatch(fault -> fault.contains("mixed is named 2 times"))
        .anyMatch(fault -> fault.contains("2.5 mcg is above the ceiling of 2 mcg"));
  }

  @Test
  void what_is_not_a_document_is_refused_in_words() {
    assertThat(ProtocolFile.read("").faults()).isNotEmpty();
    assertThat(ProtocolFile.read("- 1\n- 2\n").faults()).isNotEmpty();
    assertThat(ProtocolFile.read("a: [1").faults()).first().asString().contains("not YAML");
    assertThat(ProtocolFile.read("a: &x [*x]").faults()).isNotEmpty();
  }

  @Test
  void a_protocol_that_contradicts_itself_is_refused_with_every_contradiction() {
    String mixture =
        SampleProtocols.documents().stream()
            .filter(document -> document.contains("protocol: cautious-mixture"))
            .findFirst()
            .orElseThrow();
    String broken =
        mixture
            .replace("dose: 0.05 mL", "dose: 0.6 mL")
            .replace("add: 0.05 mL", "add: 0.013 mL")
            .replace("up_to: 0.5 mL", "up_to: 0.7 mL");

    assertThat(ProtocolFile.read(broken).faults())
        .containsExactlyInAnyOrder(
            "start: 0.6 mL is above the ceiling of 0.5 mL",
            "steps: 0.013 mL lies on no printed line of any syringe that is known here",
            "steps: up_to 0.7 mL is above the ceiling of 0.5 mL",
            "component_limits: 15 mg of papaverine hydrochloride is passed by the first dose of"
                + " 0.6 mL",
            "component_limits: 0.5 mg of phentolamine mesylate is passed by the first dose of"
                + " 0.6 mL",
            "component_limits: 5 mcg of alprostadil is passed by the first dose of 0.6 mL");
  }

  @Test
  void a_protocol_that_never_gets_anywhere_is_refused() {
    String still = SAMPLE.replaceFirst("add: [0-9.]+ mcg", "add: 0 mcg");

    assertThat(ProtocolFile.read(still).faults())
        .isNotEmpty()
        .allMatch(fault -> fault.startsWith("steps") && fault.contains("0 mcg"));
  }

  @Test
  void steps_that_go_back_are_refused() {
    String back = SAMPLE.replace("up_to: 2.5 mcg", "up_to: 1 mcg");

    assertThat(ProtocolFile.read(back).faults())
        .containsExactly("steps: up_to 1 mcg does not come after 1.25 mcg");
  }

  @Test
  void a_document_that_is_taken_apart_and_written_again_says_the_same() {
    var reader = new SampleProtocolReader();

    assertThat(SampleProtocols.documents())
        .allSatisfy(
            document ->
                assertThat(reader.read(reader.document(reader.parts(document))).orThrow())
                    .isEqualTo(reader.read(document).orThrow()));
  }

  private static final String WHOLE =
      SAMPLE
          + """
          holds_from: 2026-12-01
          component_limits:
            - most: 60 mcg of alprostadil
              source: {assumption: "as the ceiling"}
          emergency_plan:
            - ask: who stays with him that night
              source: {assumption: "this clinic's own"}
          readiness_months:
            value: 12
            source: {assumption: "this clinic's own"}
          """;

  @Test
  void what_a_protocol_may_say_beyond_the_least_is_read() {
    Protocol protocol = ProtocolFile.read(WHOLE).orThrow();

    assertThat(protocol.more().holdsOn(LocalDate.of(2026, 11, 30))).isFalse();
    assertThat(protocol.more().holdsOn(LocalDate.of(2026, 12, 1))).isTrue();
    assertThat(protocol.componentLimits())
        .extracting(Object::toString)
        .containsExactly("60 mcg of alprostadil");
    assertThat(protocol.home().plan())
        .extracting(Sourced::value)
        .containsExactly("who stays with him that night");
    assertThat(protocol.home().readinessMonths().orElseThrow().value()).isEqualTo(12);
    assertThat(ProtocolFile.read(SAMPLE).orThrow().more().holdsOn(LocalDate.MIN)).isTrue();
  }

  @Test
  void a_limit_of_a_component_that_the_ceiling_or_a_first_dose_passes_is_refused() {
    assertThat(ProtocolFile.read(WHOLE.replace("most: 60 mcg", "most: 2 mcg")).faults())
        .contains(
            "component_limits: 2 mcg of alprostadil is passed by the ceiling of 60 mcg",
            "component_limits: 2 mcg of alprostadil is passed by the first dose of 2.5 mcg");
    assertThat(ProtocolFile.read(WHOLE.replace("most: 60 mcg", "most: 0 mcg")).faults())
        .singleElement()
        .asString()
        .startsWith("component_limits 1, most: \"0 mcg\" is not a mass");
    assertThat(
            ProtocolFile.read(
                    WHOLE.replace(
                        "60 mcg of alprostadil\n    source: {assumption: \"as",
                        "30 mg of papaverine\n    source: {assumption: \"as"))
                .faults())
        .containsExactly(
            "component_limits: 30 mg of papaverine hydrochloride: the protocol is not written"
                + " for it");
    assertThat(
            ProtocolFile.read(WHOLE.replace("most: 60 mcg of alprostadil", "most: 0.5 mL"))
                .faults())
        .containsExactly(
            "component_limits 1, most: must name a component, such as 20 mcg of alprostadil");
  }

  @Test
  void a_day_that_is_none_and_a_question_that_is_too_tooLongare_refused() {
    assertThat(ProtocolFile.read(WHOLE.replace("2026-12-01", "1 December")).faults())
        .containsExactly("holds_from: \"1 December\" is not a day: write it as 2026-12-31");
    String tooLong = WHOLE.replace("who stays with him", "who stays".repeat(12));
    assertThat(ProtocolFile.read(tooLong).faults())
        .containsExactly("emergency_plan 1, ask: must be at most 80 characters long");
  }

  private static final String PATIENT =
      SAMPLE
          + """
          after_partial:
            responses: 2
            source: {assumption: "this clinic's own"}
          """;

  @Test
  void a_protocol_may_wait_for_more_than_one_partial_response_and_else_waits_for_one() {
    assertThat(ProtocolFile.read(PATIENT).orThrow().partialResponsesBeforeStep()).isEqualTo(2);
    assertThat(SampleProtocols.documents())
        .allSatisfy(
            document ->
                assertThat(ProtocolFile.read(document).orThrow().partialResponsesBeforeStep())
                    .isEqualTo(1));
    for (int responses = 1; responses <= 3; responses++) {
      String asked = PATIENT.replace("responses: 2", "responses: " + responses);
      assertThat(ProtocolFile.read(asked).orThrow().partialResponsesBeforeStep())
          .isEqualTo(responses);
    }
  }

  @Test
  void a_document_that_waits_for_partial_responses_is_written_again_as_it_was() {
    var reader = new SampleProtocolReader();

    assertThat(reader.read(reader.document(reader.parts(PATIENT))).orThrow())
        .isEqualTo(reader.read(PATIENT).orThrow());
  }

  @Test
  void a_protocol_that_waits_for_ever_or_for_nothing_is_refused_with_its_other_faults() {
    for (String wrong : List.of("0", "4", "1.5", "two", "-1")) {
      String broken =
          PATIENT
              .replace("responses: 2", "responses: " + wrong)
              .replace("version: 1\n", "version: none\n");

      assertThat(ProtocolFile.read(broken).faults())
          .as(wrong)
          .hasSize(2)
          .anyMatch(fault -> fault.startsWith("version: "))
          .contains("after_partial, responses: must be a whole number from 1 to 3");
    }
    String bare = PATIENT.replaceFirst("(?s)after_partial:.*", "after_partial: {responses: 2}");
    assertThat(ProtocolFile.read(bare).faults())
        .singleElement()
        .asString()
        .startsWith("after_partial, source");
  }

  private static final String LIMITED =
      SAMPLE
          + """
          model:
            chance_of_120_minutes:
              in_1000: 50
              source: {assumption: "the clinic's own limit"}
          """;

  @Test
  void a_protocol_may_limit_the_chance_of_a_tooLongresponse() {
    Protocol.Chances chances = ProtocolFile.read(LIMITED).orThrow().chances();

    assertThat(chances.of120Minutes().orElseThrow().value()).isEqualTo(50);
    assertThat(chances.of240Minutes()).isEmpty();
    assertThat(ProtocolFile.read(SAMPLE).orThrow().chances().isAsked()).isFalse();
  }

  @Test
  void a_limit_that_is_none_is_refused_with_its_place() {
    assertThat(ProtocolFile.read(LIMITED.replace("in_1000: 50", "in_1000: 0")).faults())
        .containsExactly(
            "model, chance_of_120_minutes, in_1000: must be a whole number from 1 to 999");
    assertThat(ProtocolFile.read(SAMPLE + "model: {}\n").faults())
        .containsExactly("model: must limit chance_of_120_minutes, chance_of_240_minutes or both");
  }
}
