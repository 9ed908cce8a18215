package rungwise.dosing.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.guard.CourseGuards;
import rungwise.dosing.guard.DoseGuards;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** What a corrected or withdrawn report goes on stopping and closing. */
final class StruckTest {

  private static SoftAfter minutes(long minutes) {
    return new SoftAfter.Exactly(TimeSpan.ofMinutes(minutes));
  }

  private static SoftAfter atLeast(long minutes) {
    return new SoftAfter.AtLeast(TimeSpan.ofMinutes(minutes));
  }

  private static LabelWorld reported(SoftAfter soft) {
    return new LabelWorld().injected("0.25", Grade.USABLE, soft);
  }

  private static boolean isClosed(LabelWorld world, String volume) {
    return DoseGuards.ask(world.question(), Volume.parseMillilitres(volume).orThrow()).stream()
        .map(Verdict::rule)
        .anyMatch(rule -> rule == GuardRule.VOLUME_CLOSED);
  }

  private static boolean isStopped(LabelWorld world) {
    return CourseGuards.ask(world.question()).stream()
        .anyMatch(verdict -> verdict.rule() == GuardRule.EMERGENCY_OPEN);
  }

  @Test
  void a_contradicting_end_leaves_the_volume_closed_and_an_end_that_was_possible_opens_it() {
    assertThat(
            isClosed(reported(atLeast(130)).corrected("0.25", Grade.USABLE, minutes(50)), "0.25"))
        .isTrue();
    assertThat(
            isClosed(reported(atLeast(90)).corrected("0.25", Grade.USABLE, minutes(100)), "0.25"))
        .isFalse();
  }

  @Test
  void more_drug_said_to_have_been_drawn_leaves_what_was_said_of_less() {
    LabelWorld more = reported(minutes(150)).corrected("0.5", Grade.USABLE, minutes(150));
    LabelWorld less = reported(minutes(150)).corrected("0.12", Grade.USABLE, minutes(150));

    assertThat(isClosed(more, "0.25")).isTrue();
    assertThat(isClosed(less, "0.25")).isTrue();
    assertThat(isClosed(less, "0.12")).isTrue();
    assertThat(more.question().history().struck()).allMatch(Struck::isToConfirm);
    assertThat(less.question().history().struck()).noneMatch(Struck::isToConfirm);
  }

  @Test
  void a_possible_emergency_is_lifted_by_a_known_end_before_four_hours_alone() {
    assertThat(isStopped(reported(atLeast(235)).corrected("0.25", Grade.USABLE, minutes(239))))
        .isFalse();
    assertThat(isStopped(reported(atLeast(235)).corrected("0.25", Grade.USABLE, minutes(50))))
        .isFalse();
    for (SoftAfter no : new SoftAfter[] {new SoftAfter.NotKnown(), minutes(240)}) {
      assertThat(isStopped(reported(atLeast(235)).corrected("0.25", Grade.USABLE, no))).isTrue();
    }
    assertThat(isStopped(reported(atLeast(235)).struck())).isTrue();
  }

  @Test
  void four_hours_in_so_many_words_wait_for_a_prescriber() {
    SoftAfter said = new SoftAfter.Between(TimeSpan.ofMinutes(200), TimeSpan.ofMinutes(260));

    for (long now : new long[] {50, 210}) {
      LabelWorld corrected = reported(said).corrected("0.25", Grade.USABLE, minutes(now));
      assertThat(isStopped(corrected)).isTrue();
      assertThat(isStopped(corrected.reviewed())).isFalse();
    }
  }

  @Test
  void a_duration_not_known_that_becomes_less_firm_takes_something_away() {
    SoftAfter unknown = new SoftAfter.NotKnown();
    LabelWorld less =
        new LabelWorld()
            .injected("0.25", Grade.FULLY_FIRM, unknown)
            .corrected("0.25", Grade.NONE, unknown);

    assertThat(DoseGuards.ask(less.question(), Volume.ofMicrolitres(500)))
        .anyMatch(verdict -> verdict.rule() == GuardRule.HIGHER_AFTER_LONG);
    assertThat(less.question().history().struck()).allMatch(Struck::isToConfirm);
  }

  @Test
  void an_end_that_cannot_be_known_is_covered_by_a_review_that_says_so_alone() {
    LabelWorld open = reported(atLeast(30)).reviewed();
    assertThat(isStopped(open)).isTrue();

    LabelWorld told = open.reviewed(Optional.of(LabelWorld.START.plusSeconds(9000)));
    assertThat(isStopped(told)).isFalse();
    assertThat(isClosed(told, "0.25")).isTrue();
  }

  @Test
  void injections_of_before_without_a_time_close_and_stop() {
    LabelWorld past = new LabelWorld().undated("0.25", Grade.USABLE, minutes(300));

    assertThat(isStopped(past)).isTrue();
    assertThat(isClosed(past.reviewed(), "0.25")).isTrue();
    assertThat(isClosed(past, "0.12")).isFalse();
  }

  /** From nobody knows which vial; the correction names the mixture, with less of it and an end. */
  @Test
  void a_report_that_is_contradicted_counts_by_each_label_that_it_may_have_been_of() {
    Injection read = reported(atLeast(30)).question().history().injections().getFirst();
    Injection besides = of(SamplePreparations.THREE_DRUG, "0.25", atLeast(30));
    Injection now = of(SamplePreparations.THREE_DRUG, "0.2", minutes(50));
    assertThat(now.completes(read)).isFalse();
    assertThat(now.completes(besides)).isTrue();

    boolean whole = new Struck(read, 2, Optional.of(now)).counts();
    assertThat(whole).isTrue();
    assertThat(new Struck(besides, 2, Optional.of(now), whole).counts()).isTrue();
    assertThat(new Struck(besides, 2, Optional.of(now)).counts()).isFalse();
  }

  private static Injection of(Preparation preparation, String drawn, SoftAfter soft) {
    return new LabelWorld()
        .injectedWith(preparation, drawn, soft)
        .question()
        .history()
        .injections()
        .getFirst();
  }
}
