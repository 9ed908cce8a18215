package rungwise.clinic.room;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.Cause;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.ObservationNoted;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.InjectionDetails;
import rungwise.clinic.course.Moment;
import rungwise.clinic.measured.Vitals;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Spot;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.screening.Answer;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** What is seen of an injection in the clinic, and the report it ends with, over any store. */
public abstract class RoomContract {

  private static final Instant TEN = Instant.parse("2026-03-02T15:00:00Z");
  private static final Volume SIGNED = Volume.ofMicrolitres(120);
  private static final Optional<Vitals> AFTER = Optional.of(new Vitals(118, 70, 80));

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

  private Reading<Long> note(EntryId observation, NoteDraft draft) {
    return world.room().note(Staff.EDUCATOR, course, observation, draft);
  }

  private Reading<Long> end(EntryId observation, EndDraft draft) {
    return world.room().end(Staff.EDUCATOR, course, observation, draft);
  }

  private void seeAfter(int minutes, EntryId observation, Moment moment, String grade) {
    world.pass(Duration.ofMinutes(minutes));
    note(observation, forms.note(moment, grade)).orThrow();
  }

  private static Instant minutesAfterTen(int minutes) {
    return TEN.plus(Duration.ofMinutes(minutes));
  }

  private void assertRefused(Reading<Long> reading, String words) {
    assertThat(reading.faults()).singleElement().asString().contains(words);
  }

  @Test
  void the_report_says_when_it_was_first_firm_and_how_long_it_was_usable() {
    EntryId vial = world.file(course).vial().orElseThrow().entry().id();
    EntryId observation = injected();
    seeAfter(7, observation, Moment.FIRST_FIRM, "1");
    seeAfter(3, observation, Moment.USABLE, "3");
    seeAfter(15, observation, Moment.CHECKED, "4");
    world.pass(Duration.ofMinutes(20));

    end(observation, forms.end("4", "one_found", Set.of("LEAK"), "2")).orThrow();

    assertThat(world.file(course).observing()).isEmpty();
    assertThat(world.file(course).reports())
        .extracting(Written::fact)
        .containsExactly(
            new InjectionReported(
                TEN,
                new PreparationId("alprostadil-20"),
                "u100-1",
                SIGNED,
                Optional.of(SIGNED),
                Grade.FULLY_FIRM,
                new SoftAfter.Exactly(TimeSpan.ofMinutes(45)),
                SimpleCauses.ONE_FOUND,
                Place.CLINIC,
                Optional.of(observation),
                new InjectionDetails(
                    Optional.of(TimeSpan.ofMinutes(7)),
                    Optional.of(TimeSpan.ofMinutes(35)),
                    Optional.of(new Spot(Spot.Side.HIS_LEFT, 2)),
                    Optional.of(2),
                    Answer.NOT_KNOWN,
                    Answer.NOT_KNOWN,
                    Set.of(Cause.LEAK),
                    Optional.of(vial),
                    "",
                    Answer.NOT_KNOWN)));
    assertThat(world.last(course).reason()).contains("well");
  }

  @Test
  void every_time_and_every_check_stays_on_record_in_the_order_of_time() {
    EntryId observation = injected();
    seeAfter(15, observation, Moment.CHECKED, "1");
    world.pass(Duration.ofMinutes(15));
    note(observation, forms.noteAt("10:07", Moment.FIRST_FIRM, "1")).orThrow();
    end(observation, forms.end("2", "none_found", Set.of(), "")).orThrow();

    assertThat(world.file(course).notesOf(observation))
        .extracting(Written::fact)
        .containsExactly(
            noted(observation, Moment.FIRST_FIRM, 7, Grade.FULLER, Optional.empty()),
            noted(observation, Moment.CHECKED, 15, Grade.FULLER, Optional.empty()),
            noted(observation, Moment.FULLY_SOFT, 30, Grade.FIRM_NOT_USABLE, AFTER));
  }

  private static ObservationNoted noted(
      EntryId observation, Moment moment, int minutes, Grade grade, Optional<Vitals> vitals) {
    return new ObservationNoted(
        observation, moment, minutesAfterTen(minutes), Optional.of(grade), vitals);
  }

  @Test
  void nothing_is_seen_before_the_injection_or_in_the_future_and_soft_is_the_end() {
    EntryId observation = injected();
    world.pass(Duration.ofMinutes(10));

    assertRefused(
        note(observation, forms.noteAt("09:59", Moment.CHECKED, "1")), "is before the injection");
    assertRefused(
        note(observation, forms.noteAt("10:11", Moment.CHECKED, "1")), "is still to come");
    assertRefused(
        note(observation, forms.noteAt("10:10", Moment.FULLY_SOFT, "0")),
        "That he is soft again ends the observation.");
    assertRefused(
        note(observation, forms.noteAt("10:10", Moment.CHECKED, "5")), "Choose how firm it was");
    assertThat(world.file(course).notesOf(observation)).isEmpty();
  }

  @Test
  void an_observation_is_ended_once() {
    EntryId observation = injected();
    world.pass(Duration.ofMinutes(30));
    end(observation, forms.end("2", "none_found", Set.of(), "")).orThrow();
    long after = world.file(course).basis();

    assertRefused(
        end(observation, forms.end("2", "none_found", Set.of(), "")),
        "This observation was ended or changed meanwhile");
    assertRefused(
        note(observation, forms.note(Moment.CHECKED, "1")),
        "This observation was ended or changed meanwhile");

    assertThat(world.file(course).basis()).isEqualTo(after);
  }

  @Test
  void an_observation_of_another_man_is_not_ended_here() {
    EntryId observation = injected();
    CourseId other = world.open();

    assertRefused(
        world
            .room()
            .end(Staff.EDUCATOR, other, observation, forms.end("2", "none_found", Set.of(), "")),
        "This observation was ended or changed meanwhile");
    assertThat(world.file(course).observing()).hasSize(1);
  }

  @Test
  void a_withdrawn_report_takes_its_observation_with_it() {
    EntryId observation = injected();
    end(observation, forms.end("2", "none_found", Set.of(), "")).orThrow();

    world
        .titration()
        .withdraw(Staff.EDUCATOR, course, world.lastEntry(course), "another man's")
        .orThrow();

    assertThat(world.file(course).reports()).isEmpty();
    assertThat(world.room().board()).isEmpty();
    assertThat(world.blocks(course)).isEmpty();
  }

  @Test
  void what_was_watched_in_the_clinic_is_never_corrected_to_home() {
    EntryId observation = injected();
    world.pass(Duration.ofMinutes(60));
    end(observation, forms.end("2", "none_found", Set.of(), "")).orThrow();
    ReportForm correction =
        ReportForm.at("2026-03-02", "10:00")
            .grade("2")
            .exactly("60")
            .correcting(world.lastReport(course), "he says otherwise");

    assertRefused(
        world.report(course, correction.place("home")), "This injection was watched in the clinic");
    world.report(course, correction.place("clinic")).orThrow();
    world
        .report(course, correction.place("").correcting(world.lastReport(course), "again"))
        .orThrow();

    assertThat(world.file(course).reports())
        .extracting(report -> report.fact().place())
        .containsExactly(Place.CLINIC);
  }

  @Test
  void an_auditor_changes_nothing_in_the_room() {
    String only = "Only a prescriber, a nurse educator or an on-call";
    EntryId observation = injected();
    EndDraft end = forms.end("2", "none_found", Set.of(), "");
    NoteDraft note = forms.note(Moment.CHECKED, "1");

    for (Reading<?> reading :
        List.of(
            world.room().start(Staff.AUDITOR, course, forms.start("12")),
            world.room().note(Staff.AUDITOR, course, observation, note),
            world.room().end(Staff.AUDITOR, course, observation, end),
            world.room().closeDay(Staff.AUDITOR))) {
      assertThat(reading.faults()).singleElement().asString().startsWith(only);
    }
  }
}
