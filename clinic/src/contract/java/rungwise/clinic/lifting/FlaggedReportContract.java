package rungwise.clinic.lifting;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.day.Need;
import rungwise.clinic.people.Account;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.ReportFlag;
import rungwise.clinic.standing.ReportFlag.Kind;
import rungwise.clinic.teaching.ReadinessDraft;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.ReportPart;
import rungwise.clinic.titration.SignForms;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.known.Tablet;
import rungwise.quantities.Reading;

/**
 * Injections that are kept as they were told and that a prescriber is to look at, over any store.
 * The sample protocol: 24 h between two, 3 in 168 h (US syringe label, section 17).
 */
public abstract class FlaggedReportContract {

  private static final String DAY = "2026-03-10";

  private TitrationWorld world;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /** 0.12 mL was watched in the clinic on 2 March, and is signed for home; it is 20 March now. */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.open();
    world.signProposed(course);
    world.pass(Duration.ofHours(2));
    world.report(course, ReportForm.at("2026-03-02", "10:30")).orThrow();
    world.makeReady(course);
    world.sign(course, SignForms.atHome(world.proposed(course))).orThrow();
    world.pass(Duration.ofDays(18));
  }

  private void tell(String day, String time) {
    tell(ReportForm.at(day, time));
  }

  private Reading<Long> tell(ReportForm form) {
    Reading<Long> read = world.told(course, form);
    read.orThrow();
    return read;
  }

  /** What does not follow from the record any more, and was never seen. */
  private List<Kind> struck() {
    return world.state(course).flagsToSee().stream()
        .filter(flag -> flag.struckBy().isPresent())
        .map(ReportFlag::kind)
        .toList();
  }

  private List<String> told() {
    return view().lifting().flags().stream()
        .flatMap(one -> one.flags().stream())
        .flatMap(flag -> flag.facts().stream())
        .toList();
  }

  private List<Kind> flags() {
    return world.state(course).flagsToSee().stream().map(ReportFlag::kind).toList();
  }

  private CourseView view() {
    return new CourseViews(world.room().time(), account -> "somebody").of(world.state(course));
  }

  private Reading<Long> see(Account actor) {
    return world.lifting().seeFlags(actor, course, world.file(course).basis(), "spoke with him");
  }

  @Test
  void an_injection_at_home_of_a_dose_that_was_signed_for_it_is_not_flagged() {
    assertThat(flags()).isEmpty();
    assertThat(tell(ReportForm.at(DAY, "20:00")).notices()).isEmpty();
    assertThat(flags()).isEmpty();
    assertThat(view().lifting().isEmpty()).isTrue();
  }

  @Test
  void an_injection_for_which_nobody_had_signed_a_dose_is_flagged() {
    course = world.open();
    world.pass(Duration.ofHours(1));

    Reading<Long> told = tell(ReportForm.at(DAY, "20:00").place("clinic"));

    assertThat(flags()).containsExactly(Kind.NOT_SIGNED);
    assertThat(told.notices()).anyMatch(notice -> notice.contains(Kind.NOT_SIGNED.words()));
  }

  @Test
  void an_order_that_had_ended_by_then_was_not_signed_for_it() {
    world.chooseBarrel(course, "u100-0.5").orThrow();
    world.pass(Duration.ofDays(1));

    tell("2026-03-20", "20:00");
    assertThat(flags()).containsExactly(Kind.NOT_SIGNED);

    tell("2026-03-19", "20:00");
    assertThat(flags()).containsExactly(Kind.NOT_SIGNED);
  }

  @Test
  void a_dose_for_the_clinic_only_that_was_injected_at_home_is_flagged() {
    CourseId other = world.open();
    world.signProposed(other);
    course = other;
    world.makeReady(other);
    world.pass(Duration.ofHours(12));

    tell("2026-03-20", "20:00");

    assertThat(flags()).containsExactly(Kind.CLINIC_ONLY);
  }

  @Test
  void an_injection_at_home_before_teaching_is_flagged_whenever_that_is_written_down() {
    CourseId other = world.open();
    world.signProposed(other);
    course = other;
    world.pass(Duration.ofHours(12));
    tell("2026-03-20", "20:00");
    assertThat(flags()).containsExactly(Kind.CLINIC_ONLY, Kind.NOT_READY);

    world.pass(Duration.ofDays(1));
    world.makeReady(other);
    assertThat(flags()).containsExactly(Kind.CLINIC_ONLY, Kind.NOT_READY);
  }

  @Test
  void less_than_24_hours_after_the_one_before_is_too_soon() {
    tell(DAY, "20:00");
    tell("2026-03-11", "20:00");
    assertThat(flags()).isEmpty();

    tell("2026-03-12", "19:59");
    assertThat(flags()).containsExactly(Kind.TOO_SOON);
  }

  @Test
  void the_third_within_24_hours_is_flagged() {
    tell(DAY, "20:00");
    tell("2026-03-11", "08:00");
    tell("2026-03-11", "19:59");

    assertThat(flags()).containsExactly(Kind.TOO_SOON, Kind.TOO_SOON, Kind.THIRD_IN_A_DAY);
  }

  @Test
  void the_fourth_within_168_hours_is_flagged() {
    tell(DAY, "20:00");
    tell("2026-03-12", "20:00");
    tell("2026-03-14", "20:00");
    tell("2026-03-17", "20:00");
    assertThat(flags()).isEmpty();

    tell("2026-03-19", "19:59");
    assertThat(flags()).containsExactly(Kind.TOO_MANY_IN_A_WEEK);
  }

  /** The sample's 72 hours: the clocks went forward in the night to 8 March. */
  @Test
  void a_tablet_within_the_clinics_hours_is_flagged_also_when_it_is_told_later() {
    tell(DAY, "20:00");
    tookTablet("2026-03-07", "19:00");
    assertThat(flags()).isEmpty();

    tookTablet("2026-03-07", "19:01");
    assertThat(flags()).containsExactly(Kind.TABLET);
  }

  private void tookTablet(String day, String time) {
    var answer =
        world
            .titration()
            .reports()
            .tookTablet(
                Staff.EDUCATOR,
                course,
                ReportForm.at(day, time)
                    .with(ReportPart.TABLET, Tablet.SILDENAFIL.name())
                    .with(ReportPart.TABLET_DATE, day)
                    .with(ReportPart.TABLET_TIME, time)
                    .draft());
    assertThat(answer.faults()).isEmpty();
  }

  @Test
  void a_draw_above_the_signed_dose_is_flagged_with_both_volumes() {
    tell(ReportForm.at(DAY, "20:00").mark("13"));

    assertThat(flags()).containsExactly(Kind.MORE_THAN_SIGNED);
    assertThat(told()).containsExactly("drawn: 0.13 mL", "signed: 0.12 mL");

    tell(ReportForm.at("2026-03-12", "20:00").mark("11"));
    assertThat(flags()).containsExactly(Kind.MORE_THAN_SIGNED);
  }

  @Test
  void a_draw_above_the_signed_dose_in_the_clinic_is_flagged_too() {
    CourseId other = world.open();
    world.signProposed(other);
    course = other;
    world.pass(Duration.ofHours(12));

    world.report(course, ReportForm.at("2026-03-20", "20:00").mark("20")).orThrow();

    assertThat(flags()).containsExactly(Kind.MORE_THAN_SIGNED);
  }

  @Test
  void a_flag_of_a_withdrawn_report_stays_until_a_prescriber_has_seen_it() {
    tell(ReportForm.at(DAY, "20:00").mark("30"));
    world
        .titration()
        .withdraw(Staff.EDUCATOR, course, world.lastReport(course), "the wrong man")
        .orThrow();

    assertThat(flags()).containsExactly(Kind.MORE_THAN_SIGNED);
    assertThat(struck()).containsExactly(Kind.MORE_THAN_SIGNED);
    assertThat(view().day().need()).isEqualTo(Need.FLAGGED);
    assertThat(told())
        .contains("drawn: 0.3 mL")
        .anyMatch(fact -> fact.contains("was withdrawn by") && fact.endsWith("the wrong man"));

    see(Staff.PRESCRIBER).orThrow();
    assertThat(flags()).isEmpty();
    assertThat(view().lifting().isEmpty()).isTrue();
  }

  @Test
  void a_flag_of_a_corrected_report_stays_until_a_prescriber_has_seen_it() {
    tell(ReportForm.at(DAY, "20:00").mark("30"));
    EntryId first = world.lastReport(course);
    tell(ReportForm.at(DAY, "20:00").correcting(first, "he read the line wrongly"));

    assertThat(struck()).containsExactly(Kind.MORE_THAN_SIGNED);
    assertThat(told())
        .anyMatch(fact -> fact.contains("was corrected by") && fact.endsWith("line wrongly"));

    see(Staff.PRESCRIBER).orThrow();
    assertThat(flags()).isEmpty();
  }

  @Test
  void a_flag_that_a_correction_leaves_is_told_once_and_as_it_stands() {
    tell(ReportForm.at(DAY, "20:00").mark("30"));
    EntryId first = world.lastReport(course);
    tell(ReportForm.at(DAY, "20:00").mark("20").correcting(first, "not so much"));

    assertThat(flags()).containsExactly(Kind.MORE_THAN_SIGNED);
    assertThat(struck()).isEmpty();
    assertThat(told()).contains("drawn: 0.2 mL").doesNotContain("drawn: 0.3 mL");
  }

  @Test
  void what_a_prescriber_had_seen_is_gone_with_its_report() {
    tell(ReportForm.at(DAY, "20:00").mark("30"));
    see(Staff.PRESCRIBER).orThrow();
    world
        .titration()
        .withdraw(Staff.EDUCATOR, course, world.lastReport(course), "the wrong man")
        .orThrow();

    assertThat(flags()).isEmpty();
  }

  @Test
  void teaching_written_down_later_for_a_day_before_takes_no_flag_away_unseen() {
    CourseId other = world.open();
    world.signProposed(other);
    course = other;
    world.pass(Duration.ofHours(12));
    tell("2026-03-20", "20:00");
    world.pass(Duration.ofDays(2));

    for (Readiness item : Readiness.values()) {
      ReadinessDraft today = world.readiness(item);
      world
          .teaching()
          .record(
              Staff.EDUCATOR,
              other,
              new ReadinessDraft(
                  today.item(),
                  "2026-03-20",
                  today.hospital(),
                  today.afterHoursNumber(),
                  today.transport(),
                  ""))
          .orThrow();
    }

    assertThat(struck()).containsExactly(Kind.NOT_READY);
    assertThat(flags()).containsExactlyInAnyOrder(Kind.CLINIC_ONLY, Kind.NOT_READY);
  }

  @Test
  void a_late_report_flags_the_one_after_it_and_a_correction_of_it_is_told_too() {
    tell(DAY, "20:00");
    tell(DAY, "10:00");
    EntryId late = world.lastReport(course);
    assertThat(world.state(course).flagsToSee())
        .singleElement()
        .satisfies(
            flag -> {
              assertThat(flag.kind()).isEqualTo(Kind.TOO_SOON);
              assertThat(flag.report().fact().injectedAt()).isEqualTo("2026-03-11T00:00:00Z");
            });

    tell(ReportForm.at("2026-03-09", "20:00").correcting(late, "the day before"));
    assertThat(struck()).containsExactly(Kind.TOO_SOON);
    assertThat(told()).anyMatch(fact -> fact.startsWith("What it rests on was changed by"));

    see(Staff.PRESCRIBER).orThrow();
    assertThat(flags()).isEmpty();
  }

  @Test
  void it_stays_on_today_and_on_the_course_until_a_prescriber_has_seen_it() {
    tell(DAY, "20:00");
    tell("2026-03-11", "08:00");

    assertThat(view().day().need()).isEqualTo(Need.FLAGGED);
    assertThat(view().lifting().flags())
        .singleElement()
        .satisfies(
            one ->
                assertThat(one.flags())
                    .singleElement()
                    .satisfies(flag -> assertThat(flag.sentence()).contains("too soon")));
    assertThat(see(Staff.EDUCATOR).faults()).isNotEmpty();
    assertThat(flags()).isNotEmpty();

    see(Staff.PRESCRIBER).orThrow();
    assertThat(flags()).isEmpty();
    assertThat(world.state(course).flags()).hasSize(1);
    assertThat(view().day().need()).isNotEqualTo(Need.FLAGGED);
    assertThat(world.last(course).reason()).contains("spoke with him");
    assertThat(see(Staff.PRESCRIBER).faults()).isNotEmpty();
  }

  @Test
  void nothing_is_marked_as_seen_that_came_after_the_page_was_opened() {
    tell(DAY, "20:00");
    tell("2026-03-11", "08:00");
    long shown = world.file(course).basis();
    tell("2026-03-11", "09:00");

    Reading<Long> read = world.lifting().seeFlags(Staff.PRESCRIBER, course, shown, "");

    assertThat(read.faults()).singleElement().asString().contains("nothing was marked");
    assertThat(flags()).hasSize(3);
  }

  @Test
  void what_was_seen_is_flagged_again_when_a_report_that_it_rests_on_is_corrected() {
    tell(DAY, "20:00");
    EntryId first = world.lastReport(course);
    tell("2026-03-11", "08:00");
    see(Staff.PRESCRIBER).orThrow();

    tell(ReportForm.at(DAY, "23:00").correcting(first, "later than he said"));

    assertThat(flags()).containsExactly(Kind.TOO_SOON);
  }

  @Test
  void what_was_watched_in_the_clinic_is_flagged_only_by_what_is_told_later() {
    CourseFile before = world.file(course);
    assertThat(before.reports()).hasSize(1);
    assertThat(flags()).isEmpty();

    tell(ReportForm.at("2026-03-01", "20:00"));

    assertThat(flags()).contains(Kind.NOT_SIGNED, Kind.NOT_READY, Kind.TOO_SOON);
  }
}
