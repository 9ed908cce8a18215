package rungwise.store.soundness;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.day.Need;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.sheet.NowView;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.SignDraft;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.store.OpenStores;
import rungwise.store.RawDatabase;

/** What a clinician can and cannot do with a course of which another program changed a row. */
final class UnsoundCourseTest {

  @TempDir Path folder;
  private final OpenStores stores = new OpenStores();
  private TitrationWorld world;
  private CourseId course;
  private CourseId other;

  @BeforeEach
  void injectTwoMen() {
    world = new TitrationWorld(stores.open(folder), new LabelReader());
    course = injected();
    other = injected();
  }

  private CourseId injected() {
    CourseId id = world.open();
    world.signProposed(id);
    world
        .report(id, ReportForm.at("2026-03-02", "09:00").mark("12").grade("1").exactly("20"))
        .orThrow();
    return id;
  }

  @AfterEach
  void close() {
    stores.close();
  }

  /** The man who had a useful erection is made one who had none, as by hand in a database shell. */
  private void change() throws SQLException {
    try (var raw = RawDatabase.withoutTriggers(folder)) {
      raw.run(
          "update injection_reported set grade = 4 where entry_id in"
              + " (select id from entry where course_id = '"
              + course.text()
              + "')");
    }
  }

  private CourseView view(CourseId id) {
    var time = new ClinicTime(ZoneId.of("America/New_York"));
    return new CourseViews(time, who -> "somebody").of(world.state(id));
  }

  @Test
  void nothing_says_that_he_may_inject_and_the_day_ranks_him() throws SQLException {
    change();

    CourseView view = view(course);
    assertThat(view.day().need()).isEqualTo(Need.RECORD_NOT_SOUND);
    assertThat(view.now().sign()).isEqualTo(NowView.Sign.STOPPED);
    assertThat(view.proposed()).isEmpty();
    assertThat(view.signed()).hasValueSatisfying(dose -> assertThat(dose.isSuspended()).isTrue());
    assertThat(view.man().flaws()).hasSize(1);
    assertThat(world.blocks(course)).contains(GuardRule.RECORD_NOT_SOUND);
  }

  @Test
  void other_men_are_not_touched() throws SQLException {
    CourseView before = view(other);
    change();

    assertThat(view(other)).isEqualTo(before);
    assertThat(view(other).man().flaws()).isEmpty();
  }

  @Test
  void nothing_is_signed_and_nothing_is_lifted() throws SQLException {
    SignDraft draft = world.proposed(course);
    change();

    assertThat(world.sign(course, draft).faults()).containsExactly(CourseChanges.NOT_SOUND);
    assertThat(world.lifting().reopen(Staff.PRESCRIBER, course, 120, "considered").faults())
        .containsExactly(CourseChanges.NOT_SOUND);
  }

  @Test
  void a_report_is_taken_and_the_course_stays_stopped() throws SQLException {
    change();
    world.pass(Duration.ofHours(5));
    long entries = world.file(course).entries().size();

    world
        .told(course, ReportForm.at("2026-03-02", "09:30").mark("12").grade("4").atLeast("240"))
        .orThrow();

    assertThat(world.file(course).entries()).hasSize((int) entries + 1);
    assertThat(view(course).day().need()).isEqualTo(Need.EMERGENCY);
    assertThat(world.blocks(course))
        .containsAll(List.of(GuardRule.EMERGENCY_OPEN, GuardRule.RECORD_NOT_SOUND));
  }
}
