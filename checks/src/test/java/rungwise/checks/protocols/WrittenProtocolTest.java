package rungwise.checks.protocols;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.OpenClinic;
import rungwise.clinic.people.Account;
import rungwise.clinic.protocols.ProtocolCase;
import rungwise.clinic.protocols.ProtocolCase.Advised;
import rungwise.clinic.protocols.ProtocolCase.Response;
import rungwise.clinic.protocols.ProtocolCase.Walk;
import rungwise.clinic.protocols.ProtocolDifference;
import rungwise.clinic.protocols.Protocols;
import rungwise.dosing.choice.ByRule;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.syringe.Barrels;
import rungwise.files.ProtocolFile;
import rungwise.files.SampleProtocols;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * The doses expected of the US vial and syringe label: 2.5 mcg first, 5 mcg after a partial
 * response, then by 5 mcg (section 2 of the label, as the sample cites it).
 */
final class WrittenProtocolTest {

  private static final String LABEL = document("us-vial-syringe-label");
  private static final String MODEL =
      """
      model:
        chance_of_120_minutes:
          in_1000: 50
          source: {assumption: "the clinic's own limit"}
      """;

  private static final ProtocolCase MAN =
      new ProtocolCase(
          AetiologyGroup.VASCULOGENIC,
          SamplePreparations.ALPROSTADIL_20,
          Barrels.U100_1,
          new ByRule());

  private static String document(String name) {
    return SampleProtocols.documents().stream()
        .filter(document -> document.contains("protocol: " + name))
        .findFirst()
        .orElseThrow();
  }

  private static Protocol read(String document) {
    return ProtocolFile.read(document).orThrow();
  }

  private static Response response(Grade grade, int minutes) {
    return new Response(grade, new SoftAfter.Exactly(TimeSpan.ofMinutes(minutes)));
  }

  private static Walk walk(Response... responses) {
    return MAN.walk(read(LABEL), List.of(responses)).orThrow();
  }

  @Test
  void a_made_up_man_gets_the_doses_of_the_label_rounded_down_to_lines() {
    Walk walk = walk(response(Grade.FIRM_NOT_USABLE, 20), response(Grade.FIRM_NOT_USABLE, 20));

    assertThat(walk.advices().stream().map(one -> one.dose().orElseThrow().volume()))
        .containsExactly(
            Volume.ofMicrolitres(120), Volume.ofMicrolitres(250), Volume.ofMicrolitres(500));
  }

  @Test
  void the_walk_ends_where_no_dose_is_advised() {
    Walk walk = walk(response(Grade.USABLE, 240), response(Grade.USABLE, 30));

    assertThat(walk.advices()).hasSize(2);
    assertThat(walk.advices().getLast().dose()).isEmpty();
  }

  @Test
  void a_protocol_for_something_else_has_no_walk_and_says_why() {
    var onMixture =
        new ProtocolCase(
            AetiologyGroup.VASCULOGENIC,
            SamplePreparations.THREE_DRUG,
            Barrels.U100_0_5,
            new ByRule());

    assertThat(onMixture.walk(read(LABEL), List.of()).faults())
        .singleElement()
        .asString()
        .contains("is not written for");
  }

  @Test
  void two_versions_differ_in_words() {
    String changed =
        LABEL
            .replaceFirst("spacing_hours:\\n  value: 24", "spacing_hours:\n  value: 48")
            .replaceFirst("dose: 60 mcg", "dose: 40 mcg")
            .replaceFirst("up_to: 60 mcg", "up_to: 40 mcg");

    assertThat(ProtocolDifference.between(read(LABEL), read(changed)))
        .contains(
            "Maximum dose: was 60 mcg, is 40 mcg.",
            "Minimum interval: was 24 h, is 48 h.",
            "Left out: Step from a dose of up to 60 mcg, 5 mcg is proposed, after no response and"
                + " after a partial one alike; the source would allow up to 10 mcg.")
        .noneMatch(line -> line.startsWith("First dose"));
  }

  @Test
  void how_a_partial_response_is_answered_is_a_difference_in_words() {
    String two = LABEL + "after_partial:\n  responses: 2\n  source: {assumption: \"our own\"}\n";
    String what = "Partial responses in a row at the same dose before a step up";

    assertThat(ProtocolDifference.between(read(LABEL), read(two)))
        .containsExactly("New: " + what + ", 2.");
    assertThat(ProtocolDifference.between(read(two), read(LABEL)))
        .containsExactly("Left out: " + what + ", 2.");
    assertThat(
            ProtocolDifference.between(
                read(two), read(two.replace("responses: 2", "responses: 3"))))
        .containsExactly(what + ": was 2, is 3.");
  }

  @Test
  void the_made_up_man_is_held_at_a_partial_response_for_as_long_as_the_protocol_says() {
    String two = LABEL + "after_partial:\n  responses: 2\n  source: {assumption: \"our own\"}\n";
    List<Response> partial = Collections.nCopies(4, response(Grade.FIRM_NOT_USABLE, 20));

    assertThat(
            MAN.walk(read(two), partial).orThrow().advices().stream()
                .map(one -> one.dose().orElseThrow().volume().microlitres()))
        .containsExactly(120L, 120L, 250L, 250L, 500L);
  }

  @Test
  void a_protocol_does_not_differ_from_itself() {
    assertThat(SampleProtocols.documents())
        .allSatisfy(
            document ->
                assertThat(ProtocolDifference.between(read(document), read(document))).isEmpty());
  }

  @Test
  void each_advice_of_a_walk_has_its_reason() {
    assertThat(walk(response(Grade.USABLE, 45)).advices())
        .extracting(Advised::reason)
        .doesNotContain("");
  }

  private static final String OURS =
      LABEL
          .replace("protocol: us-vial-syringe-label", "protocol: ours")
          .replace("sample: true", "sample: false");

  @Test
  void a_clinics_own_protocol_has_its_own_name_its_next_version_and_no_limit_that_is_not_kept(
      @TempDir Path folder) {
    try (OpenClinic clinic = OpenClinic.in(folder, InstantSource.system())) {
      Protocols protocols = clinic.protocols();

      assertThat(protocols.check(OURS).faults()).isEmpty();
      assertThat(protocols.check(LABEL).faults())
          .anyMatch(fault -> fault.startsWith("sample:"))
          .anyMatch(fault -> fault.contains("is the name of a sample"));
      assertThat(protocols.check(OURS.replace("version: 1", "version: 2")).faults())
          .containsExactly("version: 2 is not the next one of this name, which is 1");
      assertThat(protocols.check(OURS + MODEL).faults())
          .singleElement()
          .asString()
          .startsWith("model:");
    }
  }

  @Test
  void only_who_may_sign_signs_a_written_protocol_and_it_is_found_afterwards(@TempDir Path folder) {
    try (OpenClinic clinic = OpenClinic.in(folder, InstantSource.system())) {
      DemoClinic.fillPeople(clinic.people());
      Protocols protocols = clinic.protocols();

      assertThat(protocols.signWritten(account(clinic, "maren"), OURS, Set.of()).faults())
          .hasSize(1);
      assertThat(protocols.find("ours", 1)).isEmpty();
      protocols.signWritten(account(clinic, "tobias"), OURS, Set.of()).orThrow();
      assertThat(protocols.find("ours", 1)).isPresent();
      assertThat(protocols.nextVersion("ours")).isEqualTo(2);
    }
  }

  private static Account account(OpenClinic clinic, String name) {
    return clinic.people().list().stream()
        .filter(account -> account.signInName().text().equals(name))
        .findFirst()
        .orElseThrow();
  }
}
