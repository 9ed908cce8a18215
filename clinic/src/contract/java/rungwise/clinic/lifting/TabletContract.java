package rungwise.clinic.lifting;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseFact.TabletTaken;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.people.Account;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.titration.PartFault;
import rungwise.clinic.titration.ReportAnswer;
import rungwise.clinic.titration.ReportDraft;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.ReportPart;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.known.Tablet;
import rungwise.quantities.Reading;

/** Tablets for erections before an injection, over any store. */
public abstract class TabletContract {

  private TitrationWorld world;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /** A course whose first dose is signed; it is 2 March, 10:00 there. */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.open();
    world.signProposed(course);
  }

  private ReportAnswer took(Account actor, Tablet tablet, String date, String time) {
    return world
        .titration()
        .reports()
        .tookTablet(
            actor,
            course,
            ReportDraft.EMPTY
                .with(ReportPart.TABLET, tablet.name())
                .with(ReportPart.TABLET_DATE, date)
                .with(ReportPart.TABLET_TIME, time));
  }

  private boolean isHeld() {
    return world.blocks(course).contains(GuardRule.PDE5_HOURS);
  }

  private List<TabletTaken> taken() {
    return world.file(course).inForce(TabletTaken.class).stream()
        .map(CourseFile.Written::fact)
        .toList();
  }

  private Duration hours() {
    return Duration.ofHours(world.state(course).question().protocol().limits().pde5Hours().value());
  }

  @Test
  void whoever_is_clinical_writes_one_down_and_it_holds_for_the_clinics_hours() {
    assertThat(isHeld()).isFalse();

    assertThat(took(Staff.EDUCATOR, Tablet.SILDENAFIL, "", "09:00").faults()).isEmpty();

    assertThat(taken())
        .containsExactly(new TabletTaken(Tablet.SILDENAFIL, Instant.parse("2026-03-02T14:00:00Z")));
    assertThat(isHeld()).isTrue();
    world.setClock(Instant.parse("2026-03-02T14:00:00Z").plus(hours()).minusMillis(1));
    assertThat(isHeld()).isTrue();
    world.pass(Duration.ofMillis(1));
    assertThat(isHeld()).isFalse();
    assertThat(took(Staff.AUDITOR, Tablet.SILDENAFIL, "", "09:00").faults()).isNotEmpty();
  }

  @Test
  void the_last_one_counts_whenever_it_was_written_down() {
    took(Staff.EDUCATOR, Tablet.AVANAFIL, "", "09:00");
    took(Staff.EDUCATOR, Tablet.VARDENAFIL, "2026-02-01", "09:00");

    assertThat(isHeld()).isTrue();
  }

  @Test
  void what_was_overridden_is_that_tablet_and_not_the_next_one() {
    took(Staff.EDUCATOR, Tablet.TADALAFIL, "", "09:30");
    overrideTheWait();

    took(Staff.EDUCATOR, Tablet.OTHER, "", "09:30");
    assertThat(isHeld()).as("another one of the same minute").isTrue();
    overrideTheWait();

    took(Staff.EDUCATOR, Tablet.SILDENAFIL, "", "09:00");
    assertThat(isHeld()).as("one that he took before").isTrue();
    overrideTheWait();
  }

  private void overrideTheWait() {
    assertThat(isHeld()).isTrue();
    world.sign(course, world.overriding(course, "seen here", GuardRule.PDE5_HOURS)).orThrow();
    assertThat(isHeld()).isFalse();
  }

  @Test
  void without_a_time_it_was_taken_now_and_one_to_come_or_without_a_name_is_asked_back() {
    took(Staff.EDUCATOR, Tablet.OTHER, "", "");
    assertThat(taken()).extracting(TabletTaken::at).containsExactly(world.now());

    assertThat(took(Staff.EDUCATOR, Tablet.OTHER, "", "10:01").faults())
        .extracting(PartFault::part)
        .containsExactly(ReportPart.TABLET_TIME);
    assertThat(
            world
                .titration()
                .reports()
                .tookTablet(
                    Staff.EDUCATOR, course, ReportDraft.EMPTY.with(ReportPart.TABLET_TIME, "09:00"))
                .faults())
        .extracting(PartFault::part)
        .containsExactly(ReportPart.TABLET);
  }

  @Test
  void a_daily_low_dose_holds_until_a_prescriber_lets_him_go_on_and_again_after() {
    took(Staff.EDUCATOR, Tablet.TADALAFIL_DAILY, "", "09:00");
    assertThat(isHeld()).isTrue();

    assertThat(decide(Staff.EDUCATOR, true, "why").faults()).isNotEmpty();
    assertThat(decide(Staff.PRESCRIBER, true, " ").faults()).isNotEmpty();
    assertThat(isHeld()).isTrue();
    decide(Staff.PRESCRIBER, true, "for his prostate; a dose in the clinic was short").orThrow();
    assertThat(isHeld()).isFalse();

    took(Staff.EDUCATOR, Tablet.TADALAFIL, "", "09:30");
    assertThat(isHeld()).isTrue();
    decide(Staff.PRESCRIBER, false, "stopped").orThrow();
    assertThat(isHeld()).isTrue();
  }

  private Reading<Long> decide(Account actor, boolean isAllowed, String why) {
    return world.titration().reports().decideDailyTablet(actor, course, isAllowed, why);
  }

  @Test
  void a_report_keeps_the_tablet_of_which_he_told() {
    world.pass(Duration.ofDays(1));
    ReportForm form =
        ReportForm.at("2026-03-02", "21:30")
            .with(ReportPart.TABLET, Tablet.SILDENAFIL.name())
            .with(ReportPart.TABLET_TIME, "7 pm");

    assertThat(world.titration().reports().enter(Staff.EDUCATOR, course, form.draft()).faults())
        .isEmpty();

    assertThat(taken())
        .containsExactly(new TabletTaken(Tablet.SILDENAFIL, Instant.parse("2026-03-03T00:00:00Z")));
    assertThat(isHeld()).isTrue();
  }

  @Test
  void a_tablet_of_which_the_time_is_not_said_was_taken_as_late_as_it_may_have_been() {
    world.pass(Duration.ofDays(1));
    ReportForm form =
        ReportForm.at("2026-03-02", "21:30").with(ReportPart.TABLET, Tablet.SILDENAFIL.name());

    world.titration().reports().enter(Staff.EDUCATOR, course, form.draft());

    assertThat(taken())
        .extracting(TabletTaken::at)
        .containsExactly(Instant.parse("2026-03-03T02:30:00Z"));
  }
}
