package rungwise.clinic.room;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseFact.ObservationStarted;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.measured.Vitals;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Spot;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/** The begin of an injection in the clinic, and what forbids it, over any store. */
public abstract class NeedleContract {

  private static final Instant TEN = Instant.parse("2026-03-02T15:00:00Z");
  private static final Volume SIGNED = Volume.ofMicrolitres(120);
  private static final Optional<Vitals> BEFORE = Optional.of(new Vitals(128, 76, 72));

  private TitrationWorld world;
  private VisitForms forms;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /** A dose of 0.12 mL is signed for the clinic; it is ten in the morning. */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    forms = new VisitForms(world);
    course = world.open();
    world.signProposed(course);
  }

  private Reading<Long> start(StartDraft draft) {
    return world.room().start(Staff.EDUCATOR, course, draft);
  }

  /** He is injected now. */
  private EntryId injected() {
    start(forms.start("12")).orThrow();
    return world.lastEntry(course);
  }

  private void assertRefused(Reading<Long> reading, String words) {
    assertThat(reading.faults()).singleElement().asString().contains(words);
  }

  @Test
  void an_injection_is_written_down_with_its_spot_its_vial_and_what_was_measured_before() {
    EntryId vial = world.file(course).vial().orElseThrow().entry().id();

    EntryId observation = injected();

    assertThat(world.file(course).observing())
        .extracting(Written::fact)
        .containsExactly(
            new ObservationStarted(
                TEN,
                new PreparationId("alprostadil-20"),
                "u100-1",
                SIGNED,
                Optional.of(SIGNED),
                Optional.of(new Spot(Spot.Side.HIS_LEFT, 2)),
                BEFORE,
                Optional.of(vial)));
    assertThat(world.last(course).id()).isEqualTo(observation);
    assertThat(world.last(course).recordedBy()).isEqualTo(Staff.EDUCATOR.id());
  }

  @Test
  void nothing_is_started_while_a_guard_forbids_it_and_nothing_is_written() {
    CourseId unsigned = world.open();
    long before = world.file(unsigned).basis();

    assertRefused(
        world.room().start(Staff.EDUCATOR, unsigned, forms.start("12")),
        "Not now: No dose is signed for him.");
    assertRefused(start(forms.start("25")), "Not now: 0.25 mL is not the signed dose of 0.12 mL.");

    assertThat(world.file(unsigned).basis()).isEqualTo(before);
    assertThat(world.room().board()).isEmpty();
  }

  @Test
  void what_was_given_already_is_recorded_with_what_spoke_against_it() {
    world.answer(course, Condition.SICKLE_CELL, Answer.YES);

    Reading<Long> reading = start(forms.alreadyGiven("25"));

    assertThat(reading.notices())
        .containsExactly(
            "No blood pressure and pulse before the injection were written down.",
            "Recorded although: Not now: A contraindication is on record.",
            "Recorded although: Not now: 0.25 mL is not the signed dose of 0.12 mL.");
    assertThat(world.file(course).observing())
        .extracting(written -> written.fact().drawn(), written -> written.fact().ordered())
        .containsExactly(tuple(Volume.ofMicrolitres(250), Optional.of(SIGNED)));
  }

  @Test
  void blood_pressure_and_pulse_are_all_given_or_all_missing_and_that_is_said() {
    assertRefused(start(forms.start("12", "128", "", "72")), "give all three as whole numbers");
    assertRefused(start(forms.start("12", "76", "128", "72")), "give all three as whole numbers");

    assertThat(start(forms.start("12", "", "", "")).notices())
        .containsExactly("No blood pressure and pulse before the injection were written down.");
  }

  @Test
  void the_same_injection_is_not_started_twice_even_if_it_was_given_already() {
    injected();

    assertRefused(start(forms.start("12")), "at this very time is already on record");
    assertRefused(start(forms.alreadyGiven("12")), "at this very time is already on record");

    assertThat(world.file(course).observing()).hasSize(1);
  }

  @Test
  void a_man_under_observation_gets_nothing_more() {
    injected();
    world.pass(Duration.ofMinutes(20));

    assertThat(world.blocks(course)).contains(GuardRule.UNDER_OBSERVATION);
    assertThat(start(forms.start("12")).faults())
        .anyMatch(fault -> fault.startsWith("Not now: He is under observation"));
    assertThat(world.sign(course, world.instead(course, 120)).faults())
        .anyMatch(fault -> fault.startsWith("Not possible: He is under observation"));
  }

  @Test
  void an_injection_that_is_under_observation_is_not_reported_beside_it() {
    injected();

    assertRefused(
        world.report(course, ReportForm.at("2026-03-02", "10:00").soft("not_known")),
        "at this very time is already on record");

    assertThat(world.file(course).reports()).isEmpty();
  }

  @Test
  void an_injection_that_was_reported_is_not_started_again() {
    world.pass(Duration.ofHours(1));
    world.report(course, ReportForm.at("2026-03-02", "11:00").soft("not_known")).orThrow();

    assertRefused(start(forms.alreadyGiven("12")), "at this very time is already on record");
  }
}
