package rungwise.clinic.supply;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Stock;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.Volume;

/** A new vial after one that may have lost some of its strength, over any store. */
public abstract class NewStockContract {

  private TitrationWorld world;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.openWith(TitrationWorld.WEAK, "u100-1");
  }

  /** A solution whose first dose is 0.5 mL and whose next one is 1 mL. */
  private EntryId startSolution(String made) {
    EntryId vial = world.receive(course, weak("A").made(made));
    world.signProposed(course);
    return vial;
  }

  private static VialForm weak(String lot) {
    return VialForm.of(TitrationWorld.WEAK).lot(lot);
  }

  /** He had too little of 0.5 mL and was well on 1 mL of the same vial. */
  private void climb() {
    world.pass(Duration.ofDays(1));
    world
        .report(course, ReportForm.at("2026-03-02", "20:00").mark("50").grade("1").exactly("20"))
        .orThrow();
    world.signProposed(course);
    world.pass(Duration.ofDays(2));
    world.report(course, ReportForm.at("2026-03-04", "20:00").mark("100")).orThrow();
    assertThat(proposed()).contains(Volume.ofMicrolitres(1000));
  }

  private Optional<Volume> proposed() {
    return world.state(course).advice().decision().proposed();
  }

  @Test
  void a_new_vial_after_older_stock_begins_at_the_first_dose_again() {
    startSolution("2026-01-02");
    climb();
    world.signProposed(course);

    world.receive(course, weak("B").made("2026-03-04"));

    assertThat(world.blocks(course)).contains(GuardRule.NEW_STOCK);
    assertThat(world.state(course).advice().decision())
        .isEqualTo(new Decision.StepDown(Volume.ofMicrolitres(500)));
  }

  @Test
  void stock_of_unknown_age_counts_as_old() {
    startSolution("");
    climb();

    world.receive(course, weak("B").made("2026-03-04"));

    assertThat(proposed()).contains(Volume.ofMicrolitres(500));
  }

  @Test
  void a_new_vial_after_a_fresh_one_changes_nothing() {
    startSolution("2026-03-01");
    climb();
    world.signProposed(course);

    world.receive(course, weak("B").made("2026-03-04"));

    assertThat(proposed()).contains(Volume.ofMicrolitres(1000));
    assertThat(world.blocks(course)).doesNotContain(GuardRule.NEW_STOCK);
  }

  @Test
  void thirty_days_from_its_making_a_solution_is_fresh_and_the_day_after_it_is_not() {
    startSolution("2026-02-02");
    climb();
    world.receive(course, weak("B").made("2026-03-04"));
    assertThat(proposed()).contains(Volume.ofMicrolitres(1000));

    world.setClock(TitrationWorld.START);
    course = world.openWith(TitrationWorld.WEAK, "u100-1");
    startSolution("2026-02-01");
    climb();
    world.receive(course, weak("B").made("2026-03-04"));
    assertThat(proposed()).contains(Volume.ofMicrolitres(500));
  }

  @Test
  void an_addendum_leaves_a_vial_the_one_it_was() {
    EntryId vial = startSolution("2026-01-02");
    climb();
    world.signProposed(course);

    VialForm opened = weak("A").made("2026-01-02").opened("2026-03-01");
    world.vials().amend(Staff.EDUCATOR, course, vial, opened.draft(), "opened").orThrow();

    assertThat(proposed()).contains(Volume.ofMicrolitres(1000));
    assertThat(world.blocks(course)).doesNotContain(GuardRule.NEW_STOCK);
  }

  @Test
  void of_a_report_that_names_no_vial_the_stock_is_not_known() {
    startSolution("2026-03-01");
    world.pass(Duration.ofDays(1));

    world
        .report(
            course,
            ReportForm.at("2026-03-02", "20:00").mark("50").grade("1").exactly("20").vialNotKnown())
        .orThrow();

    assertThat(world.state(course).question().last().orElseThrow().stock())
        .isEqualTo(Stock.NOT_RECORDED);
    assertThat(world.state(course).advice().decision())
        .isEqualTo(new Decision.Repeat(Volume.ofMicrolitres(500)));
    assertThat(world.state(course).advice().reason().rule())
        .isEqualTo(TitrationRule.NEW_STOCK_RESTART);
  }

  @Test
  void what_is_dissolved_for_one_injection_is_fresh_only_from_a_vial_on_record() {
    course = world.openWith(SamplePreparations.ALPROSTADIL_20, "u100-1");
    world.signProposed(course);
    world.pass(Duration.ofDays(1));
    world.report(course, ReportForm.at("2026-03-02", "20:00").vialNotKnown()).orThrow();

    assertThat(world.state(course).question().last().orElseThrow().stock())
        .isEqualTo(Stock.NOT_RECORDED);
  }

  @Test
  void a_report_that_names_its_vial_counts_for_that_one() {
    EntryId old = startSolution("2026-01-02");
    world.receive(course, weak("B").made("2026-03-01"));
    ReportForm drawnFromOld =
        ReportForm.at("2026-03-02", "20:00").mark("50").grade("1").exactly("20").vial(old);
    world.pass(Duration.ofDays(1));

    world.report(course, drawnFromOld).orThrow();

    assertThat(world.state(course).advice().decision())
        .isEqualTo(new Decision.Repeat(Volume.ofMicrolitres(500)));
  }
}
