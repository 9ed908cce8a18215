package rungwise.clinic.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.InMemoryRecord;
import rungwise.clinic.people.Role;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.room.VisitForms;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.sheet.OpenErectionView;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.supply.VialForm;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;

/** Who needs somebody, how urgently and since when. It is ten in the morning in the clinic. */
final class DayLineTest {

  private TitrationWorld world;
  private CourseId course;

  @BeforeEach
  void begin() {
    world = new TitrationWorld(InMemoryRecord.ports(), new LabelReader());
    course = world.open();
  }

  private CourseView view() {
    return new CourseViews(world.room().time(), account -> "somebody").of(world.state(course));
  }

  private Need need() {
    return view().day().need();
  }

  private OpenErectionView open() {
    return view().open().orElseThrow();
  }

  /** He told at 10:54 that he was injected at 10:00 and is still firm. */
  private void firmAfter54Minutes() {
    world.signProposed(course);
    world.pass(Duration.ofMinutes(54));
    world.told(course, ReportForm.at("2026-03-02", "10:00").atLeast("54")).orThrow();
  }

  /** The example of the rule: injected at 10:55, the 4 hours are at 14:55. */
  @Test
  void nobody_is_told_of_4_hours_before_they_are_over() {
    world.setClock(TitrationWorld.START.plus(Duration.ofMinutes(109)));
    world.signProposed(course);
    world.told(course, ReportForm.at("2026-03-02", "10:55").atLeast("54")).orThrow();

    assertThat(need()).isEqualTo(Need.FIRM);
    assertThat(open().fourHours())
        .isEqualTo("Not known how it ended; 4 hours are at 14:55, in 3 h 5 min.");
    assertThat(view().because()).isEqualTo(open().fourHours());
    assertThat(view().blocks())
        .filteredOn(block -> block.rule() == GuardRule.EMERGENCY_OPEN)
        .singleElement()
        .extracting(CourseView.VerdictText::sentence)
        .isEqualTo(open().fourHours());

    world.setClock(world.now().plus(Duration.ofMinutes(186)));
    assertThat(view().because()).contains("4 hours or more");
    assertThat(open().fourHours()).contains("4 hours were at 14:55");
  }

  @Test
  void the_words_follow_the_time_since_the_injection() {
    firmAfter54Minutes();

    assertThat(open().call()).isEqualTo("Call him at 12:00, 2 hours after the injection.");
    assertThat(open().isLoud()).isFalse();
    world.setClock(TitrationWorld.START.plus(Duration.ofHours(2)));
    assertThat(open().call()).startsWith("Call him now.").contains("by 14:00");
    assertThat(need()).isEqualTo(Need.FIRM);
    assertThat(open().isLoud()).isTrue();
    world.setClock(TitrationWorld.START.plus(Duration.ofHours(4)).minusMillis(200));
    assertThat(need()).isEqualTo(Need.FIRM);
    world.setClock(TitrationWorld.START.plus(Duration.ofHours(4)));
    assertThat(need()).isEqualTo(Need.EMERGENCY);
    assertThat(open().headline()).contains("emergency department now");
    world.setClock(TitrationWorld.START.plus(Duration.ofHours(27)));
    assertThat(need()).isEqualTo(Need.EMERGENCY);
    assertThat(open().call()).contains("emergency department at once");
  }

  /** Of two columns with one stop the reader would look for the difference. */
  @Test
  void what_stops_him_is_said_once() {
    firmAfter54Minutes();
    CourseView view = view();

    assertThat(view.blocks()).isNotEmpty().containsAnyElementsOf(view.verdicts());
    assertThat(view.verdictsBesideBlocks()).doesNotContainAnyElementsOf(view.blocks());
    assertThat(view.verdicts())
        .containsAll(view.verdictsBesideBlocks())
        .allMatch(one -> view.blocks().contains(one) || view.verdictsBesideBlocks().contains(one));
  }

  @Test
  void a_clock_behind_the_record_makes_it_no_less_urgent() {
    firmAfter54Minutes();

    world.setClock(TitrationWorld.START.minus(Duration.ofDays(1)));

    assertThat(need()).isEqualTo(Need.EMERGENCY);
  }

  @Test
  void four_hours_said_are_an_emergency_whatever_the_clock_says() {
    world.signProposed(course);
    world.pass(Duration.ofHours(5));
    world.told(course, ReportForm.at("2026-03-02", "10:00").atLeast("240")).orThrow();

    assertThat(need()).isEqualTo(Need.EMERGENCY);
    assertThat(open().way()).isEqualTo(new OpenErectionView.Way.Correct(lastEntry()));
  }

  private String lastEntry() {
    return world.lastEntry(course).text();
  }

  @Test
  void an_end_that_is_known_leaves_the_review() {
    firmAfter54Minutes();
    EntryId report = world.lastEntry(course);
    world.pass(Duration.ofHours(5));
    world
        .report(
            course,
            ReportForm.at("2026-03-02", "10:00").exactly("250").correcting(report, "he called"))
        .orThrow();

    assertThat(need()).isEqualTo(Need.EMERGENCY_OVER);
    assertThat(view().open()).isEmpty();
    assertThat(view().day().since()).isEqualTo(TitrationWorld.START.minusMillis(123));
    assertThat(view().day().now()).isEqualTo(new MayInject.Stopped(MayInject.Why.NOT_REVIEWED));
  }

  @Test
  void what_the_hospital_must_know_and_his_plan_stand_with_it() {
    world.makeReady(course);
    world.answer(course, Condition.ANTICOAGULANT, Answer.YES);
    world.answer(course, Condition.MAO_INHIBITOR, Answer.NOT_KNOWN);
    firmAfter54MinutesAtLeast();

    assertThat(open().about().plan())
        .containsExactly(
            "Hospital: North Hospital.", "After hours: 555 0100.", "How he gets there: a taxi.");
    assertThat(open().about().tell())
        .get()
        .asString()
        .startsWith("Tell the hospital first: an anticoagulant.")
        .contains("Ask him: an MAO inhibitor");
    assertThat(open().withoutAbout(/* isOnCall= */ true).about().tell()).isEmpty();
    assertThat(open().withoutAbout(/* isOnCall= */ true).about().plan()).isEmpty();
  }

  private void firmAfter54MinutesAtLeast() {
    world.pass(Duration.ofMinutes(54));
    world.told(course, ReportForm.at("2026-03-02", "10:00").atLeast("54")).orThrow();
  }

  @Test
  void without_a_plan_it_says_so() {
    firmAfter54Minutes();

    assertThat(open().about().plan())
        .singleElement()
        .asString()
        .startsWith("No emergency plan is on record");
  }

  @Test
  void whoever_leaves_while_firm_is_called_at_once() {
    var forms = new VisitForms(world);
    world.signProposed(course);
    world.room().start(Staff.EDUCATOR, course, forms.start("12")).orThrow();
    EntryId observation = world.lastEntry(course);
    assertThat(need()).isEqualTo(Need.OBSERVATION);
    world.pass(Duration.ofMinutes(50));
    world.room().end(Staff.EDUCATOR, course, observation, forms.left("3")).orThrow();

    assertThat(need()).isEqualTo(Need.FIRM);
    assertThat(open().call()).startsWith("Call him now.");
  }

  @Test
  void four_hours_under_observation_are_an_emergency() {
    var forms = new VisitForms(world);
    world.signProposed(course);
    world.room().start(Staff.EDUCATOR, course, forms.start("12")).orThrow();

    world.pass(Duration.ofHours(4));

    assertThat(need()).isEqualTo(Need.EMERGENCY);
    assertThat(open().way()).isEqualTo(new OpenErectionView.Way.EndObservation());
    assertThat(open().call()).contains("treat him now");
  }

  @Test
  void a_signed_dose_is_suspended_whatever_forbids_it() {
    world.signProposed(course);
    assertThat(need()).isEqualTo(Need.TEACHING);

    world.receive(course, VialForm.of(SamplePreparations.ALPROSTADIL_40));

    assertThat(need()).isEqualTo(Need.SUSPENDED);
    assertThat(view().signed().orElseThrow().isSuspended()).isTrue();
    assertThat(view().now().sentence()).isEqualTo("Stopped by a safety check.");
  }

  @Test
  void a_vial_past_its_date_suspends_the_signed_dose() {
    world.signProposed(course);
    world.receive(course, VialForm.of(SamplePreparations.ALPROSTADIL_20).beyondUse("2026-03-05"));
    assertThat(need()).isEqualTo(Need.TEACHING);
    world.pass(Duration.ofDays(4));
    assertThat(need()).isEqualTo(Need.SUSPENDED);
  }

  /** A dose for the clinic is the educator's next task; once all is taught nobody waits. */
  @Test
  void what_home_use_lacks_is_to_be_taught() {
    world.signProposed(course);
    assertThat(need()).isEqualTo(Need.TEACHING);

    world.makeReady(course);
    assertThat(need()).isEqualTo(Need.NOTHING);
  }

  @Test
  void questions_that_nobody_asked_wait_for_the_educator_and_not_for_a_prescriber() {
    course = world.openUnprepared("vasculogenic", "u100-1");

    assertThat(need()).isEqualTo(Need.SCREENING);
    assertThat(need().isTaskOf(Set.of(Role.NURSE_EDUCATOR))).isTrue();
    assertThat(need().isTaskOf(Set.of(Role.PRESCRIBER, Role.ON_CALL_CLINICIAN))).isFalse();
  }

  /** What worries most is on everybody's own list. */
  @ParameterizedTest
  @EnumSource(Role.class)
  void no_role_has_an_emergency_among_what_is_others(Role role) {
    for (Need need :
        List.of(
            Need.EMERGENCY,
            Need.FIRM,
            Need.END_NOT_KNOWN,
            Need.RECORD_NOT_SOUND,
            Need.EMERGENCY_OVER)) {
      assertThat(need.isTaskOf(Set.of(role))).isTrue();
    }
  }

  /** Each other need is somebody's: a list of nobody's would be read by nobody. */
  @ParameterizedTest
  @EnumSource(
      value = Need.class,
      mode = EnumSource.Mode.EXCLUDE,
      names = {"NOTHING", "ENDED"})
  void every_need_is_the_task_of_who_treats(Need need) {
    assertThat(need.isTaskOf(Set.of(Role.PRESCRIBER, Role.NURSE_EDUCATOR))).isTrue();
  }

  /** An examination is as old as the day on which it was due, whatever was written since. */
  @Test
  void an_examination_waits_since_the_day_on_which_it_was_due() {
    world.makeReady(course);
    world.signProposed(course);
    world.pass(Duration.ofDays(400));

    Examination next = Examination.of(world.state(course), world.room().time());
    assertThat(Examination.dueSince(world.state(course), world.room().time()))
        .contains(world.room().time().startOf(next.due()));
  }

  private DayLine lineDue() {
    CourseState state = world.state(course);
    return DayLine.of(state, state.advice(), state.mayInject(), Optional.of(TitrationWorld.START));
  }

  /** Who needs something else has that for his need, and the examination stands on his page. */
  @Test
  void an_examination_is_a_need_where_there_is_no_other() {
    assertThat(lineDue().need()).isEqualTo(Need.SIGNATURE);
    world.signProposed(course);
    world.makeReady(course);

    assertThat(need()).isEqualTo(Need.NOTHING);
    assertThat(lineDue().need()).isEqualTo(Need.EXAMINATION);
    assertThat(lineDue().since()).isEqualTo(TitrationWorld.START);
  }
}
