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
import rungwise.clinic.day.OpenErections;
import rungwise.clinic.past.PastHistory;
import rungwise.clinic.past.PastInjection;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** What a course makes of a history from before of which it is not known what or when it was. */
final class PastOfNobodyKnowsWhatTest {

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

  @Test
  void what_nobody_can_tell_closes_every_dose_until_a_prescriber_opens_it() {
    past.bringInHalfStrength(PastWorld.minutes(150));
    past.review(Staff.PRESCRIBER, Optional.empty(), "his clinic has closed").orThrow();
    world.pass(Duration.ofDays(3));
    world
        .report(course, ReportForm.at("2026-03-02", "09:00").mark("12").grade("3").exactly("40"))
        .orThrow();

    assertThat(past.isClosed(120)).isTrue();
    assertThat(past.isClosed(250)).isTrue();
    assertThat(world.lifting().reopen(Staff.EDUCATOR, course, 120, "he had little").faults())
        .isNotEmpty();

    world.lifting().reopen(Staff.PRESCRIBER, course, 120, "in the clinic, as a new man").orThrow();
    assertThat(past.isClosed(120)).isFalse();
    assertThat(past.isClosed(250)).isTrue();
    world.signProposed(course);
    assertThat(world.state(course).mayInject().isClear()).isTrue();
  }

  private boolean isEmergency() {
    return world.blocks(course).contains(GuardRule.EMERGENCY_OPEN);
  }

  /** The end is known: 4 hours that were said wait for their own review all the same. */
  @Test
  void four_hours_of_nobody_knows_what_wait_for_the_review_of_an_emergency() {
    past.bringInHalfStrength(PastWorld.minutes(300));
    past.review(Staff.PRESCRIBER, Optional.empty(), "his clinic has closed").orThrow();

    assertThat(isEmergency()).isTrue();
    assertThat(past.lifting().emergencies())
        .singleElement()
        .asString()
        .contains("nobody knows with what", "soft after 5 h");
    assertThat(past.lifting().isEndOpen()).isFalse();
    assertThat(world.lifting().reviewEmergency(Staff.EDUCATOR, course, "long ago").faults())
        .isNotEmpty();

    world.lifting().reviewEmergency(Staff.PRESCRIBER, course, "long ago, no harm").orThrow();
    assertThat(isEmergency()).isFalse();
    assertThat(past.isClosed(120)).isTrue();
    assertThat(world.state(course).question().notExaminedSince()).isPresent();
  }

  @Test
  void what_was_still_firm_of_nobody_knows_what_is_reviewed_with_when_he_was_seen_to_be_soft() {
    past.bringInHalfStrength(new SoftAfter.AtLeast(TimeSpan.ofMinutes(200)));
    past.review(Staff.PRESCRIBER, Optional.empty(), "his clinic has closed").orThrow();

    assertThat(isEmergency()).isTrue();
    assertThat(past.lifting().isEndOpen()).isTrue();
    assertThat(OpenErections.of(world.state(course))).hasSize(1);
    assertThat(world.lifting().reviewEmergency(Staff.PRESCRIBER, course, "long ago").faults())
        .hasSize(1);

    world
        .lifting()
        .reviewEmergency(
            Staff.PRESCRIBER, course, Optional.of(world.now()), "he sits here, soft, for years")
        .orThrow();
    assertThat(isEmergency()).isFalse();
    assertThat(OpenErections.of(world.state(course))).isEmpty();
  }

  @Test
  void a_line_without_a_time_that_names_its_preparation_keeps_it() {
    var named =
        new PastInjection(
            2,
            1,
            Volume.ofMicrolitres(250),
            1,
            Optional.of(1.0),
            Grade.FULLY_FIRM,
            PastWorld.minutes(150),
            Optional.empty(),
            Optional.of(SamplePreparations.ALPROSTADIL_40.id()));
    past.bringIn(named);

    assertThat(world.blocks(course)).contains(GuardRule.PAST_OPEN);
    assertThat(world.blocks(course)).doesNotContain(GuardRule.PAST_LONG);
    assertThat(past.isClosed(500)).isTrue();
    assertThat(past.isClosed(250)).isFalse();
    assertThat(past.store().pastHistories().all().getFirst().history().injections())
        .containsExactly(named);
    assertThat(past.review(Staff.PRESCRIBER, Optional.empty(), "seen").faults()).hasSize(1);
  }

  @Test
  void a_line_that_names_a_preparation_of_nobody_here_is_refused() {
    var named =
        new PastInjection(
            2,
            1,
            Volume.ofMicrolitres(250),
            1,
            Optional.of(1.0),
            Grade.FULLY_FIRM,
            PastWorld.minutes(150),
            Optional.empty(),
            Optional.of(new PreparationId("nobody's")));

    var plan =
        past.imports().plan(List.of(new PastHistory("mr-1", "vasculogenic", List.of(named))));

    assertThat(plan.faults()).singleElement().asString().contains("is not one of the clinic's");
  }
}
