package rungwise.clinic.supply;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseFact.ObservationStarted;
import rungwise.clinic.course.CourseFact.VialReceived;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.room.EndDraft;
import rungwise.clinic.room.VisitForms;
import rungwise.clinic.screening.ScreeningForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Stock;
import rungwise.dosing.known.Component;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.supply.Freshness;
import rungwise.dosing.supply.InUseRule;
import rungwise.dosing.supply.Opening;
import rungwise.quantities.Reading;

/**
 * The vials that the clinic keeps, and a dose that is drawn from one at a visit, over any store.
 */
public abstract class ClinicVialContract {

  private TitrationWorld world;
  private VisitForms forms;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /** A man without a vial of his own, with a first dose that is signed for the clinic. */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    forms = new VisitForms(world);
    course = world.openUnprepared(TitrationWorld.WEAK, "u100-1");
    world.screenings().answer(Staff.EDUCATOR, course, ScreeningForm.all(Answer.NO)).orThrow();
    world.sign(course, world.overriding(course, "the clinic's vial", GuardRule.NO_VIAL)).orThrow();
  }

  private static VialForm label() {
    return VialForm.of(TitrationWorld.WEAK).lot("C-1").made("2026-03-01");
  }

  private ClinicVial keep(VialForm form) {
    world.clinicVials().add(Staff.EDUCATOR, form.draft()).orThrow();
    return world.clinicVials().kept().getLast();
  }

  private Reading<Long> start(String vial) {
    return world.room().start(Staff.EDUCATOR, course, forms.start("50").from(vial));
  }

  private EntryId vialOfTheVisit() {
    return world
        .file(course)
        .inForce(ObservationStarted.class)
        .getLast()
        .fact()
        .vial()
        .orElseThrow();
  }

  @Test
  void a_vial_is_written_down_once_amended_and_kept_no_longer() {
    ClinicVial first = keep(label());
    ClinicVial second = keep(label().lot("C-2"));

    world
        .clinicVials()
        .amend(
            Staff.EDUCATOR, first.id().text(), label().opened("2026-03-02").draft(), "opened today")
        .orThrow();
    assertThat(world.clinicVials().kept())
        .extracting(ClinicVial::id)
        .containsExactly(first.id(), second.id());
    assertThat(world.clinicVials().find(first.id().text()).orElseThrow().vial().dates().opened())
        .contains(Opening.on(LocalDate.of(2026, 3, 2)));

    world.clinicVials().finish(Staff.EDUCATOR, first.id().text(), "used up").orThrow();
    assertThat(world.clinicVials().kept()).containsExactly(second);
    assertThat(world.clinicVials().find(first.id().text())).isEmpty();
  }

  @Test
  void faults_are_told_at_once_and_nothing_is_written() {
    ClinicVial kept = keep(label());

    assertThat(
            world
                .clinicVials()
                .add(Staff.EDUCATOR, label().lot(" ").beyondUse("").draft())
                .faults())
        .hasSize(2);
    assertThat(world.clinicVials().amend(Staff.EDUCATOR, "not one", label().draft(), " ").faults())
        .hasSize(2)
        .contains("Write the reason: it stays on record.");
    assertThat(world.clinicVials().finish(Staff.EDUCATOR, kept.id().text(), "").faults())
        .containsExactly("Write the reason: it stays on record.");
    assertThat(world.clinicVials().add(Staff.AUDITOR, label().draft()).faults())
        .singleElement()
        .asString()
        .startsWith("Only a prescriber, a nurse educator");
    assertThat(world.clinicVials().kept()).containsExactly(kept);
  }

  @Test
  void a_dose_that_is_drawn_from_it_proves_something_of_fresh_stock() {
    ClinicVial vial = keep(label());

    start(vial.id().text()).orThrow();
    EntryId entry = vialOfTheVisit();
    EntryId observation = world.lastEntry(course);
    world.pass(Duration.ofMinutes(45));
    EndDraft soft = forms.end("2", "none_found", Set.of(), "");
    world.room().end(Staff.EDUCATOR, course, observation, soft).orThrow();

    var received = (VialReceived) world.file(course).entry(entry).fact();
    assertThat(received.ofClinic()).contains(vial.id());
    assertThat(received.vial().lot()).isEqualTo("C-1");
    assertThat(world.state(course).question().history().injections().getLast().stock())
        .isEqualTo(new Stock(entry.text(), Freshness.FRESH));
  }

  @Test
  void it_is_no_vial_of_his_at_home() {
    start(keep(label()).id().text()).orThrow();

    assertThat(world.file(course).vial()).isEmpty();
    assertThat(world.file(course).ownVials()).isEmpty();
    assertThat(world.state(course).question().vial()).isEmpty();
  }

  @Test
  void what_its_label_or_its_dates_forbid_is_not_drawn_from_it() {
    long before = world.file(course).basis();
    ClinicVial stronger = keep(label().strength(Component.ALPROSTADIL, "20"));
    ClinicVial old = keep(label().beyondUse("2026-03-01"));

    assertThat(start(stronger.id().text()).faults())
        .containsExactly("Not now: " + GuardRule.VIAL_DIFFERS.wording());
    assertThat(start(old.id().text()).faults())
        .containsExactly("Not now: " + GuardRule.VIAL_PAST_DATE.wording());
    assertThat(start("1e3").faults()).singleElement().asString().startsWith("The clinic does not");
    assertThat(world.file(course).basis()).isEqualTo(before);
  }

  @Test
  void a_dose_that_was_drawn_opens_it_for_everybody() {
    world.openedLasts(new InUseRule.DaysAfterOpening(2));
    ClinicVial vial = keep(label());

    start(vial.id().text()).orThrow();

    Optional<Opening> opened =
        world.clinicVials().find(vial.id().text()).orElseThrow().vial().dates().opened();
    assertThat(opened)
        .contains(new Opening(LocalDate.of(2026, 3, 2), Optional.of(LocalTime.of(10, 0))));
    CourseId other = world.openUnprepared(TitrationWorld.WEAK, "u100-1");
    world.screenings().answer(Staff.EDUCATOR, other, ScreeningForm.all(Answer.NO)).orThrow();
    world.sign(other, world.overriding(other, "the clinic's vial", GuardRule.NO_VIAL)).orThrow();
    world.pass(Duration.ofDays(3));
    assertThat(
            world
                .room()
                .start(Staff.EDUCATOR, other, forms.start("50").from(vial.id().text()))
                .faults())
        .containsExactly("Not now: " + GuardRule.VIAL_OPEN_TOO_LONG.wording());
  }

  @Test
  void two_doses_for_one_man_are_drawn_from_one_vial() {
    ClinicVial vial = keep(label());
    start(vial.id().text()).orThrow();
    EntryId first = vialOfTheVisit();
    world.pass(Duration.ofMinutes(45));
    world
        .room()
        .end(
            Staff.EDUCATOR,
            course,
            world.lastEntry(course),
            forms.end("2", "none_found", Set.of(), ""))
        .orThrow();
    world.pass(Duration.ofDays(2));
    var again = forms.alreadyGiven("50").from(vial.id().text());

    world.room().start(Staff.EDUCATOR, course, again).orThrow();

    assertThat(vialOfTheVisit()).isEqualTo(first);
    assertThat(List.copyOf(world.file(course).inForce(VialReceived.class))).hasSize(1);
  }
}
