package rungwise.clinic.supply;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
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
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.supply.InUseRule;
import rungwise.dosing.supply.Opening;
import rungwise.dosing.supply.VialDates;
import rungwise.dosing.supply.VialLimit;
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

  private static Instant newYork(String local) {
    return LocalDateTime.parse(local).atZone(ZoneId.of("America/New_York")).toInstant();
  }

  @Test
  void a_vial_is_kept_as_its_label_says() {
    VialForm form =
        right()
            .lot(" A-17 ")
            .made("2026-02-20")
            .beyondUse("2026-04-20")
            .opened("2026-03-01")
            .openedAt("21:05")
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
                    Optional.of(
                        new Opening(LocalDate.of(2026, 3, 1), Optional.of(LocalTime.of(21, 5)))),
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

  /** A man on a solution for many doses, with a dose that is signed and no vial. */
  private CourseId onSolution() {
    CourseId id = world.openUnprepared(TitrationWorld.WEAK, "u100-1");
    world.screenings().answer(Staff.EDUCATOR, id, ScreeningForm.all(Answer.NO)).orThrow();
    world.signProposed(id);
    return id;
  }

  private static VialForm solution() {
    return VialForm.of(TitrationWorld.WEAK);
  }

  @Test
  void a_vial_that_was_opened_is_used_only_for_its_days() {
    CourseId id = onSolution();
    world.receive(id, solution().opened("2026-03-02").daysInUse("2"));

    world.setClock(newYork("2026-03-04T23:59:59.999"));
    assertThat(world.blocks(id)).isEmpty();
    world.setClock(newYork("2026-03-05T00:00:00"));

    assertThat(world.blocks(id)).containsExactly(GuardRule.VIAL_OPEN_TOO_LONG);
  }

  @Test
  void the_preparations_days_end_a_vial_for_which_more_or_none_are_typed() {
    world.openedLasts(new InUseRule.DaysAfterOpening(28));
    for (String typed : List.of("", "70")) {
      CourseId id = onSolution();
      world.receive(id, solution().opened("2026-03-02").daysInUse(typed));

      world.setClock(newYork("2026-03-30T23:59:59"));
      assertThat(world.blocks(id)).isEmpty();
      world.setClock(newYork("2026-03-31T00:00:00"));

      assertThat(world.blocks(id)).containsExactly(GuardRule.VIAL_OPEN_TOO_LONG);
      world.setClock(TitrationWorld.START);
    }
  }

  @Test
  void a_dissolved_powder_ends_by_the_hour_whatever_its_days_are() {
    world.openedLasts(new InUseRule.DaysAfterOpening(3));
    receive(right().opened("2026-03-02").openedAt("09:30")).orThrow();

    world.setClock(newYork("2026-03-03T09:29:59.999"));
    assertThat(world.blocks(course)).isEmpty();
    world.setClock(newYork("2026-03-03T09:30:00"));

    assertThat(world.blocks(course)).containsExactly(GuardRule.VIAL_OPEN_TOO_LONG);
  }

  @Test
  void open_and_not_stated_is_held_until_the_pharmacys_answer_is_typed() {
    world.openedLasts(new InUseRule.NotStated());
    CourseId id = onSolution();
    EntryId vial = world.receive(id, solution());
    assertThat(world.blocks(id)).isEmpty();

    VialForm opened = solution().opened("2026-03-02");
    world.vials().amend(Staff.EDUCATOR, id, vial, opened.draft(), "opened").orThrow();
    assertThat(world.blocks(id)).containsExactly(GuardRule.IN_USE_NOT_STATED);

    VialForm answered = opened.daysInUse("14");
    EntryId last = world.lastEntry(id);
    world.vials().amend(Staff.EDUCATOR, id, last, answered.draft(), "pharmacy").orThrow();
    assertThat(world.blocks(id)).isEmpty();
  }

  @Test
  void a_dose_that_was_drawn_opens_a_vial_for_many_doses_though_nobody_wrote_it_down() {
    world.openedLasts(new InUseRule.DaysAfterOpening(28));
    CourseId id = onSolution();
    world.receive(id, solution());
    world.pass(Duration.ofHours(2));
    world.report(id, ReportForm.at("2026-03-02", "10:30").mark("50").grade("1")).orThrow();

    world.setClock(newYork("2026-03-30T23:59:59"));
    assertThat(world.blocks(id)).doesNotContain(GuardRule.VIAL_OPEN_TOO_LONG);
    world.setClock(newYork("2026-03-31T00:00:00"));

    assertThat(world.blocks(id)).contains(GuardRule.VIAL_OPEN_TOO_LONG);
    assertThat(world.vials().uses(world.file(id)).values())
        .allMatch(use -> use.end().by().equals(new VialLimit.DaysOpen(28)));
  }

  @Test
  void a_later_opening_that_is_typed_does_not_make_a_vial_younger_than_its_first_dose() {
    world.openedLasts(new InUseRule.DaysAfterOpening(2));
    CourseId id = onSolution();
    EntryId vial = world.receive(id, solution());
    world.pass(Duration.ofHours(2));
    world.report(id, ReportForm.at("2026-03-02", "10:30").mark("50").grade("1")).orThrow();
    VialForm later = solution().opened("2026-03-04");
    world.vials().amend(Staff.EDUCATOR, id, vial, later.draft(), "he says so").orThrow();

    world.setClock(newYork("2026-03-05T00:00:00"));

    assertThat(world.blocks(id)).contains(GuardRule.VIAL_OPEN_TOO_LONG);
  }

  @Test
  void the_date_on_the_label_ends_a_vial_that_was_opened_late() {
    CourseId id = onSolution();
    world.receive(id, solution().beyondUse("2026-03-03").opened("2026-03-02").daysInUse("28"));

    world.setClock(newYork("2026-03-04T00:00:00"));

    assertThat(world.blocks(id)).containsExactly(GuardRule.VIAL_PAST_DATE);
  }

  @Test
  void the_day_on_which_it_was_opened_is_added_with_a_reason() {
    CourseId id = onSolution();
    EntryId vial = world.receive(id, solution().daysInUse("2"));
    world.setClock(newYork("2026-03-06T12:00:00"));
    assertThat(world.blocks(id)).isEmpty();
    VialDraft opened = solution().daysInUse("2").opened("2026-03-02").draft();

    assertThat(world.vials().amend(Staff.EDUCATOR, id, vial, opened, " ").faults())
        .containsExactly("Write the reason: it stays on record.");
    world.vials().amend(Staff.EDUCATOR, id, vial, opened, "he told the day").orThrow();

    assertThat(world.blocks(id)).containsExactly(GuardRule.VIAL_OPEN_TOO_LONG);
    assertThat(world.file(id).vials()).hasSize(1);
    assertThat(world.last(id).corrects()).contains(vial);
    assertThat(world.vials().amend(Staff.EDUCATOR, id, vial, opened, "again").faults())
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
            .openedAt("9h")
            .daysInUse("0");

    assertThat(receive(wrong).faults())
        .hasSize(6)
        .anyMatch(fault -> fault.startsWith("Enter the lot"))
        .anyMatch(fault -> fault.startsWith("alprostadil: "))
        .anyMatch(fault -> fault.startsWith("Beyond-use date: "))
        .anyMatch(fault -> fault.startsWith("Opened: "))
        .anyMatch(fault -> fault.startsWith("Opened at: "))
        .anyMatch(fault -> fault.startsWith("Days of use once opened"));
    assertThat(receive(right().beyondUse("")).faults())
        .containsExactly("Enter the beyond-use date: without it no dose may be drawn.");
    assertThat(receive(right().strength(Component.ALPROSTADIL, "")).faults())
        .containsExactly("Enter the strength of each component, as the label says it.");
    assertThat(receive(right().made("2029-01-01").opened("2026-03-01")).faults()).hasSize(2);
    assertThat(receive(right().openedAt("09:30")).faults())
        .containsExactly("Opened: enter the day too, or leave the time empty.");
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
