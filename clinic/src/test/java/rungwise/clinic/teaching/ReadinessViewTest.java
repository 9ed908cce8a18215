package rungwise.clinic.teaching;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.InMemoryRecord;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.sheet.CourseView.VerdictText;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.teaching.ReadinessView.Item;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.known.SamplePreparations;

/** What comes before home use, in words. */
final class ReadinessViewTest {

  private static final ClinicTime TIME = new ClinicTime(ZoneId.of("America/New_York"));

  private final TitrationWorld world =
      new TitrationWorld(InMemoryRecord.ports(), new LabelReader());
  private final CourseId id = world.open();

  private ReadinessView view(CourseId course) {
    CourseState state = world.state(course);
    return ReadinessView.of(
        state,
        LocalDate.ofInstant(state.now(), TIME.zone()),
        new CourseViews(TIME, account -> "A. Educator").of(state));
  }

  private void record(Readiness item, String note) {
    boolean isPlan = item == Readiness.EMERGENCY_PLAN;
    world
        .teaching()
        .record(
            Staff.EDUCATOR,
            id,
            new ReadinessDraft(
                item.name(),
                "2026-03-02",
                isPlan ? "Quellmoor Hospital (invented)" : "",
                isPlan ? "555 0142" : "",
                isPlan ? "his partner drives" : "",
                note))
        .orThrow();
  }

  @Test
  void what_is_missing_is_counted_and_named() {
    record(Readiness.TEACH_BACK, "with his partner");

    ReadinessView view = view(id);

    assertThat(view.answer()).isEqualTo("Not ready for home");
    assertThat(view.verdicts().getFirst().sentence())
        .startsWith("2 of 3 not on record: ")
        .contains(Readiness.EMERGENCY_PLAN.words())
        .doesNotContain(Readiness.TEACH_BACK.words());
    Item item = view.items().getFirst();
    assertThat(item.isOnRecord()).isTrue();
    assertThat(item.records())
        .containsExactly(
            new ReadinessView.Line("2 March 2026", "", "with his partner", "A. Educator"));
  }

  @Test
  void consent_is_asked_for_a_mixture_only() {
    CourseId mixture = world.openWith(SamplePreparations.THREE_DRUG, "u100-1");

    assertThat(view(id).items()).extracting(Item::token).doesNotContain("OFF_LABEL_CONSENT");
    assertThat(view(mixture).items()).extracting(Item::token).contains("OFF_LABEL_CONSENT");
  }

  @Test
  void everything_on_record_is_not_enough_before_a_dose_in_the_clinic() {
    Readiness.neededFor(SamplePreparations.ALPROSTADIL_20).forEach(item -> record(item, ""));

    ReadinessView view = view(id);

    assertThat(view.answer()).isEqualTo("Not ready for home");
    assertThat(view.verdicts())
        .extracting(VerdictText::sentence)
        .containsExactly(GuardRule.FIRST_IN_CLINIC.wording());
  }

  @Test
  void everything_on_record_and_a_dose_in_the_clinic_is_ready() {
    Readiness.neededFor(SamplePreparations.ALPROSTADIL_20).forEach(item -> record(item, ""));
    world.signProposed(id);
    world.pass(Duration.ofDays(2));
    world.report(id, ReportForm.at("2026-03-02", "21:30").exactly("30")).orThrow();

    ReadinessView view = view(id);

    assertThat(view.answer()).isEqualTo("Ready for home");
    assertThat(view.verdicts()).isEmpty();
  }

  @Test
  void a_later_record_stands_before_the_earlier_one() {
    record(Readiness.TEACH_BACK, "first");
    record(Readiness.TEACH_BACK, "again");

    assertThat(view(id).items().getFirst().records())
        .extracting(ReadinessView.Line::note)
        .containsExactly("again", "first");
  }
}
