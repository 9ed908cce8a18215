package rungwise.app.verb;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rungwise.clinic.titration.Replay;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.DecisionValues;
import rungwise.dosing.decision.KeptAdvice;
import rungwise.dosing.decision.Proposal;
import rungwise.dosing.decision.Reason;
import rungwise.dosing.decision.TitrationRule;
import rungwise.quantities.Volume;

/** What differs by version is listed, and only what the same version says anew is a fault. */
class ReplayTextTest {

  private static Advice advice(long microlitres, String engine) {
    return new Advice(
        new Proposal(
            new Decision.Repeat(Volume.ofMicrolitres(microlitres)),
            List.of(new Reason(TitrationRule.SETTLED, List.of()))),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        Optional.empty(),
        "by rule",
        "sample 1",
        engine);
  }

  private static Replay replay(long entry, Advice kept, Advice again) {
    return new Replay(entry, KeptAdvice.of(kept), again);
  }

  @Test
  void the_same_is_only_counted() {
    var text = new ReplayText(List.of(replay(4, advice(120, "6"), advice(120, "6"))));

    assertThat(text.words())
        .isEqualTo(
            "Signed doses asked again: 1. The same: 1. Other by version: 0."
                + " Other though the version is the same: 0.");
    assertThat(text.hasFault()).isFalse();
  }

  @Test
  void another_version_may_say_something_else() {
    var text =
        new ReplayText(
            List.of(
                replay(4, advice(120, "5"), advice(250, "6")),
                replay(9, advice(120, "5"), advice(120, "6"))));

    assertThat(text.words().lines())
        .containsExactly(
            "Signed doses asked again: 2. The same: 1. Other by version: 1."
                + " Other though the version is the same: 0.",
            "  volume: 1",
            "Entry 4, signed by engine 5, asked again of engine 6:",
            "  volume: 0.12 mL; now 0.25 mL");
    assertThat(text.hasFault()).isFalse();
    assertThat(text.json().toString())
        .contains("\"asked\":2", "\"by_version\":true", "\"kept\":\"0.12 mL\"");
  }

  @Test
  void the_same_version_may_not() {
    var text = new ReplayText(List.of(replay(4, advice(120, "6"), advice(250, "6"))));

    assertThat(text.words())
        .contains("Entry 4, signed by engine 6, asked again of engine 6, the same version:");
    assertThat(text.hasFault()).isTrue();
  }

  @Test
  void other_words_alone_are_said_to_be_that() {
    Advice again = advice(120, "6");
    var kept = new KeptAdvice("older words", Optional.of(DecisionValues.of(advice(120, "5"))));
    var text = new ReplayText(List.of(new Replay(4, kept, again)));

    assertThat(text.words().lines()).endsWith("  only the words differ");
    assertThat(text.hasFault()).isFalse();
  }
}
