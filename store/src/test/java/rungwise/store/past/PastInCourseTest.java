package rungwise.store.past;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.past.PastHistory;
import rungwise.clinic.past.PastInjection;
import rungwise.clinic.past.PastInjection.Setting;
import rungwise.clinic.people.Account;
import rungwise.clinic.sheet.LiftingView;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/** What a course makes of a history from before the record. */
final class PastInCourseTest {

  @TempDir Path folder;
  private PastWorld past;
  private TitrationWorld world;
  private CourseId course;

  @BeforeEach
  void open() {
    past = PastWorld.open(folder);
    world = past.world();
    course = past.course();
  }

  @AfterEach
  void close() {
    past.close();
  }

  private String bringIn(Optional<Setting> setting, SoftAfter soft) {
    return past.bringIn(injection(1, setting, soft));
  }

  private static PastInjection injection(int number, Optional<Setting> setting, SoftAfter soft) {
    return new PastInjection(
        number + 1,
        number,
        Volume.ofMicrolitres(120),
        1,
        Optional.of(1.0),
        Grade.FULLY_FIRM,
        soft,
        setting);
  }

  private Optional<Setting> hoursAgo(long hours) {
    return Optional.of(
        new Setting(world.now().minus(Duration.ofHours(hours)), PastWorld.ALPROSTADIL, "u100-1"));
  }

  @Test
  void without_a_time_he_may_not_inject_until_his_last_injection_and_an_order_are_entered() {
    bringIn(Optional.empty(), PastWorld.minutes(40));
    assertThat(world.blocks(course)).contains(GuardRule.PAST_OPEN, GuardRule.NO_ORDER);

    world.pass(Duration.ofDays(3));
    world
        .report(course, ReportForm.at("2026-03-02", "09:00").mark("12").grade("3").exactly("40"))
        .orThrow();
    assertThat(world.blocks(course)).doesNotContain(GuardRule.PAST_OPEN);
    assertThat(world.blocks(course)).contains(GuardRule.NO_ORDER);

    world.signProposed(course);
    assertThat(world.state(course).mayInject().isClear()).isTrue();
  }

  @Test
  void with_a_time_the_spacing_counts_from_it() {
    world.signProposed(course);
    assertThat(world.state(course).mayInject().isClear()).isTrue();

    bringIn(hoursAgo(23), PastWorld.minutes(40));

    assertThat(world.blocks(course)).containsExactly(GuardRule.SPACING);
  }

  @Test
  void a_long_erection_of_before_closes_its_volume_and_four_hours_stop_the_course() {
    world.signProposed(course);
    String id = bringIn(hoursAgo(500), PastWorld.minutes(150));
    assertThat(world.blocks(course)).contains(GuardRule.VOLUME_CLOSED);

    past.imports().undo(id, "the wrong file").orThrow();
    confirmUndone(Staff.PRESCRIBER).orThrow();
    assertThat(world.blocks(course)).isEmpty();

    bringIn(hoursAgo(500), PastWorld.minutes(240));
    assertThat(world.blocks(course)).contains(GuardRule.EMERGENCY_OPEN);
  }

  private Reading<Long> confirmUndone(Account actor) {
    EntryId undone = world.state(course).undone().getLast().entry();
    return world.lifting().confirmCorrection(actor, course, undone, "it was another clinic's file");
  }

  private List<LiftingView.Correction> toConfirm() {
    return past.lifting().corrections();
  }

  @Test
  void an_import_that_is_undone_opens_no_dose_until_a_prescriber_confirms() {
    world.signProposed(course);
    past.imports().undo(bringIn(hoursAgo(500), PastWorld.minutes(150)), "the wrong file").orThrow();

    assertThat(world.blocks(course))
        .containsExactly(GuardRule.NO_FIRST_DOSE, GuardRule.VOLUME_CLOSED);
    assertThat(toConfirm())
        .singleElement()
        .satisfies(
            one -> {
              assertThat(one.said()).contains("soft after 2 h 30 min");
              assertThat(one.now()).isEqualTo("The import is undone");
              assertThat(one.reason()).isEqualTo("the wrong file");
            });
    assertThat(confirmUndone(Staff.EDUCATOR).faults()).isNotEmpty();
    assertThat(world.blocks(course))
        .containsExactly(GuardRule.NO_FIRST_DOSE, GuardRule.VOLUME_CLOSED);

    confirmUndone(Staff.PRESCRIBER).orThrow();
    assertThat(world.blocks(course)).isEmpty();
    assertThat(toConfirm()).isEmpty();
    assertThat(world.state(course).undone()).isEmpty();
  }

  @Test
  void an_import_that_is_undone_ends_no_emergency() {
    world.signProposed(course);
    past.imports().undo(bringIn(hoursAgo(500), PastWorld.minutes(240)), "the wrong file").orThrow();

    assertThat(world.state(course).question().history().openEmergencies()).hasSize(1);
    assertThat(world.blocks(course)).contains(GuardRule.EMERGENCY_OPEN);

    world.lifting().reviewEmergency(Staff.PRESCRIBER, course, "long ago, no harm").orThrow();
    assertThat(world.blocks(course)).doesNotContain(GuardRule.EMERGENCY_OPEN);
    assertThat(past.isClosed(120)).isTrue();
  }

  @Test
  void two_emergencies_of_an_import_that_is_undone_are_both_told() {
    world.signProposed(course);
    var first = injection(1, hoursAgo(500), PastWorld.minutes(240));
    var second = injection(2, hoursAgo(400), PastWorld.minutes(300));
    past.imports().undo(past.bringIn(first, second), "the wrong file").orThrow();

    assertThat(world.state(course).question().history().openEmergencies()).hasSize(2);
    assertThat(toConfirm()).hasSize(1);
  }

  @Test
  void what_is_brought_in_again_as_it_was_waits_for_nobody() {
    world.signProposed(course);
    Optional<Setting> when = hoursAgo(500);
    past.imports().undo(bringIn(when, PastWorld.minutes(150)), "the wrong file").orThrow();

    bringIn(when, PastWorld.minutes(150));

    assertThat(toConfirm()).isEmpty();
    assertThat(world.blocks(course)).containsExactly(GuardRule.VOLUME_CLOSED);
  }

  @Test
  void what_is_brought_in_again_as_shorter_opens_nothing_before_a_prescriber_confirms() {
    world.signProposed(course);
    Optional<Setting> when = hoursAgo(500);
    past.imports().undo(bringIn(when, PastWorld.minutes(150)), "the wrong file").orThrow();

    bringIn(when, PastWorld.minutes(40));

    assertThat(world.blocks(course)).containsExactly(GuardRule.VOLUME_CLOSED);
    confirmUndone(Staff.PRESCRIBER).orThrow();
    assertThat(world.blocks(course)).isEmpty();
  }

  @Test
  void a_long_erection_without_a_time_waits_for_a_prescriber_also_when_its_import_is_undone() {
    past.imports()
        .undo(bringIn(Optional.empty(), PastWorld.minutes(150)), "the wrong file")
        .orThrow();

    assertThat(world.blocks(course)).contains(GuardRule.PAST_LONG);
    assertThat(toConfirm()).hasSize(1);
    confirmUndone(Staff.PRESCRIBER).orThrow();
    assertThat(world.blocks(course)).doesNotContain(GuardRule.PAST_LONG);
  }

  @Test
  void a_decision_on_an_import_that_was_undone_later_is_replayed_as_it_was() {
    String id = bringIn(hoursAgo(500), PastWorld.minutes(40));
    world.signProposed(course);
    var signature = world.lastEntry(course);
    world.pass(Duration.ofHours(1));

    past.imports().undo(id, "the wrong file").orThrow();

    assertThat(world.titration().replay(course, signature).orElseThrow().differences()).isEmpty();
  }

  @Test
  void a_long_erection_without_a_time_stops_every_dose_until_a_prescriber_says_what_it_was() {
    past.bringInHalfStrength(PastWorld.minutes(120));
    assertThat(world.state(course).advice().reason().rule())
        .isEqualTo(TitrationRule.LONG_BEFORE_RECORD);
    world.pass(Duration.ofDays(3));
    world
        .report(course, ReportForm.at("2026-03-02", "09:00").mark("12").grade("3").exactly("40"))
        .orThrow();
    assertThat(world.blocks(course)).contains(GuardRule.PAST_LONG);
    assertThat(past.isClosed(250)).isFalse();

    assertThat(
            past.review(Staff.EDUCATOR, Optional.of(PastWorld.ALPROSTADIL), "his letter").faults())
        .containsExactly("Only a prescriber can do that.");
    assertThat(past.review(Staff.PRESCRIBER, Optional.of(PastWorld.ALPROSTADIL), " ").faults())
        .hasSize(1);
    assertThat(past.review(Staff.PRESCRIBER, Optional.of(new PreparationId("x")), "so").faults())
        .hasSize(1);
    past.review(Staff.PRESCRIBER, Optional.of(PastWorld.ALPROSTADIL), "his letter").orThrow();

    assertThat(world.blocks(course)).doesNotContain(GuardRule.PAST_LONG);
    assertThat(past.isClosed(250)).isTrue();
    assertThat(past.isClosed(120)).isFalse();
  }

  @Test
  void four_hours_without_a_time_are_an_emergency_once_it_is_known_what_it_was() {
    past.bringInHalfStrength(PastWorld.minutes(300));
    past.review(Staff.PRESCRIBER, Optional.of(PastWorld.ALPROSTADIL), "his letter").orThrow();

    assertThat(world.blocks(course)).contains(GuardRule.EMERGENCY_OPEN);
    world.lifting().reviewEmergency(Staff.PRESCRIBER, course, "long ago, no harm").orThrow();
    assertThat(world.blocks(course)).doesNotContain(GuardRule.EMERGENCY_OPEN);
    assertThat(past.isClosed(250)).isTrue();
  }

  @Test
  void what_nobody_can_tell_is_reviewed_in_so_many_words() {
    past.bringInHalfStrength(PastWorld.minutes(150));

    past.review(Staff.PRESCRIBER, Optional.empty(), "his clinic has closed").orThrow();

    assertThat(world.blocks(course)).doesNotContain(GuardRule.PAST_LONG);
  }

  @Test
  void a_history_without_a_long_erection_asks_no_prescriber() {
    past.bringInHalfStrength(PastWorld.minutes(119));

    assertThat(world.blocks(course)).doesNotContain(GuardRule.PAST_LONG);
    assertThat(past.review(Staff.PRESCRIBER, Optional.empty(), "seen").faults()).hasSize(1);
    assertThat(world.state(course).advice().reason().rule())
        .isEqualTo(TitrationRule.LAST_INJECTION_FIRST);
  }

  @Test
  void a_decision_from_before_an_import_is_replayed_as_it_was() {
    world.signProposed(course);
    var signature = world.lastEntry(course);
    world.pass(Duration.ofHours(1));

    bringIn(hoursAgo(2), PastWorld.minutes(150));

    assertThat(world.titration().replay(course, signature).orElseThrow().differences()).isEmpty();
  }

  @Test
  void injections_without_a_time_stop_him_also_when_their_import_is_undone() {
    past.imports()
        .undo(bringIn(Optional.empty(), PastWorld.minutes(40)), "the wrong file")
        .orThrow();

    assertThat(world.blocks(course)).contains(GuardRule.PAST_OPEN);
    assertThat(toConfirm())
        .singleElement()
        .satisfies(one -> assertThat(one.said()).startsWith("Injections without a time"));
    assertThat(confirmUndone(Staff.EDUCATOR).faults()).isNotEmpty();
    assertThat(world.blocks(course)).contains(GuardRule.PAST_OPEN);

    confirmUndone(Staff.PRESCRIBER).orThrow();
    assertThat(world.blocks(course)).doesNotContain(GuardRule.PAST_OPEN);
    assertThat(toConfirm()).isEmpty();
  }

  @Test
  void a_report_of_his_last_injection_answers_an_import_that_was_undone_too() {
    past.imports()
        .undo(bringIn(Optional.empty(), PastWorld.minutes(40)), "the wrong file")
        .orThrow();
    world.pass(Duration.ofDays(3));

    world
        .report(course, ReportForm.at("2026-03-02", "09:00").mark("12").grade("3").exactly("40"))
        .orThrow();

    assertThat(world.blocks(course)).doesNotContain(GuardRule.PAST_OPEN);
    assertThat(toConfirm()).isEmpty();
  }

  @Test
  void an_import_that_was_undone_keeps_its_entries() {
    String id = bringIn(Optional.empty(), PastWorld.minutes(40));
    assertThat(past.imports().undo(id, " ").faults()).isNotEmpty();

    assertThat(past.imports().undo(id, "the wrong file").orThrow()).isEqualTo(1);

    assertThat(past.imports().undo(id, "again").faults()).isNotEmpty();
    assertThat(past.store().journal().firstBroken()).isEmpty();
    bringIn(Optional.empty(), PastWorld.minutes(40));
  }

  @Test
  void what_a_guard_could_not_read_is_a_fault_by_line() {
    var future = new Setting(world.now().plusSeconds(1), new PreparationId("nobody's"), "u40-1");
    var injection =
        new PastInjection(
            7,
            1,
            Volume.ofMicrolitres(120),
            1,
            Optional.of(1.0),
            Grade.NONE,
            PastWorld.minutes(1),
            Optional.of(future));

    var plan = past.imports().plan(List.of(new PastHistory("P", "unknown", List.of(injection))));

    assertThat(plan.ready()).isEmpty();
    assertThat(plan.aside()).isEqualTo(1);
    assertThat(plan.faults())
        .hasSize(3)
        .allMatch(fault -> fault.startsWith("line 7: "))
        .anyMatch(fault -> fault.contains("in the future"));
  }
}
