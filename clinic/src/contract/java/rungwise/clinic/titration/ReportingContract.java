package rungwise.clinic.titration;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.InjectionDetails;
import rungwise.clinic.people.Account;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.start.CourseDraft;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** Reports, their corrections and withdrawals, over any store. */
public abstract class ReportingContract {

  private static final String CLINICAL_ONLY = "Only a prescriber, a nurse educator or an on-call";
  private static final String CORRECTED_MEANWHILE = "The report was corrected meanwhile";

  private TitrationWorld world;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /**
   * A course whose first dose of 0.12 mL was signed on 2 March at 10:00; now it is 2 days later.
   */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.open();
    world.signProposed(course);
    world.pass(Duration.ofDays(2));
  }

  private static ReportForm good() {
    return ReportForm.at("2026-03-02", "21:30");
  }

  private List<InjectionReported> reports() {
    return world.file(course).reports().stream().map(CourseFile.Written::fact).toList();
  }

  private void assertRefused(Reading<Long> reading, String words) {
    assertThat(reading.faults()).singleElement().asString().contains(words);
  }

  @Test
  void a_report_keeps_when_what_was_drawn_what_was_ordered_and_how_it_went() {
    ReportForm form =
        good().mark("10").grade("2").between("20", "45").causes("one_found").vialNotKnown();

    world.told(course, form).orThrow();

    assertThat(reports())
        .containsExactly(
            new InjectionReported(
                Instant.parse("2026-03-03T02:30:00Z"),
                new PreparationId("alprostadil-20"),
                "u100-1",
                Volume.ofMicrolitres(100),
                Optional.of(Volume.ofMicrolitres(120)),
                Grade.FIRM_NOT_USABLE,
                new SoftAfter.Between(TimeSpan.ofMinutes(20), TimeSpan.ofMinutes(45)),
                SimpleCauses.ONE_FOUND,
                Place.HOME,
                Optional.empty(),
                InjectionDetails.NONE));
    assertThat(world.last(course).recordedBy()).isEqualTo(Staff.EDUCATOR.id());
    assertThat(world.last(course).recordedAt()).isEqualTo(world.now());
  }

  @Test
  void each_way_of_knowing_the_duration_is_read() {
    world.report(course, good().exactly("40.5")).orThrow();
    world.report(course, ReportForm.at("2026-03-02", "22:30").atLeast("90")).orThrow();
    world.report(course, ReportForm.at("2026-03-02", "23:30").between("0", "15")).orThrow();
    world.report(course, ReportForm.at("2026-03-02", "23:45").soft("not_known")).orThrow();

    assertThat(reports())
        .extracting(InjectionReported::soft)
        .containsExactly(
            new SoftAfter.Exactly(new TimeSpan(2_430_000)),
            new SoftAfter.AtLeast(TimeSpan.ofMinutes(90)),
            new SoftAfter.Between(TimeSpan.ofMinutes(0), TimeSpan.ofMinutes(15)),
            new SoftAfter.NotKnown());
  }

  @Test
  void every_fault_of_a_report_is_told_at_once_and_nothing_is_written() {
    long before = world.file(course).basis();
    ReportForm form = ReportForm.at("2026-02-30", "21:30").mark("0").grade("5").soft("").causes("");

    Reading<Long> reading = world.report(course, form);

    assertThat(reading.faults())
        .hasSize(5)
        .anyMatch(fault -> fault.contains("2026-02-30"))
        .anyMatch(fault -> fault.contains("\"0\" is not"))
        .anyMatch(fault -> fault.startsWith("Choose how firm"))
        .anyMatch(fault -> fault.startsWith("Choose when it was soft"))
        .anyMatch(fault -> fault.startsWith("Choose whether anything went wrong"));
    assertThat(world.file(course).basis()).isEqualTo(before);
  }

  @Test
  void a_report_of_a_man_who_was_not_identified_is_refused_with_all_other_faults() {
    Reading<Long> unknown = world.report(course, good().grade("5").with(ReportPart.IDENTIFIED, ""));
    Reading<Long> known = world.report(course, good());

    assertThat(unknown.faults())
        .hasSize(2)
        .first()
        .asString()
        .contains("his birth date and his record number");
    assertThat(known.faults()).isEmpty();
  }

  @Test
  void a_report_that_says_in_the_clinic_is_kept_and_does_not_open_home() {
    CourseId other = world.open();
    world.signProposed(other);
    ReportForm form = good().place("clinic");

    Reading<Long> read = world.told(other, form);

    assertThat(read.notices()).anyMatch(notice -> notice.startsWith("Kept as told of the clinic"));
    assertThat(world.file(other).reports().getLast().fact().place()).isEqualTo(Place.CLINIC);
    assertThat(mustComeFirstInTheClinic(other)).isTrue();
    world
        .told(other, form.exactly("25").correcting(world.lastEntry(other), "asked again"))
        .orThrow();
    assertThat(mustComeFirstInTheClinic(other)).isTrue();
  }

  private boolean mustComeFirstInTheClinic(CourseId id) {
    return world.state(id).advice().homeVerdicts().stream()
        .anyMatch(verdict -> verdict.rule() == GuardRule.FIRST_IN_CLINIC);
  }

  @Test
  void a_correction_asks_nobody_for_his_identifiers() {
    world.report(course, good()).orThrow();
    ReportForm form = good().grade("2").correcting(world.lastEntry(course), "a slip");

    assertThat(world.report(course, form.with(ReportPart.IDENTIFIED, "")).faults()).isEmpty();
  }

  @Test
  void another_man_of_the_same_name_is_a_namesake_and_he_himself_is_none() {
    CourseId other =
        world
            .starting()
            .open(
                Staff.EDUCATOR,
                new CourseDraft(
                    world.file(course).patient().fullName(),
                    "1975-05-05",
                    "MR-99",
                    "vasculogenic",
                    "alprostadil-20",
                    "u100-1",
                    world.form("x", "y", "vasculogenic", "u100-1").protocol(),
                    /* namesakeConfirmed= */ false))
            .orThrow();

    assertThat(world.titration().namesakes(world.file(course)))
        .extracting(CourseFile::id)
        .containsExactly(other);
  }

  @Test
  void a_line_beyond_the_last_one_of_the_syringe_is_asked_again() {
    assertRefused(world.report(course, good().mark("101")), "does not reach to 101");
    assertThat(world.report(course, good().mark("100")).faults()).isEmpty();
  }

  @Test
  void an_injection_that_is_still_to_come_is_refused() {
    assertRefused(world.report(course, ReportForm.at("2026-03-04", "10:01")), "is still to come");
    assertThat(
            world.report(course, ReportForm.at("2026-03-04", "10:00").soft("not_known")).faults())
        .isEmpty();
  }

  @Test
  void nothing_lasts_longer_than_it_is_ago() {
    ReportForm anHourAgo = ReportForm.at("2026-03-04", "09:00");

    assertRefused(world.report(course, anHourAgo.exactly("61")), "cannot have lasted 1 h 1 min");
    assertRefused(world.report(course, anHourAgo.atLeast("61")), "cannot have lasted 1 h 1 min");
    assertRefused(
        world.report(course, anHourAgo.between("61", "90")), "cannot have lasted 1 h 1 min");
    assertThat(world.report(course, anHourAgo.atLeast("60")).faults()).isEmpty();
  }

  @Test
  void a_span_whose_end_is_not_after_its_begin_is_refused() {
    assertRefused(world.report(course, good().between("45", "45")), "must be the later one");
  }

  @Test
  void the_same_injection_is_not_entered_twice() {
    world.report(course, good()).orThrow();

    assertRefused(world.report(course, good().mark("10")), "already on record");

    assertThat(reports()).hasSize(1);
  }

  @Test
  void a_corrected_report_stays_on_record_and_no_longer_counts() {
    world.report(course, good().exactly("40")).orThrow();
    EntryId first = world.lastEntry(course);

    world.report(course, good().exactly("140").correcting(first, " he looked it up ")).orThrow();

    assertThat(reports())
        .extracting(InjectionReported::soft)
        .containsExactly(new SoftAfter.Exactly(TimeSpan.ofMinutes(140)));
    assertThat(world.file(course).entries()).anyMatch(entry -> entry.id().equals(first));
    assertThat(world.last(course).corrects()).contains(first);
    assertThat(world.last(course).reason()).contains("he looked it up");
  }

  @Test
  void a_reason_longer_than_1000_characters_is_refused_and_nothing_is_appended() {
    world.report(course, good()).orThrow();
    EntryId first = world.lastEntry(course);
    long before = world.file(course).basis();

    for (int length : new int[] {1001, 20_000}) {
      assertThat(world.report(course, good().correcting(first, "x".repeat(length))).faults())
          .containsExactly("Write at most 1000 characters: this has " + length + ".");
    }
    assertThat(world.file(course).basis()).isEqualTo(before);
    assertThat(world.report(course, good().correcting(first, "x".repeat(1000))).faults()).isEmpty();
  }

  @Test
  void a_correction_needs_a_reason() {
    world.report(course, good()).orThrow();

    Reading<Long> reading = world.report(course, good().correcting(world.lastEntry(course), "  "));

    assertRefused(reading, "Say why the report is corrected");
  }

  @Test
  void a_report_is_corrected_only_once_then_its_correction_is() {
    world.report(course, good()).orThrow();
    EntryId first = world.lastEntry(course);
    world.report(course, good().exactly("50").correcting(first, "once")).orThrow();
    EntryId second = world.lastEntry(course);

    assertRefused(
        world.report(course, good().exactly("60").correcting(first, "again")), CORRECTED_MEANWHILE);
    assertRefused(
        world.titration().withdraw(Staff.EDUCATOR, course, first, "again"), CORRECTED_MEANWHILE);
    world.report(course, good().exactly("60").correcting(second, "at last")).orThrow();

    assertThat(reports())
        .extracting(InjectionReported::soft)
        .containsExactly(new SoftAfter.Exactly(TimeSpan.ofMinutes(60)));
  }

  @Test
  void a_report_of_another_course_and_an_entry_that_is_no_report_are_not_corrected() {
    CourseId other = world.open();
    world.report(other, good()).orThrow();
    EntryId others = world.lastEntry(other);
    EntryId signature = world.lastEntry(course);

    for (EntryId wrong : List.of(others, signature)) {
      assertRefused(world.report(course, good().correcting(wrong, "wrong")), CORRECTED_MEANWHILE);
      assertRefused(
          world.titration().withdraw(Staff.EDUCATOR, course, wrong, "wrong"), CORRECTED_MEANWHILE);
    }
  }

  @Test
  void a_withdrawn_report_stays_on_record_and_no_longer_counts() {
    world.told(course, good()).orThrow();
    EntryId report = world.lastEntry(course);

    assertRefused(
        world.titration().withdraw(Staff.EDUCATOR, course, report, " "), "Write the reason");
    world.titration().withdraw(Staff.EDUCATOR, course, report, "entered for another man").orThrow();

    assertThat(reports()).isEmpty();
    assertThat(world.last(course).corrects()).contains(report);
    assertThat(world.last(course).reason()).contains("entered for another man");
  }

  @Test
  void a_withdrawn_correction_does_not_bring_the_first_report_back() {
    world.report(course, good()).orThrow();
    world
        .report(course, good().exactly("50").correcting(world.lastEntry(course), "once"))
        .orThrow();

    world
        .titration()
        .withdraw(Staff.EDUCATOR, course, world.lastEntry(course), "another man")
        .orThrow();

    assertThat(reports()).isEmpty();
  }

  @Test
  void whoever_is_not_at_the_bedside_reports_nothing() {
    world.report(course, good()).orThrow();
    EntryId report = world.lastEntry(course);
    Account auditor = Staff.AUDITOR;

    assertRefused(world.titration().report(auditor, course, good().draft()), CLINICAL_ONLY);
    assertRefused(world.titration().withdraw(auditor, course, report, "x"), CLINICAL_ONLY);
    for (Account clinical : List.of(Staff.PRESCRIBER, Staff.ON_CALL)) {
      ReportForm form = good().exactly("50").correcting(world.lastEntry(course), "x");
      assertThat(world.titration().report(clinical, course, form.draft()).faults()).isEmpty();
    }
  }

  @Test
  void a_course_that_does_not_exist_is_told() {
    var nowhere = new CourseId(new UUID(8, 8).toString());

    assertRefused(world.report(nowhere, good()), "There is no such course");
  }

  @Test
  void a_local_time_that_came_twice_is_asked_back_and_one_that_never_came_is_refused() {
    world.setClock(Instant.parse("2026-11-03T15:00:00Z"));
    ReportForm twice = ReportForm.at("2026-11-01", "01:30");

    assertRefused(world.report(course, twice), "came twice");
    world.report(course, twice.occurrence(Occurrence.FIRST)).orThrow();
    world.report(course, twice.occurrence(Occurrence.SECOND)).orThrow();
    assertRefused(world.report(course, ReportForm.at("2026-03-08", "02:30")), "There was no 02:30");

    assertThat(reports())
        .extracting(InjectionReported::injectedAt)
        .containsExactly(
            Instant.parse("2026-11-01T05:30:00Z"), Instant.parse("2026-11-01T06:30:00Z"));
  }

  @Test
  void without_a_dose_signed_before_it_nothing_was_ordered() {
    world.report(course, ReportForm.at("2026-03-02", "09:59").mark("25")).orThrow();

    assertThat(reports()).extracting(InjectionReported::ordered).containsExactly(Optional.empty());
  }

  @Test
  void what_was_ordered_is_remembered_when_another_syringe_was_chosen_since() {
    world.chooseBarrel(course, "u100-0.5").orThrow();

    world.report(course, good().mark("50")).orThrow();

    assertThat(reports())
        .extracting(InjectionReported::ordered)
        .containsExactly(Optional.of(Volume.ofMicrolitres(120)));
  }

  @Test
  void a_dose_signed_in_the_minute_of_the_injection_was_ordered_for_it() {
    world.report(course, ReportForm.at("2026-03-02", "10:00").mark("25")).orThrow();

    assertThat(reports())
        .extracting(InjectionReported::ordered)
        .containsExactly(Optional.of(Volume.ofMicrolitres(120)));
  }
}
