package rungwise.clinic.room;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.Moment;
import rungwise.clinic.people.Account;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.sheet.OpenErectionView;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.SignForms;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.SoftAfter;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;

/** Who is under observation, who left, the second dose and the end of the day, over any store. */
public abstract class BoardContract {

  private static final Instant TEN = Instant.parse("2026-03-02T15:00:00Z");

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

  private EntryId injected(CourseId who, String mark) {
    world.room().start(Staff.EDUCATOR, who, forms.start(mark)).orThrow();
    return world.lastEntry(who);
  }

  private void end(EntryId observation, String grade) {
    world
        .room()
        .end(Staff.EDUCATOR, course, observation, forms.end(grade, "none_found", Set.of(), ""))
        .orThrow();
  }

  private Optional<OpenErectionView> notOver() {
    ClinicTime time = world.room().time();
    return new CourseViews(time, account -> "somebody").of(world.state(course)).open();
  }

  @Test
  void whoever_was_injected_first_stands_on_top() {
    CourseId second = world.open();
    world.signProposed(second);
    injected(second, "12");
    world.pass(Duration.ofMinutes(5));
    injected(course, "12");
    CourseId third = world.open();
    world.room().start(Staff.EDUCATOR, third, forms.alreadyGiven("12")).orThrow();

    assertThat(world.room().board())
        .extracting(Observed::course)
        .startsWith(second)
        .containsExactlyInAnyOrder(second, course, third);
  }

  @Test
  void a_man_is_looked_at_a_quarter_of_an_hour_after_he_was_seen_last() {
    EntryId observation = injected(course, "12");
    world.setClock(TEN.plus(Duration.ofMinutes(15)).minusMillis(1));
    assertThat(seen().nextCheck()).isEqualTo(TEN.plus(Duration.ofMinutes(15)));
    assertThat(seen().isCheckDue()).isFalse();
    world.pass(Duration.ofMillis(1));
    assertThat(seen().isCheckDue()).isTrue();

    world.room().note(Staff.EDUCATOR, course, observation, forms.note(Moment.CHECKED, "1"));

    assertThat(seen().nextCheck()).isEqualTo(TEN.plus(Duration.ofMinutes(30)));
    assertThat(seen().isCheckDue()).isFalse();
  }

  private Observed seen() {
    return world.room().board().getFirst();
  }

  @Test
  void two_hours_are_long_and_four_are_an_emergency() {
    injected(course, "12");

    world.setClock(TEN.plus(Duration.ofHours(2)).minusMillis(1));
    assertThat(seen()).matches(one -> !one.isLong() && !one.isEmergency());
    world.setClock(TEN.plus(Duration.ofHours(4)).minusMillis(1));
    assertThat(seen()).matches(one -> one.isLong() && !one.isEmergency());
    world.setClock(TEN.plus(Duration.ofHours(4)));
    assertThat(seen()).matches(one -> one.isLong() && one.isEmergency());
  }

  @Test
  void whoever_left_before_he_was_soft_is_called_and_gets_nothing_until_it_is_known() {
    EntryId observation = injected(course, "12");
    world.pass(Duration.ofMinutes(50));

    Reading<Long> reading = world.room().end(Staff.EDUCATOR, course, observation, forms.left("3"));

    assertThat(reading.notices()).singleElement().asString().startsWith("He left before he was");
    InjectionReported report = world.file(course).reports().getFirst().fact();
    assertThat(report.soft()).isEqualTo(new SoftAfter.AtLeast(TimeSpan.ofMinutes(50)));
    assertThat(world.file(course).notesOf(observation))
        .extracting(written -> written.fact().moment())
        .containsExactly(Moment.CHECKED);
    assertThat(notOver()).get().extracting(OpenErectionView::call).asString().startsWith("Call");
    world.pass(Duration.ofDays(2));
    assertThat(world.blocks(course)).contains(GuardRule.EMERGENCY_OPEN);

    ReportForm known = ReportForm.at("2026-03-02", "10:00").grade("3").exactly("58");
    world.report(course, known.correcting(world.lastEntry(course), "he called")).orThrow();

    assertThat(notOver()).isEmpty();
    assertThat(world.blocks(course)).isEmpty();
    assertThat(world.room().board()).isEmpty();
  }

  private void leavesFirm() {
    EntryId observation = injected(course, "12");
    world.pass(Duration.ofMinutes(50));
    world.room().end(Staff.EDUCATOR, course, observation, forms.left("3")).orThrow();
  }

  private HandOverDraft to(Account whom, String tries, String words) {
    ClinicTime time = world.room().time();
    return new HandOverDraft(
        whom.id().text(),
        tries,
        time.dateText(world.now()),
        time.timeText(world.now()),
        ClinicTime.Occurrence.NOT_SAID,
        words);
  }

  @Test
  void whoever_left_while_firm_keeps_the_day_open_until_its_end_is_known() {
    leavesFirm();

    assertThat(world.room().handOver().left()).hasSize(1);
    assertThat(world.room().closeDay(Staff.EDUCATOR).faults())
        .singleElement()
        .asString()
        .contains("left while it was firm")
        .contains("Man 1");

    world.pass(Duration.ofMinutes(10));
    ReportForm known = ReportForm.at("2026-03-02", "10:00").grade("3").exactly("58");
    world.report(course, known.correcting(world.lastEntry(course), "he called")).orThrow();
    assertThat(world.room().handOver().left()).isEmpty();
    assertThat(world.room().closeDay(Staff.EDUCATOR).faults()).isEmpty();
  }

  @Test
  void whoever_left_while_firm_is_handed_by_name_with_what_was_tried() {
    leavesFirm();
    HandOver handOver = world.room().handOver();
    assertThat(handOver.onCall(Staff.EDUCATOR)).containsExactly(Staff.PRESCRIBER, Staff.ON_CALL);

    assertThat(handOver.handOver(Staff.EDUCATOR, course, to(Staff.AUDITOR, "0", "")).faults())
        .hasSize(3);
    assertThat(handOver.handOver(Staff.ON_CALL, course, to(Staff.ON_CALL, "1", "x")).faults())
        .singleElement()
        .asString()
        .contains("by name");
    assertThat(handOver.handOver(Staff.AUDITOR, course, to(Staff.ON_CALL, "1", "x")).faults())
        .hasSize(1);
    handOver
        .handOver(Staff.EDUCATOR, course, to(Staff.ON_CALL, "2", "his own number, no answer"))
        .orThrow();

    assertThat(handOver.left()).isEmpty();
    assertThat(notOver().orElseThrow().handed())
        .contains(
            "Handed to somebody at 10:50 after 2 tries, the last at 10:50:"
                + " his own number, no answer.");
    assertThat(world.blocks(course)).contains(GuardRule.EMERGENCY_OPEN);
    assertThat(world.room().closeDay(Staff.EDUCATOR).faults()).isEmpty();
    assertThat(handOver.handOver(Staff.EDUCATOR, course, to(Staff.ON_CALL, "2", "x")).faults())
        .hasSize(1);
  }

  @Test
  void a_later_word_that_it_is_still_firm_does_not_take_the_hand_over_back() {
    leavesFirm();
    HandOver handOver = world.room().handOver();
    handOver.handOver(Staff.EDUCATOR, course, to(Staff.ON_CALL, "1", "no answer")).orThrow();
    world.pass(Duration.ofMinutes(60));
    ReportForm later = ReportForm.at("2026-03-02", "10:00").grade("3").atLeast("100");
    world.report(course, later.correcting(world.lastReport(course), "he called")).orThrow();

    assertThat(handOver.left()).isEmpty();
    assertThat(notOver().orElseThrow().handed()).isPresent();
  }

  /** The first dose was over in ten minutes; what is proposed then is signed. */
  private void firstDose(String grade) {
    EntryId first = injected(course, "12");
    world.pass(Duration.ofMinutes(10));
    end(first, grade);
    world.signProposed(course);
  }

  @Test
  void a_second_dose_may_follow_up_to_the_minutes_of_the_rule_and_not_a_minute_later() {
    firstDose("0");

    world.setClock(TEN.plus(Duration.ofMinutes(61)));
    assertThat(world.room().start(Staff.EDUCATOR, course, forms.start("25")).faults())
        .containsExactly("Not now: The last injection was too recent.");
    world.setClock(TEN.plus(Duration.ofMinutes(60)));
    assertThat(world.room().start(Staff.EDUCATOR, course, forms.start("25")).faults()).isEmpty();
  }

  @Test
  void no_second_dose_follows_a_useful_response() {
    firstDose("3");

    world.setClock(TEN.plus(Duration.ofMinutes(30)));

    assertThat(world.blocks(course)).containsExactly(GuardRule.SPACING);
  }

  @Test
  void a_third_dose_never_follows_within_24_hours() {
    firstDose("0");
    world.setClock(TEN.plus(Duration.ofMinutes(20)));
    EntryId second = injected(course, "25");
    world.pass(Duration.ofMinutes(10));
    end(second, "0");
    world.signProposed(course);

    world.setClock(TEN.plus(Duration.ofHours(24)).minusMillis(1));
    assertThat(world.blocks(course))
        .containsExactlyInAnyOrder(GuardRule.THIRD_IN_24_HOURS, GuardRule.SPACING);
    assertThat(world.room().start(Staff.EDUCATOR, course, forms.start("50")).faults())
        .anyMatch(fault -> fault.contains("never a third"));

    world.setClock(TEN.plus(Duration.ofHours(24)));
    assertThat(world.blocks(course)).containsExactly(GuardRule.SPACING);
  }

  @Test
  void what_two_doses_did_together_is_not_signed_for_home_as_one() {
    world.makeReady(course);
    firstDose("0");
    world.setClock(TEN.plus(Duration.ofMinutes(20)));
    EntryId second = injected(course, "25");
    world.pass(Duration.ofMinutes(40));
    end(second, "3");

    assertThat(world.sign(course, SignForms.atHome(world.proposed(course))).faults())
        .singleElement()
        .asString()
        .startsWith("On hold: The last response followed two doses in one visit");
  }

  @Test
  void the_day_is_closed_once_and_only_when_nobody_is_left() {
    EntryId observation = injected(course, "12");
    assertThat(world.room().closeDay(Staff.EDUCATOR).faults())
        .containsExactly("The day cannot be closed: under observation still: Man 1.");
    assertThat(world.room().lastClosed()).isEmpty();
    world.pass(Duration.ofMinutes(30));
    end(observation, "2");

    assertThat(world.room().closeDay(Staff.EDUCATOR).orThrow()).isEqualTo(LocalDate.of(2026, 3, 2));

    assertThat(world.room().lastClosed()).contains(LocalDate.of(2026, 3, 2));
    assertThat(world.room().closeDay(Staff.PRESCRIBER).faults())
        .containsExactly("The day is closed already.");
    // Half past eleven at night in New York is the same day there, and the next one in UTC.
    world.setClock(Instant.parse("2026-03-03T04:30:00Z"));
    assertThat(world.room().closeDay(Staff.EDUCATOR).faults()).hasSize(1);
    world.setClock(Instant.parse("2026-03-03T05:00:00Z"));
    assertThat(world.room().closeDay(Staff.ON_CALL).orThrow()).isEqualTo(LocalDate.of(2026, 3, 3));
  }
}
