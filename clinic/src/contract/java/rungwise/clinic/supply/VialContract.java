package rungwise.clinic.supply;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.Vial;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.screening.ScreeningForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.supply.VialDates;
import rungwise.quantities.Reading;

/** The vials of a man: their labels and dates, over any store. */
public abstract class VialContract {

  private TitrationWorld world;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /** A signed dose and no vial. */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.openUnprepared("vasculogenic", "u100-1");
    world.screenings().answer(Staff.EDUCATOR, course, ScreeningForm.all(Answer.NO)).orThrow();
    world.signProposed(course);
  }

  private static VialForm right() {
    return VialForm.of(SamplePreparations.ALPROSTADIL_20);
  }

  private Reading<Long> receive(VialForm form) {
    return world.vials().receive(Staff.EDUCATOR, course, form.draft());
  }

  private Reading<Long> amend(EntryId vial, VialForm form, String reason) {
    return world.vials().amend(Staff.EDUCATOR, course, vial, form.draft(), reason);
  }

  private Vial inUse() {
    return world.file(course).vial().orElseThrow().fact().vial();
  }

  /** A local time of day in New York, while it is 5 hours behind. */
  private static Instant newYork(String local) {
    return Instant.parse(local + "-05:00");
  }

  @Test
  void a_vial_is_kept_as_its_label_says() {
    VialForm form =
        right()
            .lot(" A-17 ")
            .made("2026-02-20")
            .beyondUse("2026-04-20")
            .opened("2026-03-01")
            .daysInUse("28")
            .device("a 30 gauge needle");

    Reading<Long> reading = receive(form);

    assertThat(reading.notices()).isEmpty();
    assertThat(inUse())
        .isEqualTo(
            new Vial(
                "A-17",
                SamplePreparations.ALPROSTADIL_20.composition(),
                new VialDates(
                    Optional.of(LocalDate.of(2026, 2, 20)),
                    LocalDate.of(2026, 4, 20),
                    Optional.of(LocalDate.of(2026, 3, 1)),
                    Optional.of(28)),
                "a 30 gauge needle"));
  }

  @Test
  void without_a_vial_nothing_is_injected_and_with_the_right_one_it_may_be() {
    assertThat(world.blocks(course)).containsExactly(GuardRule.NO_VIAL);

    receive(right()).orThrow();

    assertThat(world.blocks(course)).isEmpty();
  }

  @Test
  void a_label_that_differs_in_strength_or_component_is_told_and_stops_every_dose() {
    for (VialForm wrong :
        List.of(
            right().strength(Component.ALPROSTADIL, "40"),
            right().strength(Component.ALPROSTADIL, "2"),
            right().strength(Component.PAPAVERINE, "30"))) {
      Reading<Long> reading = receive(wrong);

      assertThat(reading.notices())
          .singleElement()
          .asString()
          .contains(SamplePreparations.ALPROSTADIL_20.composition())
          .endsWith("this vial is not to be used.");
      assertThat(world.blocks(course)).containsExactly(GuardRule.VIAL_DIFFERS);
    }
    receive(right().strength(Component.ALPROSTADIL, "20.0")).orThrow();
    assertThat(world.blocks(course)).isEmpty();
  }

  @Test
  void a_vial_is_used_up_to_midnight_of_its_last_day_there() {
    receive(right().beyondUse("2026-03-02")).orThrow();

    world.setClock(newYork("2026-03-02T23:59:59.999"));
    assertThat(world.blocks(course)).isEmpty();
    world.setClock(newYork("2026-03-03T00:00:00"));

    assertThat(world.blocks(course)).containsExactly(GuardRule.VIAL_PAST_DATE);
  }

  @Test
  void a_vial_that_was_opened_is_used_only_for_its_days() {
    receive(right().opened("2026-03-02").daysInUse("2")).orThrow();

    world.setClock(newYork("2026-03-04T23:59:59.999"));
    assertThat(world.blocks(course)).isEmpty();
    world.setClock(newYork("2026-03-05T00:00:00"));

    assertThat(world.blocks(course)).containsExactly(GuardRule.VIAL_PAST_DATE);
  }

  @Test
  void the_date_on_the_label_ends_a_vial_that_was_opened_late() {
    receive(right().beyondUse("2026-03-03").opened("2026-03-02").daysInUse("28")).orThrow();

    world.setClock(newYork("2026-03-04T00:00:00"));

    assertThat(world.blocks(course)).containsExactly(GuardRule.VIAL_PAST_DATE);
  }

  @Test
  void the_day_on_which_it_was_opened_is_added_with_a_reason() {
    receive(right().daysInUse("2")).orThrow();
    EntryId vial = world.lastEntry(course);
    world.setClock(newYork("2026-03-06T12:00:00"));
    assertThat(world.blocks(course)).isEmpty();
    VialForm opened = right().daysInUse("2").opened("2026-03-02");

    assertThat(amend(vial, opened, " ").faults())
        .containsExactly("Write the reason: it stays on record.");
    amend(vial, opened, "he told the day").orThrow();

    assertThat(world.blocks(course)).containsExactly(GuardRule.VIAL_PAST_DATE);
    assertThat(world.file(course).vials()).hasSize(1);
    assertThat(world.last(course).corrects()).contains(vial);
    assertThat(amend(vial, right(), "again").faults())
        .containsExactly("The vial was amended meanwhile: open the course again.");
  }

  @Test
  void an_addendum_to_an_older_vial_does_not_put_it_into_use_again() {
    receive(right().lot("A")).orThrow();
    EntryId older = world.lastEntry(course);
    receive(right().lot("B")).orThrow();

    amend(older, right().lot("A").opened("2026-03-02"), "he told the day").orThrow();

    assertThat(inUse().lot()).isEqualTo("B");
  }

  @Test
  void every_fault_of_a_label_is_told_at_once_and_nothing_is_written() {
    long before = world.file(course).basis();
    VialForm wrong =
        right()
            .lot(" ")
            .strength(Component.ALPROSTADIL, "1e3")
            .beyondUse("2026-02-30")
            .opened("never")
            .daysInUse("0");

    assertThat(receive(wrong).faults())
        .hasSize(5)
        .anyMatch(fault -> fault.startsWith("Enter the lot"))
        .anyMatch(fault -> fault.startsWith("alprostadil: "))
        .anyMatch(fault -> fault.startsWith("Beyond-use date: "))
        .anyMatch(fault -> fault.startsWith("Opened: "))
        .anyMatch(fault -> fault.startsWith("Days of use once opened"));
    assertThat(receive(right().beyondUse("")).faults())
        .containsExactly("Enter the beyond-use date: without it no dose may be drawn.");
    assertThat(receive(right().strength(Component.ALPROSTADIL, "")).faults())
        .containsExactly("Enter the strength of each component, as the label says it.");
    assertThat(receive(right().made("2029-01-01").opened("2026-03-01")).faults()).hasSize(2);
    assertThat(world.file(course).basis()).isEqualTo(before);
  }

  @Test
  void an_auditor_enters_no_vial() {
    assertThat(world.vials().receive(Staff.AUDITOR, course, right().draft()).faults())
        .singleElement()
        .asString()
        .startsWith("Only a prescriber, a nurse educator");
  }
}
