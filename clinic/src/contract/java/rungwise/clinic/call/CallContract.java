package rungwise.clinic.call;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.call.CallDraft.What;
import rungwise.clinic.called.CallLog;
import rungwise.clinic.coded.HandedOnFor;
import rungwise.clinic.course.CourseFact.ReportUnfinished;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.day.OpenErections;
import rungwise.clinic.day.Urgency;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.sheet.CallView;
import rungwise.clinic.sheet.CallViews;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.urgent.Elapsed;
import rungwise.dosing.urgent.Start;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;

/** Calls about a long erection, over any store. New York is 5 hours behind UTC then. */
public abstract class CallContract {

  private static final long FIRST_DOSE = 120;

  private TitrationWorld world;
  private Calls calls;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /** A course whose first dose was signed; it is 4 March, 22:00 in New York. */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.open();
    world.signProposed(course);
    world.pass(Duration.ofHours(2 * 24 + 12));
    calls =
        new Calls(world.ports(), () -> List.of(Staff.PRESCRIBER, Staff.EDUCATOR, Staff.ON_CALL));
  }

  private static CallDraft draft(What what) {
    return CallDraft.of(what);
  }

  private static SaidTime today(String clock) {
    return new SaidTime(SaidTime.TODAY, clock);
  }

  private Reading<Long> write(CallDraft draft) {
    return calls.write(Staff.ON_CALL, course, draft);
  }

  private void began(String clock) {
    write(draft(What.BEGAN).at(today(clock))).orThrow();
  }

  private CourseState state() {
    return world.state(course);
  }

  private CallLog call() {
    return CallLog.of(world.file(course)).getLast();
  }

  private boolean isHeld() {
    CourseState state = state();
    boolean isStopped =
        state.mayInject().verdicts().stream()
            .anyMatch(one -> one.rule() == GuardRule.REPORT_UNFINISHED && one.isHardStop());
    assertThat(state.mayInject().isClear()).isEqualTo(false);
    assertThat(state.advice().decision() instanceof Decision.Repeat && isStopped).isFalse();
    return isStopped;
  }

  private List<Fault> faults(CallDraft draft) {
    return write(draft).placed();
  }

  @Test
  void what_is_said_stops_the_course_by_a_report_and_counts_from_the_earliest() {
    began("20:30");
    began("19:50");
    began("21:00");

    assertThat(world.file(course).everWritten(ReportUnfinished.class)).isNotEmpty();
    assertThat(call().elapsed(world.now()))
        .isInstanceOfSatisfying(
            Elapsed.Known.class,
            known -> assertThat(known.lasted().toString()).startsWith("2 h 10"));
    assertThat(isHeld()).isTrue();
    assertThat(OpenErections.of(state())).hasSize(1);
    assertThat(OpenErections.first(state()).orElseThrow().urgency(Optional.of(world.now())))
        .isEqualTo(Urgency.CALL_NOW);
  }

  @Test
  void who_cannot_say_since_when_is_an_emergency_until_that_is_struck_with_a_reason() {
    began("21:30");
    write(draft(What.NOT_KNOWN)).orThrow();
    assertThat(call().elapsed(world.now()).isEmergency()).isTrue();
    assertThat(OpenErections.first(state()).orElseThrow().urgency(Optional.of(world.now())))
        .isEqualTo(Urgency.EMERGENCY_DEPARTMENT);

    String unknown = call().words().getLast().entry().id().text();
    assertThat(faults(draft(What.STRIKE).picking(unknown, "", ""))).hasSize(1);
    write(draft(What.STRIKE).picking(unknown, "", "his wife saw when")).orThrow();

    assertThat(call().elapsed(world.now()).isEmergency()).isFalse();
    assertThat(call().timeline().starts())
        .anySatisfy(
            start ->
                assertThat(start)
                    .isInstanceOfSatisfying(
                        Start.Struck.class,
                        struck -> assertThat(struck.reason()).isEqualTo("his wife saw when")));
  }

  @Test
  void an_open_call_holds_although_the_report_is_complete_and_an_emergency_was_reviewed() {
    began("20:30");
    world
        .titration()
        .reports()
        .enter(Staff.EDUCATOR, course, ReportForm.at("2026-03-04", "20:30").exactly("45").draft());
    assertThat(isHeld()).isTrue();

    world
        .lifting()
        .reviewEmergency(
            Staff.PRESCRIBER, course, Optional.of(world.now()), "seen, and soft by then");
    assertThat(isHeld()).isTrue();
    assertThat(state().advice().decision().proposed()).isEmpty();
    assertThat(world.sign(course, world.instead(course, FIRST_DOSE)).found()).isEmpty();
  }

  @Test
  void soft_after_two_hours_ends_the_call_and_what_the_report_holds_stays_held() {
    began("19:50");
    write(draft(What.SOFT).at(today("21:55"))).orThrow();

    assertThat(call().isOpen()).isFalse();
    assertThat(isHeld()).isTrue();
  }

  /** 4 h: US syringe label, 5.1 and 17. */
  @Test
  void soft_after_four_hours_stops_the_course_until_a_prescriber_has_reviewed_it() {
    began("17:59");
    write(draft(What.SOFT).at(today("21:59"))).orThrow();
    world
        .titration()
        .reports()
        .enter(Staff.EDUCATOR, course, ReportForm.at("2026-03-04", "17:59").exactly("45").draft());

    assertThat(isHeld()).isTrue();
    world
        .lifting()
        .reviewEmergency(
            Staff.PRESCRIBER, course, Optional.of(world.now()), "seen, and soft by then")
        .orThrow();
    assertThat(CallLog.holding(world.file(course))).isEmpty();
  }

  @Test
  void a_start_that_was_struck_ends_it_as_an_emergency_until_a_prescriber_has_reviewed_it() {
    began("17:30");
    String wrong = call().words().getLast().entry().id().text();
    began("21:00");
    write(draft(What.STRIKE).picking(wrong, "", "he means when he ate")).orThrow();
    assertThat(call().elapsed(world.now()).isEmergency()).isFalse();

    write(draft(What.SOFT).at(today("21:45"))).orThrow();

    assertThat(CallLog.holding(world.file(course))).hasSize(1);
    review();
    assertThat(CallLog.holding(world.file(course))).isEmpty();
  }

  @Test
  void what_the_hospital_must_know_stands_first_and_not_known_counts() {
    world.answer(course, Condition.ANTICOAGULANT, Answer.YES);
    world.answer(course, Condition.UNCONTROLLED_PRESSURE, Answer.NOT_KNOWN);

    Function<AccountId, String> names = account -> "somebody";
    CourseView.Man man = new CourseViews(world.ports().time(), names).of(state()).man();
    List<CallView.Warning> warnings =
        new CallViews(world.ports().time(), names).of(state(), man).warnings();

    assertThat(warnings).extracting(CallView.Warning::isKnown).containsExactly(true, false);
    assertThat(warnings.getFirst().words()).isEqualTo(Condition.ANTICOAGULANT.words());
    assertThat(warnings.getLast().words())
        .isEqualTo("Not known: " + Condition.UNCONTROLLED_PRESSURE.words());
  }

  @Test
  void that_nobody_knew_is_over_once_somebody_knows() {
    write(draft(What.NOT_KNOWN)).orThrow();
    String unknown = call().words().getLast().entry().id().text();
    began("21:00");
    write(draft(What.STRIKE).picking(unknown, "", "his wife saw when")).orThrow();

    write(draft(What.SOFT).at(today("21:45"))).orThrow();

    assertThat(CallLog.holding(world.file(course))).isEmpty();
  }

  private void review() {
    world
        .lifting()
        .reviewEmergency(
            Staff.PRESCRIBER, course, Optional.of(world.now()), "seen, and soft by then")
        .orThrow();
  }

  @Test
  void who_is_handed_to_a_hospital_is_held_until_a_prescriber_has_reviewed_it() {
    began("21:00");
    assertThat(faults(draft(What.HANDED_TO)))
        .extracting(Fault::field)
        .containsExactly(CallDraft.PLACE, CallDraft.WHOM);
    write(draft(What.HANDED_TO).to("Sample Hospital", "the doctor on duty")).orThrow();

    assertThat(call().isOpen()).isFalse();
    assertThat(CallLog.holding(world.file(course))).hasSize(1);
    assertThat(isHeld()).isTrue();
    review();
    assertThat(CallLog.holding(world.file(course))).isEmpty();
  }

  @Test
  void refusing_hospital_keeps_it_open_in_somebody_elses_hands() {
    began("17:00");
    assertThat(faults(draft(What.HAND_ON)))
        .extracting(Fault::field)
        .containsExactly(CallDraft.PICKED, CallDraft.WHY);
    Account other = calls.others(Staff.ON_CALL).getFirst();
    write(
            draft(What.HAND_ON)
                .picking(other.id().text(), HandedOnFor.REFUSES_HOSPITAL.name(), "told him twice"))
        .orThrow();

    assertThat(call().isOpen()).isTrue();
    assertThat(isHeld()).isTrue();
  }

  @Test
  void it_is_opened_once_and_ends_by_nothing_but_its_two_ends() {
    for (What what : List.of(What.DONE, What.STRIKE, What.HAND_ON, What.SOFT, What.HANDED_TO)) {
      assertThat(write(draft(what)).found()).as("%s", what).isEmpty();
    }
    began("21:00");
    write(draft(What.FIRM)).orThrow();
    world.pass(Duration.ofDays(3));
    began("21:00");

    assertThat(CallLog.of(world.file(course))).hasSize(1);
    assertThat(call().isOpen()).isTrue();
    assertThat(call().words())
        .extracting(Written::fact)
        .extracting(fact -> fact.word().getClass().getSimpleName())
        .containsExactly("Began", "Firm", "Began");
  }

  @Test
  void what_cannot_be_true_is_asked_back_and_changes_nothing() {
    began("20:00");
    write(draft(What.FIRM).at(today("21:30"))).orThrow();

    assertThat(faults(draft(What.SOFT).at(today("19:59")))).hasSize(1);
    assertThat(faults(draft(What.SOFT).at(today("21:30")))).hasSize(1);
    assertThat(faults(draft(What.SOFT).at(today("23:30")))).hasSize(1);
    assertThat(faults(draft(What.BEGAN).at(today("7:50")))).hasSize(1);
    assertThat(calls.write(Staff.AUDITOR, course, draft(What.SOFT)).found()).isEmpty();
    assertThat(call().isOpen()).isTrue();
  }

  @Test
  void an_injection_whose_end_nobody_has_said_is_the_start_until_an_earlier_one_is_said() {
    world
        .titration()
        .reports()
        .enter(
            Staff.EDUCATOR, course, ReportForm.at("2026-03-04", "20:00").soft("not_known").draft());
    write(draft(What.FIRM)).orThrow();

    assertThat(call().elapsed(world.now()))
        .isEqualTo(new Elapsed.Known(TimeSpan.between(call().began().orElseThrow(), world.now())));
    assertThat(call().timeline().starts()).hasSize(1);
  }

  @Test
  void what_is_reported_after_a_call_takes_no_injection_out_of_it() {
    var reports = world.titration().reports();
    reports.enter(
        Staff.EDUCATOR, course, ReportForm.at("2026-03-04", "17:00").soft("not_known").draft());
    began("21:00");
    write(draft(What.SOFT).at(today("21:45"))).orThrow();
    assertThat(CallLog.holding(world.file(course))).hasSize(1);

    world.pass(Duration.ofDays(2));
    reports.enter(
        Staff.EDUCATOR, course, ReportForm.at("2026-03-06", "20:00").exactly("45").draft());

    assertThat(world.file(course).reports()).hasSize(2);
    assertThat(CallLog.holding(world.file(course))).hasSize(1);
  }
}
