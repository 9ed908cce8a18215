package rungwise.store.past;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.day.OpenErections;
import rungwise.clinic.past.PastHistory;
import rungwise.clinic.past.PastImports;
import rungwise.clinic.past.PastInjection;
import rungwise.clinic.people.Account;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.sheet.LiftingView;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;
import rungwise.store.OpenStores;
import rungwise.store.SqliteStore;

/** What a course makes of a history from before of which it is not known what or when it was. */
final class PastOfNobodyKnowsWhatTest {

  private static final PreparationId ALPROSTADIL = new PreparationId("alprostadil-20");

  @TempDir Path folder;
  private SqliteStore store;
  private TitrationWorld world;
  private PastImports imports;
  private CourseId course;

  @BeforeEach
  void open() {
    store = SqliteStore.open(folder);
    world = new TitrationWorld(OpenStores.ports(store), new LabelReader());
    imports =
        new PastImports(
            store.pastHistories(),
            id -> id.equals(ALPROSTADIL) || id.equals(SamplePreparations.ALPROSTADIL_40.id()),
            store.transactions(),
            UUID::randomUUID,
            world::now);
    course = world.open();
  }

  @AfterEach
  void close() {
    store.close();
  }

  private static SoftAfter minutes(int minutes) {
    return new SoftAfter.Exactly(TimeSpan.ofMinutes(minutes));
  }

  /** He had 0.5 mL of half of what the strength 1 stands for. */
  private void bringInHalfStrength(SoftAfter soft) {
    var injection =
        new PastInjection(
            2,
            1,
            Volume.ofMicrolitres(500),
            1,
            Optional.of(0.5),
            Grade.FULLY_FIRM,
            soft,
            Optional.empty());
    var plan = imports.plan(List.of(new PastHistory("mr-1", "vasculogenic", List.of(injection))));
    imports.commit(plan, "history.csv", done -> {});
  }

  private boolean isClosed(long microlitres) {
    return world.state(course).advice().verdictsOn(Volume.ofMicrolitres(microlitres)).stream()
        .anyMatch(verdict -> verdict.rule() == GuardRule.VOLUME_CLOSED);
  }

  private Reading<Long> review(Account actor, Optional<PreparationId> reference, String reason) {
    return world.lifting().reviewPast(actor, course, reference, world::isInUse, reason);
  }

  @Test
  void what_nobody_can_tell_closes_every_dose_until_a_prescriber_opens_it() {
    bringInHalfStrength(minutes(150));
    review(Staff.PRESCRIBER, Optional.empty(), "his clinic has closed").orThrow();
    world.pass(Duration.ofDays(3));
    world
        .report(course, ReportForm.at("2026-03-02", "09:00").mark("12").grade("3").exactly("40"))
        .orThrow();

    assertThat(isClosed(120)).isTrue();
    assertThat(isClosed(250)).isTrue();
    assertThat(world.lifting().reopen(Staff.EDUCATOR, course, 120, "he had little").faults())
        .isNotEmpty();

    world.lifting().reopen(Staff.PRESCRIBER, course, 120, "in the clinic, as a new man").orThrow();
    assertThat(isClosed(120)).isFalse();
    assertThat(isClosed(250)).isTrue();
    world.signProposed(course);
    assertThat(world.state(course).mayInject().isClear()).isTrue();
  }

  private boolean isEmergency() {
    return world.blocks(course).contains(GuardRule.EMERGENCY_OPEN);
  }

  private LiftingView lifting() {
    return new CourseViews(world.room().time(), account -> "somebody")
        .of(world.state(course))
        .lifting();
  }

  /** The end is known: 4 hours that were said wait for their own review all the same. */
  @Test
  void four_hours_of_nobody_knows_what_wait_for_the_review_of_an_emergency() {
    bringInHalfStrength(minutes(300));
    review(Staff.PRESCRIBER, Optional.empty(), "his clinic has closed").orThrow();

    assertThat(isEmergency()).isTrue();
    assertThat(lifting().emergencies())
        .singleElement()
        .asString()
        .contains("nobody knows with what", "soft after 5 h");
    assertThat(lifting().isEndOpen()).isFalse();
    assertThat(world.lifting().reviewEmergency(Staff.EDUCATOR, course, "long ago").faults())
        .isNotEmpty();

    world.lifting().reviewEmergency(Staff.PRESCRIBER, course, "long ago, no harm").orThrow();
    assertThat(isEmergency()).isFalse();
    assertThat(isClosed(120)).isTrue();
    assertThat(world.state(course).question().notExaminedSince()).isPresent();
  }

  @Test
  void what_was_still_firm_of_nobody_knows_what_is_reviewed_with_when_he_was_seen_to_be_soft() {
    bringInHalfStrength(new SoftAfter.AtLeast(TimeSpan.ofMinutes(200)));
    review(Staff.PRESCRIBER, Optional.empty(), "his clinic has closed").orThrow();

    assertThat(isEmergency()).isTrue();
    assertThat(lifting().isEndOpen()).isTrue();
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
            minutes(150),
            Optional.empty(),
            Optional.of(SamplePreparations.ALPROSTADIL_40.id()));
    var plan = imports.plan(List.of(new PastHistory("mr-1", "vasculogenic", List.of(named))));
    imports.commit(plan, "history.csv", done -> {});

    assertThat(world.blocks(course)).contains(GuardRule.PAST_OPEN);
    assertThat(world.blocks(course)).doesNotContain(GuardRule.PAST_LONG);
    assertThat(isClosed(500)).isTrue();
    assertThat(isClosed(250)).isFalse();
    assertThat(store.pastHistories().all().getFirst().history().injections())
        .containsExactly(named);
    assertThat(review(Staff.PRESCRIBER, Optional.empty(), "seen").faults()).hasSize(1);
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
            minutes(150),
            Optional.empty(),
            Optional.of(new PreparationId("nobody's")));

    var plan = imports.plan(List.of(new PastHistory("mr-1", "vasculogenic", List.of(named))));

    assertThat(plan.faults()).singleElement().asString().contains("is not one of the clinic's");
  }
}
