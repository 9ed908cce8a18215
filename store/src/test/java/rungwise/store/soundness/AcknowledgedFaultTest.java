package rungwise.store.soundness;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.Account;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.screening.ScreeningForm;
import rungwise.clinic.soundness.Flaw;
import rungwise.clinic.standing.Acknowledging;
import rungwise.clinic.supply.VialForm;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;
import rungwise.store.OpenStores;
import rungwise.store.RawDatabase;
import rungwise.store.RecordCheck;
import rungwise.store.journal.Inspected;

/** Two people acknowledge that another program changed a row: what it may do from then on. */
final class AcknowledgedFaultTest {

  private static final String WHY = "the last backup has the same fault";

  @TempDir Path folder;
  private final OpenStores stores = new OpenStores();
  private TitrationWorld world;
  private Acknowledging acknowledging;
  private CourseId course;

  /** He had a poor erection after the dose that was signed, and it was over after 20 min. */
  @BeforeEach
  void inject() {
    world = new TitrationWorld(stores.open(folder), new LabelReader());
    acknowledging = new Acknowledging(world.ports());
    course = world.open();
    world.signProposed(course);
    world
        .report(course, ReportForm.at("2026-03-02", "09:00").mark("12").grade("1").exactly("20"))
        .orThrow();
    world.signProposed(course);
  }

  @AfterEach
  void close() {
    stores.close();
  }

  private void change(String table, String set) throws SQLException {
    try (var raw = RawDatabase.withoutTriggers(folder)) {
      raw.run("update " + table + " set " + set);
    }
  }

  private Reading<Boolean> acknowledge(Account who) {
    return acknowledging.acknowledge(who, course, Acknowledging.shown(world.file(course)), WHY);
  }

  private void acknowledgeByBoth() {
    assertThat(acknowledge(Staff.PRESCRIBER).orThrow()).isFalse();
    assertThat(acknowledge(Staff.LEAD).orThrow()).isTrue();
  }

  @Test
  void one_persons_word_is_none_and_the_same_person_cannot_give_both() throws SQLException {
    change("injection_reported", "grade = 4");

    assertThat(acknowledge(Staff.PRESCRIBER).orThrow()).isFalse();

    assertThat(world.blocks(course)).contains(GuardRule.RECORD_NOT_SOUND);
    assertThat(acknowledge(Staff.PRESCRIBER).faults())
        .singleElement()
        .asString()
        .contains("another person's");
    assertThat(acknowledge(Staff.EDUCATOR).found()).isEmpty();
    assertThat(world.file(course).isSound()).isFalse();
  }

  @Test
  void after_both_words_nothing_that_was_written_before_proves_or_opens_anything()
      throws SQLException {
    world.answer(course, Condition.TRAZODONE, Answer.YES);
    change("injection_reported", "grade = 4");

    acknowledgeByBoth();

    var file = world.file(course);
    assertThat(file.isSound()).isTrue();
    assertThat(file.signedDose()).isEmpty();
    assertThat(file.vial()).isEmpty();
    assertThat(file.screening().answers()).containsOnlyKeys(Condition.TRAZODONE);
    assertThat(world.blocks(course))
        .contains(GuardRule.EMERGENCY_OPEN)
        .doesNotContain(GuardRule.RECORD_NOT_SOUND);
    assertThat(world.state(course).mayInject().isClear()).isFalse();
    assertThat(world.state(course).advice().decision().proposed()).isEmpty();
    assertThat(
            world
                .state(course)
                .question()
                .history()
                .closing(SamplePreparations.ALPROSTADIL_20, Volume.ofMicrolitres(1)))
        .as("what a changed entry may have said closes the smallest dose")
        .isPresent();
  }

  @Test
  void a_prescriber_finds_the_way_on_from_the_beginning_and_in_the_clinic() throws SQLException {
    change("injection_reported", "grade = 4");
    acknowledgeByBoth();
    world.pass(Duration.ofHours(30));

    world
        .lifting()
        .reviewEmergency(
            Staff.PRESCRIBER, course, Optional.of(world.now()), "spoke with him: soft, no pain")
        .orThrow();
    world.screenings().answer(Staff.EDUCATOR, course, ScreeningForm.all(Answer.NO)).orThrow();
    world.screenings().examine(Staff.EDUCATOR, course, "2026-03-03", "no", "").orThrow();
    world.receive(course, VialForm.of(SamplePreparations.ALPROSTADIL_20));
    world.lifting().reopen(Staff.PRESCRIBER, course, 120, "begins anew").orThrow();

    world.signProposed(course);
    assertThat(world.file(course).signedDose().orElseThrow().fact().volume())
        .isEqualTo(Volume.ofMicrolitres(120));
  }

  @Test
  void another_change_of_the_same_entry_or_of_another_one_stops_again() throws SQLException {
    change("injection_reported", "grade = 4");
    acknowledgeByBoth();

    change("injection_reported", "grade = 3");
    assertThat(world.file(course).isSound()).isFalse();
    assertThat(world.blocks(course)).contains(GuardRule.RECORD_NOT_SOUND);

    change("injection_reported", "grade = 4");
    assertThat(world.file(course).isSound()).isTrue();
    change("vial_received", "lot = lot || '1'");
    assertThat(world.file(course).isSound()).isFalse();
  }

  @Test
  void what_a_page_showed_before_another_change_is_not_acknowledged() throws SQLException {
    change("injection_reported", "grade = 4");
    String shown = Acknowledging.shown(world.file(course));
    change("injection_reported", "grade = 3");

    assertThat(acknowledging.acknowledge(Staff.LEAD, course, shown, WHY).faults())
        .singleElement()
        .asString()
        .contains("has changed since the page was opened");
  }

  @Test
  void who_he_is_and_what_he_is_treated_with_is_never_acknowledged() throws SQLException {
    for (String change : new String[] {"course_opened", "plan_chosen"}) {
      change(change, change.equals("plan_chosen") ? "barrel = 'u100-0.5'" : "full_name = 'X'");

      assertThat(acknowledge(Staff.PRESCRIBER).faults())
          .singleElement()
          .asString()
          .contains("Only a sound record");
      assertThat(Acknowledging.canBeAcknowledged(world.file(course))).isFalse();
    }
  }

  @Test
  void an_entry_that_was_removed_is_never_acknowledged() throws SQLException {
    try (var raw = RawDatabase.withoutTriggers(folder)) {
      raw.run("pragma foreign_keys = off");
      raw.run("delete from entry where kind = 'injection_reported'");
    }

    assertThat(world.file(course).flaws())
        .singleElement()
        .satisfies(flaw -> assertThat(flaw.what()).isEqualTo(Flaw.What.NOT_ALL));
    for (Account who : List.of(Staff.PRESCRIBER, Staff.LEAD)) {
      assertThat(acknowledge(who).faults())
          .singleElement()
          .asString()
          .contains("Only a sound record");
    }
    assertThat(world.blocks(course)).contains(GuardRule.RECORD_NOT_SOUND);
  }

  @Test
  void of_all_kinds_of_faults_only_a_changed_entry_is_acknowledged() {
    CourseFile sound = world.file(course);
    long report = sound.reports().getFirst().entry().number();

    assertThat(Flaw.What.values())
        .filteredOn(
            what ->
                Acknowledging.canBeAcknowledged(
                    new CourseFile(
                        course, sound.entries(), List.of(new Flaw(what, report, "as read")))))
        .containsExactly(Flaw.What.CHANGED);
  }

  @Test
  void a_missing_reason_is_asked_for() throws SQLException {
    change("injection_reported", "grade = 4");

    assertThat(
            acknowledging
                .acknowledge(
                    Staff.LEAD, course, Acknowledging.shown(world.file(course)), /* reason= */ " ")
                .found())
        .isEmpty();
  }

  @Test
  void a_walk_over_the_record_passes_what_both_acknowledged_and_finds_the_next_fault()
      throws SQLException {
    change("injection_reported", "grade = 4");
    assertThat(RecordCheck.of(folder, Optional.empty())).isInstanceOf(Inspected.Broken.class);
    acknowledge(Staff.PRESCRIBER).orThrow();
    assertThat(RecordCheck.of(folder, Optional.empty())).isInstanceOf(Inspected.Broken.class);
    acknowledge(Staff.LEAD).orThrow();

    assertThat(RecordCheck.of(folder, Optional.empty())).isInstanceOf(Inspected.Whole.class);
    change("fault_acknowledged", "side = 'keeper' where side = 'prescriber'");
    assertThat(RecordCheck.of(folder, Optional.empty())).isInstanceOf(Inspected.Broken.class);
    assertThat(world.file(course).isSound()).isFalse();
  }
}
