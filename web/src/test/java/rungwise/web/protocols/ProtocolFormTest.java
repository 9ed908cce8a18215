package rungwise.web.protocols;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.protocol.CountedOption;
import rungwise.quantities.Fault;

class ProtocolFormTest {

  private static final List<String> NEEDED =
      Stream.of(CountedOption.values())
          .filter(CountedOption::isNeeded)
          .map(CountedOption::part)
          .toList();

  private static final Map<String, Object> CUSTOM = Map.of("common_practice", "as we do it");
  private static final Map<String, Object> LABEL =
      Map.of("published", "some-label", "place", "section 2, table 1", "seen", "read");

  private static final Map<String, Object> SAME_VISIT =
      Map.of(
          "after_none",
          true,
          "within_minutes",
          60,
          "after_partial_up_to",
          "2.5 mcg",
          "source",
          LABEL);

  /** Every part that a document can have, one start a group as the form writes it. */
  private static Map<String, Object> parts() {
    var parts = new LinkedHashMap<String, Object>();
    parts.put("protocol", "ours");
    parts.put("version", 3);
    parts.put("title", "Ours");
    parts.put("sample", false);
    parts.put("for", List.of("alprostadil"));
    parts.put("composition", List.of("30 mg/mL of papaverine", "20 mcg/mL of alprostadil"));
    parts.put("start", starts());
    parts.put(
        "steps",
        List.of(
            Map.of("up_to", "5 mcg", "add", "2.5 mcg", "add_at_most", "5 mcg", "source", LABEL),
            Map.of("up_to", "40 mcg", "add", "5 mcg", "add_at_most", "5 mcg", "source", CUSTOM)));
    parts.put(
        "strengths",
        List.of(Map.of("strength", "40 mcg/mL", "not_below", "10 mcg", "source", LABEL)));
    parts.put("ceiling", Map.of("dose", "40 mcg of alprostadil", "source", LABEL));
    parts.put("holds_from", "2026-12-01");
    parts.put(
        "component_limits", List.of(Map.of("most", "40 mcg of alprostadil", "source", CUSTOM)));
    parts.put(
        "emergency_plan",
        List.of(
            Map.of("ask", "who stays with him", "source", CUSTOM),
            Map.of("ask", "who has the key", "source", CUSTOM)));
    parts.put("readiness_months", Map.of("value", 12, "source", CUSTOM));
    parts.put("after_partial", Map.of("responses", 2, "source", CUSTOM));
    parts.put("model", Map.of("chance_of_240_minutes", Map.of("in_1000", 5, "source", CUSTOM)));
    parts.put("care_above", Map.of("dose", "20 mcg of alprostadil", "source", CUSTOM));
    parts.put("same_visit", SAME_VISIT);
    for (String number : NEEDED) {
      parts.put(number, Map.of("value", 3, "source", CUSTOM));
    }
    return parts;
  }

  private static List<Object> starts() {
    return Arrays.stream(AetiologyGroup.values())
        .<Object>map(
            group ->
                Map.of(
                    "groups",
                    List.of(group.token()),
                    "dose",
                    "1.25 mcg of alprostadil",
                    "source",
                    LABEL))
        .toList();
  }

  @Test
  void a_document_that_went_through_the_form_says_the_same() {
    assertThat(ProtocolFields.of(parts()).parts(3)).isEqualTo(parts());
  }

  @Test
  void an_empty_row_is_no_step_and_an_empty_optional_part_is_left_out() {
    var parts = parts();
    parts.remove("care_above");
    parts.remove("composition");
    parts.remove("same_visit");
    parts.remove("strengths");
    parts.remove("holds_from");
    parts.remove("component_limits");
    parts.remove("emergency_plan");
    parts.remove("readiness_months");
    parts.remove("model");
    parts.remove("after_partial");

    assertThat(ProtocolFields.of(parts).parts(3)).isEqualTo(parts);
  }

  @Test
  void a_fault_stands_at_the_field_that_it_is_about() {
    ProtocolForm form = ProtocolFields.of(parts());

    assertThat(
            form
                .faults(
                    List.of(
                        "start 2, dose: no amount",
                        "steps 2, add: no amount",
                        "steps: add 0 mcg never gets anywhere",
                        "spacing_hours, value: must be a whole number",
                        "ceiling, source, place: must be a text",
                        "same_visit, within_minutes: must be a whole number",
                        "version: is not the next one",
                        "holds_from: is not a day",
                        "component_limits: is passed by the ceiling",
                        "emergency_plan 2, ask: must be a text",
                        "readiness_months, value: must be a whole number",
                        "model, chance_of_240_minutes, in_1000: must be a whole number",
                        "model: no population is signed",
                        "something else"))
                .all()
                .stream()
                .map(Fault::field))
        .containsExactly(
            "start-post_prostatectomy-dose",
            "steps-2-add",
            "steps-1-add",
            "spacing_hours-value",
            "ceiling-source",
            "same_visit-within_minutes",
            "protocol",
            "holds_from",
            "component_limits-1-most",
            "emergency_plan-2-ask",
            "readiness_months-value",
            "model-chance_of_240_minutes-in_1000",
            "model-chance_of_120_minutes-in_1000",
            "");
  }

  @Test
  void a_fault_of_how_a_partial_response_is_answered_stands_at_its_fields() {
    var faults =
        ProtocolFields.of(parts())
            .faults(
                List.of(
                    "after_partial, responses: must be a whole number from 1 to 3",
                    "after_partial, source: must say published",
                    "after_partial: must be a set of keys with values"));

    assertThat(faults.all().stream().map(Fault::field))
        .containsExactly(
            "after_partial-responses", "after_partial-source", "after_partial-responses");
  }

  @Test
  void a_fault_of_the_composition_stands_at_its_strength() {
    var faults =
        ProtocolFields.of(parts())
            .faults(
                List.of(
                    "composition: a protocol in volumes names what one mL holds",
                    "composition 2: names no component"));

    assertThat(faults.all().stream().map(Fault::field))
        .containsExactly("composition-1-holds", "composition-2-holds");
  }

  /** No field of the form is narrower than the document: what is refused is said by its reader. */
  @Test
  void what_is_typed_as_a_number_of_responses_reaches_the_document_as_it_was_typed() {
    for (String typed : List.of("0", "4", "1.5", "two")) {
      var parts = parts();
      parts.put("after_partial", Map.of("responses", typed, "source", CUSTOM));

      assertThat(ProtocolFields.of(parts).parts(3).get("after_partial"))
          .hasToString(
              "{responses=" + typed + ", source=" + Map.of("common_practice", "as we do it") + "}");
    }
  }
}
