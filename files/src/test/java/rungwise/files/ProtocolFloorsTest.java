package rungwise.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rungwise.clinic.protocols.EarlierProtocol;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.protocol.Floor;
import rungwise.dosing.protocol.Protocol;
import rungwise.quantities.TimeSpan;

/**
 * What no document passes. The floors are those of the US syringe label, 2 and 17 (24 h apart, no
 * more than 3 a week, 1 h); that mixtures get no second dose is our own assumption.
 */
final class ProtocolFloorsTest {

  private static final String VISIT =
      """
      same_visit:
        within_minutes: 240
        after_none: true
        after_partial_up_to: 0.5 mL
        source: {assumption: "on purpose"}
      """;

  private static final String MIXTURE = document("cautious-mixture");
  private static final String LABEL = document("us-vial-syringe-label");

  /** Every floor passed at once, as a document could be signed before. */
  private static final String EARLIER =
      limits(MIXTURE.replace("\ncomposition:", "\n# composition:") + VISIT, 119, 1, 7)
          .replace("sample: true", "sample: false");

  private static String document(String name) {
    return SampleProtocols.documents().stream()
        .filter(document -> document.contains("protocol: " + name))
        .findFirst()
        .orElseThrow();
  }

  private static String limits(String document, int satisfactory, int spacing, int week) {
    return document
        .replaceFirst(
            "satisfactory_minutes:\\n  value: 60",
            "satisfactory_minutes:\n  value: " + satisfactory)
        .replaceFirst("spacing_hours:\\n  value: 24", "spacing_hours:\n  value: " + spacing)
        .replaceFirst("in_seven_days:\\n  value: 3", "in_seven_days:\n  value: " + week);
  }

  private static List<String> placesOf(String document) {
    return ProtocolFile.read(document).faults().stream()
        .map(fault -> fault.substring(0, fault.indexOf(':')))
        .toList();
  }

  @Test
  void a_mixture_that_passes_every_floor_is_refused_with_all_of_them_at_once() {
    assertThat(placesOf(EARLIER))
        .containsExactlyInAnyOrder(
            "satisfactory_minutes",
            "spacing_hours",
            "in_seven_days",
            "same_visit",
            "same_visit",
            "composition");
  }

  @Test
  void a_number_on_the_floor_is_accepted_and_one_past_it_is_not() {
    assertThat(placesOf(limits(LABEL, 60, 24, 3))).isEmpty();
    assertThat(placesOf(limits(LABEL, 61, 24, 3))).containsExactly("satisfactory_minutes");
    assertThat(placesOf(limits(LABEL, 60, 23, 3))).containsExactly("spacing_hours");
    assertThat(placesOf(limits(LABEL, 60, 24, 4))).containsExactly("in_seven_days");
    assertThat(placesOf(LABEL.replace("within_minutes: 60", "within_minutes: 61")))
        .containsExactly("same_visit");
  }

  @Test
  void a_document_that_was_signed_with_them_is_read_with_each_floor_in_its_place() {
    EarlierProtocol read = ProtocolFile.readSigned(EARLIER).orThrow();
    Protocol protocol = read.protocol();

    assertThat(read.floors()).containsExactly(Floor.values());
    assertThat(protocol.limits().satisfactory().value()).isEqualTo(TimeSpan.ofMinutes(60));
    assertThat(protocol.limits().spacing().value()).isEqualTo(TimeSpan.ofHours(24));
    assertThat(protocol.limits().inSevenDays().value()).isEqualTo(3);
    assertThat(protocol.sameVisit()).isEmpty();
    assertThat(protocol.limits().spacing().source().words()).contains("at least 24 h apart");
  }

  @Test
  void what_lies_on_this_side_of_a_floor_stays_as_it_was_signed() {
    Protocol strict = ProtocolFile.readSigned(limits(LABEL, 45, 72, 1)).orThrow().protocol();

    assertThat(strict.limits().satisfactory().value()).isEqualTo(TimeSpan.ofMinutes(45));
    assertThat(strict.limits().spacing().value()).isEqualTo(TimeSpan.ofHours(72));
    assertThat(strict.limits().inSevenDays().value()).isEqualTo(1);
    assertThat(strict.sameVisit()).isPresent();
  }

  @Test
  void every_sample_is_read_the_same_before_and_after_it_was_signed() {
    for (String document : SampleProtocols.documents()) {
      EarlierProtocol read = ProtocolFile.readSigned(document).orThrow();

      assertThat(read.protocol()).isEqualTo(ProtocolFile.read(document).orThrow());
      assertThat(read.floors()).isEmpty();
      assertThat(read.lacksComposition()).isFalse();
    }
  }

  @Test
  void a_protocol_in_volumes_is_for_the_composition_that_it_names_and_no_other() {
    Protocol mixture = ProtocolFile.read(MIXTURE).orThrow();

    assertThat(SamplePreparations.all().stream().filter(mixture::isFor))
        .containsExactly(SamplePreparations.THREE_DRUG);
  }

  @Test
  void without_a_composition_it_was_signed_for_no_preparation() {
    EarlierProtocol read = ProtocolFile.readSigned(EARLIER).orThrow();

    assertThat(read.lacksComposition()).isTrue();
    assertThat(SamplePreparations.all()).noneMatch(read.protocol()::isFor);
  }

  /** Version 1 of the sample named 30/1/10 beside its first dose. */
  @Test
  void the_sample_as_it_was_is_read_for_the_composition_that_it_spoke_of() {
    String asItWas =
        MIXTURE.replace("\ncomposition:", "\n# composition:").replace("version: 2", "version: 1");
    EarlierProtocol read = ProtocolFile.readSigned(asItWas).orThrow();

    assertThat(read.lacksComposition()).isTrue();
    assertThat(SamplePreparations.all().stream().filter(read.protocol()::isFor))
        .containsExactly(SamplePreparations.THREE_DRUG);
    assertThat(
            Stream.of("sample: false", "version: 2")
                .map(one -> asItWas.replaceFirst(one.substring(0, 7) + ".*", one))
                .map(one -> ProtocolFile.readSigned(one).orThrow().protocol())
                .filter(one -> one.isFor(SamplePreparations.THREE_DRUG)))
        .isEmpty();
  }

  @Test
  void a_composition_names_each_component_once_and_only_where_doses_are_volumes() {
    assertThat(placesOf(MIXTURE.replace(", 10 mcg/mL of alprostadil]", "]")))
        .containsExactly("composition");
    assertThat(placesOf(MIXTURE.replace("1 mg/mL of phentolamine", "1 mg/mL of papaverine")))
        .containsExactly("composition 2");
    assertThat(placesOf(MIXTURE.replace("1 mg/mL of phentolamine", "1 mg/mL")))
        .containsExactly("composition 2");
    assertThat(placesOf(MIXTURE.replace("1 mg/mL of phentolamine", "1 mg of phentolamine")))
        .containsExactly("composition 2");
    assertThat(placesOf(LABEL + "composition: [20 mcg/mL of alprostadil]\n"))
        .containsExactly("composition");
  }

  @Test
  void the_limits_of_the_mixture_sample_are_what_its_maximum_volume_holds() {
    Protocol mixture = ProtocolFile.read(MIXTURE).orThrow();

    assertThat(mixture.componentLimits().stream().map(Object::toString))
        .containsExactly(
            "15 mg of papaverine hydrochloride",
            "0.5 mg of phentolamine mesylate",
            "5 mcg of alprostadil");
  }
}
