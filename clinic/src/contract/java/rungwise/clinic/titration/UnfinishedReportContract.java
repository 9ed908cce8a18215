package rungwise.clinic.titration;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseFact.ReportUnfinished;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.standing.UnfinishedReports;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Verdict;

/** What may mean 4 hours and cannot be kept as a report yet, over any store. */
public abstract class UnfinishedReportContract {

  private TitrationWorld world;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /** A course whose first dose was signed on 2 March at 10:00; now it is 2 days later. */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.open();
    world.signProposed(course);
    world.pass(Duration.ofDays(2));
  }

  private static ReportForm told() {
    return ReportForm.at("2026-03-02", "21:30");
  }

  private static ReportForm shortChosen() {
    return told().soft("up_to_60");
  }

  private ReportAnswer enter(ReportForm form) {
    return world.titration().reports().enter(Staff.EDUCATOR, course, form.draft());
  }

  private boolean stops() {
    return world.state(course).mayInject().verdicts().stream()
        .anyMatch(verdict -> verdict.rule() == GuardRule.REPORT_UNFINISHED && verdict.isHardStop());
  }

  private long entries() {
    return world.file(course).entries().size();
  }

  @Test
  void minutes_under_another_answer_than_the_chosen_one_are_asked_back_at_their_field() {
    ReportAnswer answer = enter(shortChosen().with(ReportPart.EXACT_MINUTES, "250"));

    assertThat(answer.entry()).isEmpty();
    assertThat(answer.faults())
        .containsExactly(
            new PartFault(
                ReportPart.EXACT_MINUTES,
                "You chose \"up to 60 min\" and wrote 250 under \"after exact minutes\", which is"
                    + " 4 h 10 min: an emergency. Choose the right one, or empty this field."));
    assertThat(world.file(course).reports()).isEmpty();
  }

  @Test
  void whatever_may_mean_four_hours_stands_on_record_and_stops_the_course() {
    for (ReportForm form :
        List.of(
            shortChosen().with(ReportPart.EXACT_MINUTES, "240"),
            shortChosen().with(ReportPart.SEEN_AT, "22:00"),
            shortChosen().with(ReportPart.SOFT_AT, "0130"),
            shortChosen().with(ReportPart.USABLE, "240"),
            shortChosen().with(ReportPart.BEFORE_MINUTES, "241"),
            told().exactly("4 h"),
            told().soft("still").grade(""),
            told().soft("from_240").mark(""),
            told().soft("from_240").with(ReportPart.IDENTIFIED, ""))) {
      course = world.open();
      ReportAnswer answer = enter(form);

      assertThat(answer.entry()).as("%s", form).isEmpty();
      assertThat(answer.unfinished()).as("%s", form).isPresent();
      assertThat(stops()).as("%s", form).isTrue();
    }
  }

  @Test
  void what_cannot_mean_four_hours_is_asked_back_and_nothing_is_written() {
    for (ReportForm form :
        List.of(
            shortChosen().with(ReportPart.EXACT_MINUTES, "239"),
            shortChosen().with(ReportPart.SOFT_AT, "0129"),
            shortChosen().with(ReportPart.BEFORE_MINUTES, "240"),
            told().soft("up_to_60").grade(""),
            told().soft(""),
            told().soft("not_known").with(ReportPart.USABLE, "90"))) {
      long before = entries();
      ReportAnswer answer = enter(form);

      assertThat(answer.faults()).as("%s", form).isNotEmpty();
      assertThat(answer.unfinished()).as("%s", form).isEmpty();
      assertThat(entries()).as("%s", form).isEqualTo(before);
    }
  }

  @Test
  void nothing_that_was_typed_is_lost_and_it_is_kept_once_however_often_it_is_sent() {
    ReportForm form =
        shortChosen()
            .with(ReportPart.EXACT_MINUTES, "250")
            .with(ReportPart.WRONG, "LEAK", "BUBBLE")
            .with(ReportPart.OTHER_TABLETS, "one antihistamine");
    EntryId kept = enter(form).unfinished().orElseThrow();
    long before = entries();

    assertThat(enter(form).unfinished()).contains(kept);
    assertThat(entries()).isEqualTo(before);
    ReportDraft draft = Reports.draftOf(world.file(course), kept).orElseThrow();
    for (ReportPart part : ReportPart.values()) {
      assertThat(draft.all(part)).as("%s", part).isEqualTo(withoutBlanks(form, part));
    }
    assertThat(draft.completes()).contains(kept);
  }

  private static Set<String> withoutBlanks(ReportForm form, ReportPart part) {
    var all = new LinkedHashSet<>(form.draft().all(part));
    all.remove("");
    return all;
  }

  @Test
  void the_complete_report_ends_it_and_its_withdrawal_brings_it_back() {
    EntryId kept =
        enter(shortChosen().with(ReportPart.EXACT_MINUTES, "250")).unfinished().orElseThrow();

    ReportForm whole = ReportForm.at("2026-03-02", "21:00").exactly("25").completing(kept);
    assertThat(enter(whole).entry()).isPresent();
    assertThat(stops()).isFalse();

    EntryId report = world.lastEntry(course);
    world.titration().withdraw(Staff.EDUCATOR, course, report, "another man").orThrow();
    assertThat(stops()).isTrue();
  }

  @Test
  void a_report_of_the_same_injection_ends_it_without_naming_it() {
    enter(shortChosen().with(ReportPart.EXACT_MINUTES, "250"));

    assertThat(enter(ReportForm.at("2026-03-02", "20:00").exactly("25")).entry()).isPresent();
    assertThat(stops()).isTrue();
    assertThat(enter(told().exactly("25")).entry()).isPresent();
    assertThat(stops()).isFalse();
  }

  @Test
  void a_second_try_takes_the_place_of_the_first() {
    EntryId first =
        enter(shortChosen().with(ReportPart.EXACT_MINUTES, "250")).unfinished().orElseThrow();
    EntryId second =
        enter(shortChosen().with(ReportPart.EXACT_MINUTES, "260").completing(first))
            .unfinished()
            .orElseThrow();

    assertThat(UnfinishedReports.of(world.file(course)))
        .extracting(written -> written.entry().id())
        .containsExactly(second);
  }

  @Test
  void a_correction_that_contradicts_itself_leaves_the_report_and_stops() {
    world.told(course, told().exactly("25")).orThrow();
    EntryId report = world.lastEntry(course);
    ReportForm wrong =
        shortChosen().with(ReportPart.EXACT_MINUTES, "250").correcting(report, "he says more");

    EntryId kept = enter(wrong).unfinished().orElseThrow();

    assertThat(world.file(course).reports()).hasSize(1);
    assertThat(stops()).isTrue();
    assertThat(Reports.draftOf(world.file(course), kept).orElseThrow().corrects()).contains(report);
    assertThat(enter(told().exactly("55").correcting(report, "he says more")).entry()).isPresent();
    assertThat(stops()).isFalse();
  }

  @Test
  void a_prescribers_review_ends_it_and_what_is_said_later_stops_again() {
    enter(shortChosen().with(ReportPart.EXACT_MINUTES, "250"));
    world
        .lifting()
        .reviewEmergency(Staff.PRESCRIBER, course, Optional.of(world.now()), "seen, no harm")
        .orThrow();
    assertThat(stops()).isFalse();

    enter(shortChosen().with(ReportPart.EXACT_MINUTES, "260"));
    assertThat(stops()).isTrue();
  }

  @Test
  void advice_stops_and_says_when_it_was_told() {
    enter(told().soft("still").grade(""));

    Verdict verdict =
        world.state(course).advice().courseVerdicts().stream()
            .filter(one -> one.rule() == GuardRule.REPORT_UNFINISHED)
            .findFirst()
            .orElseThrow();
    assertThat(verdict.facts()).hasSize(2);
    assertThat(world.state(course).advice().decision().proposed()).isEmpty();
    assertThat(world.last(course).fact()).isInstanceOf(ReportUnfinished.class);
  }
}
