package rungwise.clinic.takeover;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.day.Need;
import rungwise.clinic.people.Account;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/** Taking over a man who injects already elsewhere, over any store. */
public abstract class TakingOverContract {

  private static final String REASON = "read the letter of the other clinic";

  private TitrationWorld world;
  private TakingOver taking;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.open();
    taking = new TakingOver(world.ports());
  }

  /** 0.8 mL of 20 mcg/mL by the 80-unit line, well and over in 45 minutes, days ago. */
  private static ToldDraft told() {
    return told("80", "2026-02-20", "EXACTLY", "45");
  }

  private static ToldDraft told(String line, String lastDay, String end, String minutes) {
    return new ToldDraft(
        "alprostadil-20",
        line,
        "u100-1",
        "the clinic at the sea",
        lastDay,
        "3",
        end,
        minutes,
        "LETTER");
  }

  private long basis() {
    return world.file(course).basis();
  }

  private Reading<Long> openAt(Account actor, String line) {
    return taking.open(actor, course, basis(), line, REASON);
  }

  private Decision decision() {
    return world.state(course).advice().decision();
  }

  @Test
  void what_was_told_opens_nothing_until_a_prescriber_does_and_then_at_half() {
    taking.tell(Staff.EDUCATOR, course, told()).orThrow();
    assertThat(decision()).isEqualTo(new Decision.Start(Volume.ofMicrolitres(120)));
    assertThat(taking.openable(world.state(course))).contains(Volume.ofMicrolitres(400));

    openAt(Staff.PRESCRIBER, "40").orThrow();

    assertThat(decision()).isEqualTo(new Decision.Start(Volume.ofMicrolitres(400)));
    assertThat(world.sign(course, world.instead(course, 400)).found()).isPresent();
    assertThat(world.state(course).mayInject().isClear()).isTrue();
  }

  @Test
  void nobody_but_a_prescriber_opens_and_never_above_half() {
    taking.tell(Staff.EDUCATOR, course, told()).orThrow();

    assertThat(openAt(Staff.EDUCATOR, "40").found()).isEmpty();
    assertThat(openAt(Staff.ON_CALL, "20").found()).isEmpty();
    assertThat(openAt(Staff.PRESCRIBER, "41").placed())
        .extracting(Fault::field)
        .containsExactly(TakingOver.UP_TO);
    assertThat(openAt(Staff.PRESCRIBER, "0").found()).isEmpty();
    assertThat(taking.open(Staff.PRESCRIBER, course, basis() - 1, "40", REASON).found()).isEmpty();
    assertThat(taking.open(Staff.PRESCRIBER, course, basis(), "40", " ").found()).isEmpty();
    assertThat(decision()).isEqualTo(new Decision.Start(Volume.ofMicrolitres(120)));
  }

  @Test
  void nothing_is_opened_where_nothing_was_told() {
    assertThat(openAt(Staff.PRESCRIBER, "12").found()).isEmpty();
  }

  @Test
  void a_later_lower_word_counts_and_takes_the_opening_away() {
    taking.tell(Staff.EDUCATOR, course, told()).orThrow();
    openAt(Staff.PRESCRIBER, "40").orThrow();
    world.sign(course, world.instead(course, 400)).orThrow();

    taking.tell(Staff.EDUCATOR, course, told("50", "2026-02-21", "EXACTLY", "45")).orThrow();

    assertThat(world.state(course).mayInject().isClear()).isFalse();
    assertThat(taking.openable(world.state(course))).contains(Volume.ofMicrolitres(250));
  }

  @Test
  void a_higher_word_later_raises_nothing() {
    taking.tell(Staff.EDUCATOR, course, told("20", "2026-02-21", "EXACTLY", "45")).orThrow();
    taking.tell(Staff.PRESCRIBER, course, told()).orThrow();

    assertThat(taking.openable(world.state(course))).contains(Volume.ofMicrolitres(100));
    // The first step of 0.12 mL holds more than half of 0.2 mL.
    assertThat(decision()).isEqualTo(new Decision.Start(Volume.ofMicrolitres(100)));
  }

  @Test
  void no_dose_at_home_before_one_was_watched_here() {
    world.makeReady(course);
    taking.tell(Staff.EDUCATOR, course, told()).orThrow();
    openAt(Staff.PRESCRIBER, "40").orThrow();

    assertThat(blocksAtHome())
        .contains(GuardRule.FIRST_IN_CLINIC, GuardRule.NOT_WATCHED_SINCE_TOLD);
  }

  private List<GuardRule> blocksAtHome() {
    return world.state(course).advice().homeVerdicts().stream().map(Verdict::rule).toList();
  }

  @Test
  void four_hours_elsewhere_stop_everything_until_a_prescriber_has_reviewed_them() {
    taking.tell(Staff.EDUCATOR, course, told("80", "2026-02-20", "EXACTLY", "250")).orThrow();

    assertThat(world.state(course).question().history().openEmergencies()).hasSize(1);
    assertThat(openAt(Staff.PRESCRIBER, "40").found()).isEmpty();
    assertThat(decision()).isEqualTo(new Decision.Stop());
    assertThat(
            new CourseViews(world.ports().time(), id -> "Ines Halloran")
                .dayOf(world.state(course))
                .day()
                .need())
        .isEqualTo(Need.EMERGENCY_OVER);

    world.lifting().reviewEmergency(Staff.PRESCRIBER, course, "told by the other clinic").orThrow();
    assertThat(world.state(course).question().history().openEmergencies()).isEmpty();
    assertThat(decision()).isEqualTo(new Decision.Refer());
    assertThat(taking.openable(world.state(course))).isEmpty();
  }

  @Test
  void an_end_that_nobody_knows_opens_nothing() {
    taking.tell(Staff.EDUCATOR, course, told("80", "2026-02-20", "NOT_KNOWN", "")).orThrow();

    assertThat(openAt(Staff.PRESCRIBER, "12").found()).isEmpty();
    assertThat(decision()).isEqualTo(new Decision.Refer());
  }

  @Test
  void where_nobody_knows_when_the_last_one_was_nothing_is_injected_until_somebody_says() {
    taking.tell(Staff.EDUCATOR, course, told("80", "", "EXACTLY", "45")).orThrow();
    assertThat(rules()).contains(GuardRule.PAST_OPEN);

    taking.tell(Staff.EDUCATOR, course, told()).orThrow();
    assertThat(rules()).doesNotContain(GuardRule.PAST_OPEN);
  }

  private List<GuardRule> rules() {
    return world.state(course).advice().courseVerdicts().stream().map(Verdict::rule).toList();
  }

  @Test
  void the_last_day_there_counts_to_its_end_for_the_time_between_two() {
    taking.tell(Staff.EDUCATOR, course, told("80", "2026-03-01", "EXACTLY", "45")).orThrow();
    world.signProposed(course);

    assertThat(world.state(course).mayInject().isClear()).isFalse();
    // It was 10:00 in New York; the day ends at midnight, and 24 hours after that he may.
    world.setClock(TitrationWorld.START.plus(Duration.ofHours(14)).minusSeconds(1));
    assertThat(world.state(course).mayInject().isClear()).isFalse();
    world.setClock(TitrationWorld.START.plus(Duration.ofHours(14)));
    assertThat(world.state(course).mayInject().isClear()).isTrue();
  }

  @Test
  void a_dose_that_was_watched_here_leads_on() {
    taking.tell(Staff.EDUCATOR, course, told()).orThrow();
    openAt(Staff.PRESCRIBER, "40").orThrow();
    world.sign(course, world.instead(course, 400)).orThrow();
    world.pass(Duration.ofHours(2));
    world
        .report(course, ReportForm.at("2026-03-02", "11:00").mark("40").grade("1").exactly("20"))
        .orThrow();
    world.pass(Duration.ofDays(2));

    assertThat(decision()).isEqualTo(new Decision.StepUp(Volume.ofMicrolitres(500)));
  }

  @Test
  void another_composition_with_a_component_that_is_new_to_him_begins_at_its_own_start() {
    CourseId other = world.openWith(SamplePreparations.THREE_DRUG, "u100-1");
    Decision before = world.state(other).advice().decision();
    taking.tell(Staff.EDUCATOR, other, told()).orThrow();

    assertThat(taking.openable(world.state(other))).isEmpty();
    assertThat(world.state(other).advice().decision()).isEqualTo(before);
  }

  @Test
  void everything_that_is_wrong_is_said_at_its_field() {
    var nothing = new ToldDraft("", "", "", "", "", "", "", "", "");
    assertThat(taking.tell(Staff.EDUCATOR, course, nothing).placed())
        .extracting(Fault::field)
        .containsExactly(
            ToldDraft.PREPARATION,
            ToldDraft.DOSE,
            ToldDraft.FROM,
            ToldDraft.GRADE,
            ToldDraft.END,
            ToldDraft.BY);
    assertThat(
            taking
                .tell(Staff.EDUCATOR, course, told("80", "2026-03-03", "NOT_KNOWN", "9"))
                .placed())
        .extracting(Fault::field)
        .containsExactly(ToldDraft.LAST_DAY, ToldDraft.MINUTES);
    assertThat(taking.tell(Staff.AUDITOR, course, told()).found()).isEmpty();
    assertThat(world.file(course).entries()).hasSize(4);
  }
}
