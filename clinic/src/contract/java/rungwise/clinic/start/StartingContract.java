package rungwise.clinic.start;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.Patient;
import rungwise.clinic.course.Plan;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.Reading;

/** Opening a course, over any store. */
public abstract class StartingContract {

  private TitrationWorld world;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
  }

  private CourseDraft good() {
    return world.form("Ola Sample", "MR-1", "mixed", "u100-1");
  }

  private Reading<CourseId> open(CourseDraft draft) {
    return world.starting().open(Staff.EDUCATOR, draft);
  }

  private static CourseDraft born(CourseDraft draft, String date) {
    return new CourseDraft(
        draft.fullName(),
        date,
        draft.recordNumber(),
        draft.group(),
        draft.preparation(),
        draft.barrel(),
        draft.protocol(),
        draft.namesakeConfirmed());
  }

  private static CourseDraft confirmed(CourseDraft draft) {
    return new CourseDraft(
        draft.fullName(),
        draft.birthDate(),
        draft.recordNumber(),
        draft.group(),
        draft.preparation(),
        draft.barrel(),
        draft.protocol(),
        /* namesakeConfirmed= */ true);
  }

  private static CourseDraft by(CourseDraft draft, String protocol) {
    return new CourseDraft(
        draft.fullName(),
        draft.birthDate(),
        draft.recordNumber(),
        draft.group(),
        draft.preparation(),
        draft.barrel(),
        protocol,
        draft.namesakeConfirmed());
  }

  @Test
  void a_course_does_not_begin_on_a_protocol_before_the_day_from_which_it_holds() {
    String strict = "strict version 1";
    world.setClock(Instant.parse("2026-03-10T03:59:00Z"));
    assertThat(open(by(good(), strict)).faults())
        .containsExactly("Choose a protocol that the clinic has signed.");

    // Midnight of 10 March in New York, which has put its clock forward two days before.
    world.setClock(Instant.parse("2026-03-10T04:00:00Z"));

    assertThat(open(by(good(), strict)).faults()).isEmpty();
  }

  private static CourseDraft of(CourseDraft draft, String preparation) {
    return new CourseDraft(
        draft.fullName(),
        draft.birthDate(),
        draft.recordNumber(),
        draft.group(),
        preparation,
        draft.barrel(),
        draft.protocol(),
        draft.namesakeConfirmed());
  }

  @Test
  void a_course_begins_with_the_man_and_the_plan_and_nobody_has_screened_him() {
    CourseId id = open(good()).orThrow();

    assertThat(world.file(id).entries())
        .extracting(CourseEntry::fact)
        .containsExactly(
            new CourseFact.CourseOpened(
                new Patient("Ola Sample", LocalDate.of(1961, 4, 30), "MR-1"), AetiologyGroup.MIXED),
            new CourseFact.PlanChosen(
                new Plan(new PreparationId("alprostadil-20"), "u100-1", "label", 1)));
    assertThat(world.file(id).entries())
        .extracting(CourseEntry::recordedBy)
        .containsOnly(Staff.EDUCATOR.id());
    assertThat(world.state(id).advice().decision()).isEqualTo(new Decision.Pause());
    assertThat(world.blocks(id)).contains(GuardRule.SCREENING_OPEN);
  }

  @Test
  void every_fault_of_the_form_is_told_at_once_and_nothing_is_written() {
    var empty = new CourseDraft("", "", "", "", "", "", "", /* namesakeConfirmed= */ false);

    Reading<CourseId> reading = open(empty);

    assertThat(reading.faults())
        .hasSize(7)
        .anyMatch(fault -> fault.startsWith("His full name is missing"))
        .anyMatch(fault -> fault.startsWith("His record number is missing"))
        .anyMatch(fault -> fault.startsWith("Birth date: \"\" is not a date"))
        .anyMatch(fault -> fault.startsWith("Choose the group"))
        .anyMatch(fault -> fault.startsWith("Choose the preparation"))
        .anyMatch(fault -> fault.startsWith("Choose the syringe"))
        .anyMatch(fault -> fault.startsWith("Choose a protocol"));
    assertThat(world.stored().courses().all()).isEmpty();
  }

  @Test
  void a_man_is_18_on_his_birthday_and_at_most_120() {
    for (String wrong : new String[] {"2008-03-03", "1906-03-01"}) {
      assertThat(open(born(good(), wrong)).faults())
          .singleElement()
          .asString()
          .contains("younger than 18 or older than 120");
    }
    assertThat(open(born(good(), "2008-03-02")).faults()).isEmpty();
    assertThat(open(confirmed(born(good(), "1906-03-02"))).faults()).isEmpty();
  }

  @Test
  void a_day_that_is_in_no_calendar_is_refused() {
    assertThat(open(born(good(), "1961-02-29")).faults())
        .singleElement()
        .asString()
        .contains("\"1961-02-29\" is not a date");
  }

  @Test
  void a_namesake_is_asked_back_until_it_is_confirmed() {
    open(good()).orThrow();
    CourseDraft sameName = world.form("OLA  sample", "MR-2", "mixed", "u100-1");
    CourseDraft sameNumber = world.form("Somebody Else", "mr-1", "mixed", "u100-1");

    for (CourseDraft alike : new CourseDraft[] {good(), sameName, sameNumber}) {
      assertThat(open(alike).faults()).singleElement().asString().startsWith("Another course");
    }
    assertThat(world.stored().courses().all()).hasSize(1);
    assertThat(open(confirmed(sameName)).faults()).isEmpty();
    assertThat(open(born(world.form("Ola Sample", "MR-9", "mixed", "u100-1"), "1962-04-30")))
        .isInstanceOf(Reading.Read.class);
  }

  @Test
  void a_syringe_that_does_not_hold_the_first_dose_is_refused() {
    CourseDraft small = of(world.form("Ola", "MR-1", "mixed", "u100-0.3"), "alprostadil-5");
    CourseDraft large = of(world.form("Ola", "MR-1", "mixed", "u100-0.5"), "alprostadil-5");

    assertThat(open(small).faults()).singleElement().asString().contains("0.5 mL", "0.3 mL");
    assertThat(world.stored().courses().all()).isEmpty();
    assertThat(open(large).faults()).isEmpty();
  }

  @Test
  void a_device_without_lines_is_refused() {
    assertThat(open(world.form("Ola", "MR-1", "mixed", "cartridge-1")).faults())
        .singleElement()
        .asString()
        .contains("No line");
  }

  @Test
  void a_preparation_that_the_protocol_is_not_written_for_is_refused() {
    assertThat(open(of(good(), "three-drug-30-1-10")).faults())
        .singleElement()
        .asString()
        .contains("is not written for");
  }

  @Test
  void no_course_begins_with_a_withdrawn_preparation_and_a_running_one_has_no_dose() {
    CourseId running = open(good()).orThrow();

    world.withdraw(new PreparationId("alprostadil-20"));

    assertThat(open(world.form("Somebody Else", "MR-2", "mixed", "u100-1")).faults())
        .singleElement()
        .asString()
        .startsWith("Choose the preparation from the clinic's list");
    world.prepare(running, SamplePreparations.ALPROSTADIL_20);
    assertThat(world.state(running).advice().decision().proposed()).isEmpty();
    assertThat(world.blocks(running)).contains(GuardRule.RECALLED);
  }

  @Test
  void only_a_prescriber_or_an_educator_opens_a_course() {
    assertThat(world.starting().open(Staff.AUDITOR, good()).faults()).hasSize(1);
    assertThat(world.starting().open(Staff.ON_CALL, good()).faults()).hasSize(1);
    assertThat(world.stored().courses().all()).isEmpty();
    assertThat(world.starting().open(Staff.PRESCRIBER, good()).faults()).isEmpty();
  }
}
