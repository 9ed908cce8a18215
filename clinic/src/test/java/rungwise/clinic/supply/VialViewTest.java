package rungwise.clinic.supply;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.InMemoryRecord;
import rungwise.clinic.course.Vial;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.history.Stock;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.supply.InUseRule;
import rungwise.quantities.Reading;

/** The vials of a man in words. The clock stands at 2 March 2026, 10:00 in New York. */
final class VialViewTest {

  private static final ClinicTime TIME = new ClinicTime(ZoneId.of("America/New_York"));
  private static final Preparation ORDERED = SamplePreparations.ALPROSTADIL_20;

  private final TitrationWorld world =
      new TitrationWorld(InMemoryRecord.ports(), new LabelReader());
  private final CourseId id = world.openUnprepared("vasculogenic", "u100-1");

  private VialView view() {
    return view(id);
  }

  private VialView view(CourseId of) {
    CourseState state = world.state(of);
    return VialView.of(
        state,
        new CourseViews(TIME, account -> "A. Educator").of(state),
        world.vials().uses(state.file()),
        TIME);
  }

  private static VialForm label() {
    return VialForm.of(ORDERED).lot("L-7");
  }

  private static List<Preparation> samples() {
    return SamplePreparations.all();
  }

  @Test
  void without_a_vial_the_order_is_shown_and_nothing_may_be_drawn() {
    VialView view = view();

    assertThat(view.answer()).isEqualTo("No vial is on record");
    assertThat(view.mayBeUsed()).isFalse();
    assertThat(view.ordered()).isEqualTo("alprostadil 20 mcg per mL");
    assertThat(view.components()).containsExactly(Component.ALPROSTADIL);
    assertThat(view.others())
        .containsExactly(Component.PAPAVERINE, Component.PHENTOLAMINE, Component.ATROPINE);
  }

  @Test
  void a_label_that_says_what_was_ordered_is_the_same_and_may_be_used() {
    world.receive(id, label().beyondUse("2026-03-30"));

    VialView view = view();
    VialView.Line line = view.inUse().orElseThrow();

    assertThat(view.mayBeUsed()).isTrue();
    assertThat(line.comparison()).isEqualTo("The same");
    assertThat(line.usableUntil()).isEqualTo("30 March 2026");
    assertThat(line.fromNow()).isEqualTo("ends in 28 days");
    assertThat(line.opened()).isEqualTo("not yet");
  }

  @Test
  void a_label_of_another_strength_or_with_another_component_is_not_to_be_used() {
    world.receive(id, label().strength(Component.ALPROSTADIL, "40"));
    assertThat(view().answer()).isEqualTo("The label differs from the order: not to be used");
    assertThat(view().mayBeUsed()).isFalse();

    world.receive(id, label().strength(Component.PAPAVERINE, "30"));
    assertThat(view().answer()).isEqualTo("The label differs from the order: not to be used");
    assertThat(view().inUse().orElseThrow().comparison()).isEqualTo("Differs: not to be used");
  }

  @Test
  void label_and_order_stand_side_by_side_component_by_component() {
    world.receive(
        id, label().strength(Component.PAPAVERINE, "30").strength(Component.ALPROSTADIL, "1200"));

    assertThat(view().orderedAmounts()).containsExactly("alprostadil 20 mcg per mL");
    assertThat(view().inUse().orElseThrow().labelled())
        .containsExactly("papaverine hydrochloride 30 mg per mL", "alprostadil 1,200 mcg per mL");
  }

  @Test
  void a_vial_may_be_used_on_its_last_day_and_not_after() {
    world.receive(id, label().beyondUse("2026-03-02"));
    assertThat(view().mayBeUsed()).isTrue();
    assertThat(view().inUse().orElseThrow().fromNow()).startsWith("ends in 13 h");

    world.receive(id, label().beyondUse("2026-03-01"));
    assertThat(view().mayBeUsed()).isFalse();
    assertThat(view().answer()).isEqualTo("Past the date on its label: not to be used");
    assertThat(view().inUse().orElseThrow().fromNow()).startsWith("ended 10 h");
  }

  @Test
  void a_powder_ends_at_the_hour_and_the_page_says_what_ended_it() {
    world.receive(id, label().opened("2026-03-01").openedAt("09:05").daysInUse("3"));

    VialView view = view();
    VialView.Line line = view.inUse().orElseThrow();

    assertThat(view.mayBeUsed()).isFalse();
    assertThat(view.answer()).isEqualTo("Dissolved too long ago: not to be used");
    assertThat(line.usableUntil()).isEqualTo("Monday 2 March 2026 09:05");
    assertThat(line.endedBy()).isEqualTo("24 h after it was dissolved");
    assertThat(line.opened()).isEqualTo("1 March 2026 09:05, good for 3 days once opened");
  }

  @Test
  void an_open_vial_of_which_nobody_said_how_long_may_not_be_used_and_names_the_pharmacy() {
    world.openedLasts(new InUseRule.NotStated());
    CourseId onSolution = world.openWith(TitrationWorld.WEAK, "u100-1");
    world.receive(onSolution, VialForm.of(TitrationWorld.WEAK).opened("2026-03-01"));

    assertThat(view(onSolution).mayBeUsed()).isFalse();
    assertThat(view(onSolution).answer()).endsWith("ask the pharmacy");
    assertThat(view(onSolution).inUse().orElseThrow().endedBy())
        .isEqualTo("the date on the label; how long it may be open is not stated");
  }

  @Test
  void a_vial_that_a_dose_was_drawn_from_reads_as_open() {
    CourseId onSolution = world.openWith(TitrationWorld.WEAK, "u100-1");
    world.signProposed(onSolution);
    world.pass(Duration.ofHours(2));
    world.report(onSolution, ReportForm.at("2026-03-02", "10:30").mark("50")).orThrow();

    assertThat(view(onSolution).inUse().orElseThrow().opened())
        .isEqualTo("by 2 March 2026 10:30, when a dose was drawn from it");
  }

  @Test
  void the_days_of_use_once_opened_end_before_the_date_on_the_label() {
    CourseId onSolution = world.openWith(TitrationWorld.WEAK, "u100-1");
    VialForm solution = VialForm.of(TitrationWorld.WEAK).beyondUse("2026-06-30");
    world.receive(onSolution, solution.opened("2026-03-01").daysInUse("28"));

    VialView.Line line = view(onSolution).inUse().orElseThrow();

    assertThat(line.usableUntil()).isEqualTo("29 March 2026");
    assertThat(line.endedBy()).isEqualTo("28 days after opening");
    assertThat(line.beyondUse()).isEqualTo("30 June 2026");
    assertThat(line.opened()).isEqualTo("1 March 2026, good for 28 days once opened");
  }

  @Test
  void the_vial_dispensed_last_is_in_use_and_the_others_stand_below_it() {
    world.receive(id, label().lot("A"));
    world.receive(id, label().lot("B"));
    world.receive(id, label().lot("C"));

    assertThat(view().inUse().orElseThrow().vial().lot()).isEqualTo("C");
    assertThat(view().earlier()).extracting(line -> line.vial().lot()).containsExactly("B", "A");
  }

  @Test
  void an_addendum_replaces_the_words_of_its_vial_and_asks_for_a_reason_with_every_other_fault() {
    EntryId entry = world.receive(id, label());

    Reading<Long> refused =
        world.vials().amend(Staff.EDUCATOR, id, entry, label().lot("").draft(), " ");
    world
        .vials()
        .amend(Staff.EDUCATOR, id, entry, label().opened("2026-03-02").draft(), "opened")
        .orThrow();

    assertThat(refused.faults()).hasSize(2);
    assertThat(view().inUse().orElseThrow().opened()).isEqualTo("2 March 2026");
    assertThat(view().earlier()).isEmpty();
  }

  @Test
  void an_addendum_to_an_earlier_vial_does_not_put_it_in_use() {
    EntryId first = world.receive(id, label().lot("A"));
    world.receive(id, label().lot("B"));

    world.vials().amend(Staff.EDUCATOR, id, first, label().lot("A2").draft(), "misread").orThrow();

    assertThat(view().inUse().orElseThrow().vial().lot()).isEqualTo("B");
    assertThat(view().earlier()).extracting(line -> line.vial().lot()).containsExactly("A2");
  }

  @Test
  void a_report_keeps_its_vial_when_an_addendum_to_it_comes_later() {
    CourseId course = world.open();
    EntryId entry = world.file(course).vial().orElseThrow().entry().id();
    world.signProposed(course);
    world.pass(Duration.ofDays(2));
    world.report(course, ReportForm.at("2026-03-02", "21:30")).orThrow();
    Stock before = stockOfTheReport(course);

    world
        .vials()
        .amend(Staff.EDUCATOR, course, entry, label().opened("2026-03-02").draft(), "opened")
        .orThrow();

    assertThat(before).isNotEqualTo(Stock.NOT_RECORDED);
    assertThat(stockOfTheReport(course)).isEqualTo(before);
  }

  private Stock stockOfTheReport(CourseId course) {
    return world.state(course).question().history().injections().getLast().stock();
  }

  @ParameterizedTest
  @MethodSource("samples")
  void the_form_of_an_addendum_says_exactly_what_is_written_down(Preparation preparation) {
    VialForm form =
        VialForm.of(preparation)
            .made("2026-02-01")
            .opened("2026-02-02")
            .daysInUse("30")
            .device("0.5 mL");
    Vial vial = VialReading.of(form.draft()).orThrow();

    assertThat(VialReading.of(VialDraft.of(vial)).orThrow()).isEqualTo(vial);
  }

  @Test
  void a_strength_with_grouped_digits_comes_back_as_it_is_typed() {
    Vial vial = VialReading.of(label().strength(Component.ALPROSTADIL, "1200").draft()).orThrow();

    assertThat(vial.composition()).contains("1,200");
    assertThat(VialDraft.of(vial).strengths()).containsEntry(Component.ALPROSTADIL, "1200");
  }
}
