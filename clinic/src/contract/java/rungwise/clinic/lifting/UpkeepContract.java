package rungwise.clinic.lifting;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.Plan;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.standing.Reach;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.SignDraft;
import rungwise.clinic.titration.SignForms;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.known.PreparationId;

/** What suspends an order although nothing was reported: over any store. */
public abstract class UpkeepContract {

  private static final PreparationId HIS = new PreparationId("alprostadil-20");

  private TitrationWorld world;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /** The first dose went well in the clinic; the label asks for an examination after 3 months. */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.open();
    world.signProposed(course);
    world.pass(Duration.ofHours(2));
    world.report(course, ReportForm.at("2026-03-02", "11:00")).orThrow();
    world.makeReady(course);
  }

  private void signForHome() {
    world.sign(course, SignForms.atHome(world.proposed(course))).orThrow();
  }

  private void examine(String day) {
    world.screenings().examine(Staff.EDUCATOR, course, day, "no", "").orThrow();
  }

  private void sign(String document) {
    world.written().signWritten(Staff.PRESCRIBER, document, Set.of()).orThrow();
  }

  /** He runs on the first version of a protocol of the clinic's own. */
  private void runOnOwn() {
    sign(LabelReader.waitingFor(1));
    Plan plan = world.file(course).plan();
    var own = new Plan(plan.preparation(), plan.barrel(), "waiting", 1);
    world.titration().choosePlan(Staff.PRESCRIBER, course, own, id -> true, "ours").orThrow();
    signForHome();
    world.pass(Duration.ofDays(2));
    assertThat(world.blocks(course)).isEmpty();
  }

  @Test
  void an_overdue_examination_ends_home_use_after_the_grace_and_an_examination_brings_it_back() {
    signForHome();
    Instant due = Instant.parse("2026-06-02T15:00:00.123Z");
    Instant end = due.plus(Duration.ofDays(LabelReader.GRACE_DAYS));

    world.setClock(end.minusMillis(1));
    assertThat(world.blocks(course)).isEmpty();
    world.setClock(end);
    assertThat(world.blocks(course)).containsExactly(GuardRule.EXAMINATION_LONG_OVERDUE);
    examine("2026-07-02");

    assertThat(world.blocks(course)).isEmpty();
  }

  @Test
  void an_overdue_examination_is_overridden_until_a_day_and_not_longer() {
    world.setClock(Instant.parse("2026-08-01T15:00:00Z"));
    SignDraft draft =
        SignForms.atHome(
            world.overriding(course, "on holiday", GuardRule.EXAMINATION_LONG_OVERDUE));

    assertThat(world.sign(course, draft).faults())
        .singleElement()
        .asString()
        .contains("Choose a day from 1 August 2026 to 31 August 2026");
    world.sign(course, SignForms.until(draft, "2026-08-15")).orThrow();

    assertThat(world.blocks(course)).isEmpty();
    world.setClock(Instant.parse("2026-08-16T15:00:00Z"));
    assertThat(world.blocks(course)).containsExactly(GuardRule.EXAMINATION_LONG_OVERDUE);
  }

  @Test
  void a_recalled_preparation_suspends_its_orders_at_once_and_no_signature_opens_it() {
    signForHome();
    EntryId signed = world.lastEntry(course);
    world.pass(Duration.ofDays(2));
    assertThat(world.blocks(course)).isEmpty();

    world.withdraw(HIS);

    assertThat(world.blocks(course)).containsExactly(GuardRule.RECALLED);
    assertThat(world.sign(course, world.instead(course, 120)).faults())
        .contains("Not possible: " + GuardRule.RECALLED.wording());
    assertThat(world.titration().replay(course, signed).orElseThrow().differences()).isEmpty();
  }

  @Test
  void a_recall_that_a_clock_has_dated_too_late_counts_at_once() {
    signForHome();
    world.pass(Duration.ofDays(3));
    world.withdraw(HIS);

    world.pass(Duration.ofDays(-1)); // the clock was a day ahead, and is set right

    assertThat(world.blocks(course)).containsExactly(GuardRule.RECALLED);
  }

  @Test
  void a_recall_and_a_version_name_everybody_whom_they_reach_before_they_are_signed() {
    runOnOwn();
    CourseId other = world.open();
    world.signProposed(other);
    world.open();
    LabelReader reader = new LabelReader();
    var lower = reader.read(LabelReader.secondOfWaiting("2", 24, Optional.empty())).orThrow();
    var slower = reader.read(LabelReader.secondOfWaiting("60", 72, Optional.empty())).orThrow();
    var same = reader.read(LabelReader.secondOfWaiting("60", 24, Optional.empty())).orThrow();
    Reach reach = world.titration().reach();

    assertThat(reach.ofRecall(Set.of(HIS)))
        .extracting(one -> one.course().id())
        .containsExactlyInAnyOrder(course, other);
    assertThat(reach.ofRecall(Set.of(new PreparationId("another")))).isEmpty();
    assertThat(reach.ofVersion(lower))
        .containsExactly(new Reach.Reached(world.file(course), /* isSuspended= */ true));
    assertThat(reach.ofVersion(slower))
        .containsExactly(new Reach.Reached(world.file(course), /* isSuspended= */ false));
    assertThat(reach.ofVersion(same)).isEmpty();
  }

  @Test
  void a_version_that_lowers_the_maximum_suspends_what_is_above_it_at_once() {
    runOnOwn();
    EntryId signed = world.file(course).signedDose().orElseThrow().entry().id();
    Optional<LocalDate> nextYear = Optional.of(LocalDate.of(2027, 1, 1));

    sign(LabelReader.secondOfWaiting("2", 24, nextYear));

    assertThat(world.blocks(course)).containsExactly(GuardRule.NEWER_VERSION_FORBIDS);
    assertThat(world.titration().replay(course, signed).orElseThrow().differences()).isEmpty();
  }

  @Test
  void a_version_that_lowers_no_limit_holds_from_the_day_that_it_names() {
    runOnOwn();
    world.report(course, ReportForm.at("2026-03-04", "11:00")).orThrow();
    world.setClock(Instant.parse("2026-03-06T15:00:00Z"));
    sign(LabelReader.secondOfWaiting("60", 72, Optional.of(LocalDate.of(2026, 3, 7))));

    assertThat(world.blocks(course)).isEmpty();
    world.setClock(Instant.parse("2026-03-07T15:00:00Z"));

    assertThat(world.blocks(course)).containsExactly(GuardRule.SPACING);
  }

  @Test
  void a_version_without_a_day_holds_from_its_signature() {
    runOnOwn();
    world.report(course, ReportForm.at("2026-03-04", "11:00")).orThrow();
    world.setClock(Instant.parse("2026-03-06T15:00:00Z"));

    sign(LabelReader.secondOfWaiting("60", 72, Optional.empty()));

    assertThat(world.blocks(course)).isEqualTo(List.of(GuardRule.SPACING));
  }
}
