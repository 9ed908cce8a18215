package rungwise.clinic.fitting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.IntConsumer;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.InMemoryRecord;
import rungwise.clinic.forecast.ForecastMove;
import rungwise.clinic.past.PastHistories;
import rungwise.clinic.past.PastHistory;
import rungwise.clinic.past.PastInjection;
import rungwise.clinic.populations.InventedPopulations;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.fit.Workers;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** Which courses a fit is made from, and what becomes of it. */
final class FitRunsTest {

  private static final PreparationId ALPROSTADIL = SamplePreparations.ALPROSTADIL_20.id();
  private static final Instant FIRST = Instant.parse("2025-05-01T12:00:00Z");

  private final TitrationWorld world =
      new TitrationWorld(InMemoryRecord.ports(), new LabelReader());
  private final List<PastHistory> past = new ArrayList<>();
  private final Deque<Runnable> waiting = new ArrayDeque<>();
  private Supplier<FitWorkers> workers = Alone::new;
  private final FitRuns runs =
      new FitRuns(
          new FitPorts(
              world.titration()::all,
              new Kept(),
              world.populations(),
              id -> SamplePreparations.of(id.value()),
              () -> List.of(SamplePreparations.ALPROSTADIL_20),
              result -> "mu 1.%d of alprostadil-20".formatted(result.fit().courses()),
              () -> workers.get(),
              waiting::add,
              new ClinicTime(ZoneId.of("America/New_York"))));

  /** The histories of this test. */
  private final class Kept implements PastHistories {
    @Override
    public List<PastHistories.Kept> of(String recordKey) {
      return all().stream().filter(one -> one.history().recordKey().equals(recordKey)).toList();
    }

    @Override
    public List<PastHistories.Undone> undone(String recordKey) {
      return List.of();
    }

    @Override
    public List<PastHistories.Kept> all() {
      return past.stream().map(one -> new PastHistories.Kept(1, FIRST, "import", one)).toList();
    }

    @Override
    public void append(String importId, String source, PastHistory history, Instant at) {
      past.add(history);
    }

    @Override
    public int withdraw(String importId, Instant at, String reason) {
      return 0;
    }
  }

  /** One worker, or one that fails. */
  private static class Alone implements FitWorkers {
    @Override
    public void share(int count, Supplier<IntConsumer> work) {
      Workers.alone().share(count, work);
    }

    @Override
    public void close() {}
  }

  private static final class Failing extends Alone {
    @Override
    public void share(int count, Supplier<IntConsumer> work) {
      throw new IllegalStateException("bug: made up");
    }
  }

  private static FitDraft draft(boolean countsFiles, String... groups) {
    return new FitDraft(ALPROSTADIL.value(), Set.of(groups), "", "", countsFiles);
  }

  private ChosenCourses chosen(FitDraft draft) {
    return runs.choose(Staff.LEAD, draft).orThrow();
  }

  private void bringIn(String patient, String group, PastInjection... injections) {
    past.add(new PastHistory(patient, group, List.of(injections)));
  }

  private static PastInjection injection(int number, Optional<PastInjection.Setting> setting) {
    return new PastInjection(
        number + 1L,
        number,
        Volume.ofMicrolitres(200),
        1,
        Optional.of(1.0),
        Grade.USABLE,
        new SoftAfter.Exactly(TimeSpan.ofMinutes(30)),
        setting);
  }

  private static PastInjection of(int number, Preparation preparation) {
    return injection(
        number,
        Optional.of(
            new PastInjection.Setting(
                FIRST.plusSeconds(number * 86_400L), preparation.id(), "u100-1")));
  }

  private static PastInjection notNamed(int number) {
    return injection(number, Optional.empty());
  }

  /** Men as the model makes them, six injections each. */
  private void bringInMadeMen(int count, String group, Random random) {
    for (int man = 0; man < count; man++) {
      double requirement = 0.8 + 0.7 * random.nextGaussian();
      var injections = new ArrayList<PastInjection>();
      for (int number = 1; number <= 6; number++) {
        double surplus = Math.log(0.5 * number) - requirement;
        double logit = random.nextDouble();
        double x = 2.2 * surplus - Math.log(logit / (1 - logit));
        Grade grade =
            x > 1.5
                ? Grade.FULLY_FIRM
                : x > 0 ? Grade.USABLE : x > -1.5 ? Grade.FIRM_NOT_USABLE : Grade.FULLER;
        long minutes =
            Math.max(1, Math.round(Math.exp(3.8 + 0.5 * surplus + 0.5 * random.nextGaussian())));
        injections.add(
            new PastInjection(
                number + 1L,
                number,
                Volume.ofMicrolitres(50L * number),
                1,
                Optional.of(1.0),
                grade,
                grade.isUseful()
                    ? new SoftAfter.Exactly(TimeSpan.ofMinutes(minutes))
                    : new SoftAfter.NotKnown(),
                Optional.empty()));
      }
      past.add(new PastHistory(group + "-" + man, group, injections));
    }
  }

  @Test
  void a_course_counts_once_with_what_was_brought_in_for_it() {
    CourseId course = world.open();
    String number = world.file(course).patient().recordNumber();
    world.signProposed(course);
    world.report(course, ReportForm.at("2026-03-01", "10:00")).orThrow();
    bringIn(number, "vasculogenic", notNamed(1), notNamed(2));
    String group = world.file(course).opened().group().token();

    ChosenCourses with = chosen(draft(true, group));
    assertThat(with.courses().count()).isOne();
    assertThat(with.courses().trials())
        .isEqualTo(2 + world.state(course).question().history().injections().size());

    ChosenCourses without = chosen(draft(false, group));
    assertThat(without.courses().count()).isZero();
    assertThat(without.leftOut()).containsEntry(LeftOut.NOT_NAMED, 1);
    assertThat(without.isEnough()).isFalse();
  }

  @Test
  void every_man_who_does_not_count_is_counted_with_the_reason() {
    world.open();
    bringIn("A", "vasculogenic", of(1, SamplePreparations.ALPROSTADIL_20));
    bringIn("B", "psychogenic", of(1, SamplePreparations.ALPROSTADIL_20));
    bringIn("C", "of no group that is known", notNamed(1));
    bringIn("D", "vasculogenic", of(1, otherComponents()));
    bringIn(
        "E",
        "vasculogenic",
        of(1, SamplePreparations.ALPROSTADIL_40),
        of(2, otherComponents()),
        of(3, SamplePreparations.ALPROSTADIL_20));
    String ofWorld = "vasculogenic";

    ChosenCourses chosen = chosen(draft(true, ofWorld, "unknown"));

    assertThat(chosen.courses().count()).isEqualTo(2);
    assertThat(chosen.courses().trials()).isEqualTo(2);
    assertThat(chosen.leftOut())
        .containsEntry(LeftOut.OTHER_GROUP, 2)
        .containsEntry(LeftOut.OTHER_PREPARATION, 1)
        .containsEntry(LeftOut.ONLY_BEFORE_CHANGE, 1);
    assertThat(chosen.words())
        .startsWith("2 courses with 2 injections, begun on any day")
        .contains("Not counted: ", "2 courses of an aetiology that was not chosen");
  }

  private static Preparation otherComponents() {
    return SamplePreparations.all().stream()
        .filter(one -> one.ingredients().size() > 1)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void courses_are_chosen_by_the_day_on_which_they_began_in_the_clinics_zone() {
    bringIn("A", "vasculogenic", of(1, SamplePreparations.ALPROSTADIL_20));
    bringIn("B", "vasculogenic", notNamed(1));
    LocalDate day = LocalDate.of(2025, 5, 2);

    assertThat(begun(day, day).courses().count()).isOne();
    assertThat(begun(day, day).leftOut()).containsEntry(LeftOut.OTHER_DAYS, 1);
    assertThat(begun(day.plusDays(1), day.plusDays(2)).courses().count()).isZero();
    assertThat(begun(day.minusDays(2), day.minusDays(1)).courses().count()).isZero();
  }

  private ChosenCourses begun(LocalDate from, LocalDate to) {
    return chosen(
        new FitDraft(
            ALPROSTADIL.value(), Set.of("vasculogenic"), from.toString(), to.toString(), true));
  }

  @Test
  void only_the_programme_lead_chooses_runs_stops_and_signs() {
    FitDraft draft = draft(true, "vasculogenic");
    for (var actor : List.of(Staff.PRESCRIBER, Staff.EDUCATOR, Staff.ON_CALL, Staff.AUDITOR)) {
      assertThat(runs.choose(actor, draft).faults()).hasSize(1);
      assertThat(runs.start(actor, draft).faults()).hasSize(1);
      assertThat(runs.stop(actor).faults()).hasSize(1);
      assertThat(runs.sign(actor, "", "our-men", Set.of(ALPROSTADIL)).faults()).hasSize(1);
    }
    assertThat(runs.state()).isInstanceOf(FitState.None.class);
  }

  @Test
  void a_fit_that_was_stopped_has_no_result_and_another_may_be_run() {
    bringInMadeMen(70, "vasculogenic", new Random(5));
    runs.start(Staff.LEAD, draft(true, "vasculogenic")).orThrow();
    assertThat(runs.state()).isInstanceOf(FitState.Running.class);
    assertThat(runs.start(Staff.LEAD, draft(true, "vasculogenic")).faults()).hasSize(1);

    runs.stop(Staff.LEAD).orThrow();
    waiting.remove().run();

    assertThat(runs.state()).isInstanceOf(FitState.Stopped.class);
    assertThat(runs.sign(Staff.LEAD, "", "our-men", Set.of(ALPROSTADIL)).faults()).hasSize(1);
    runs.start(Staff.LEAD, draft(true, "vasculogenic")).orThrow();
    assertThat(runs.state()).isInstanceOf(FitState.Running.class);
  }

  @Test
  void a_fit_that_breaks_off_says_so_and_tells_its_thread() {
    bringInMadeMen(3, "vasculogenic", new Random(5));
    workers = Failing::new;
    runs.start(Staff.LEAD, draft(true, "vasculogenic")).orThrow();

    Runnable run = waiting.remove();
    assertThatThrownBy(run::run).hasMessageContaining("made up");

    assertThat(runs.state()).isInstanceOf(FitState.Failed.class);
  }

  @Test
  void a_fit_says_what_would_change_and_is_signed_once_nothing_speaks_against_it() {
    world
        .populations()
        .signBroughtIn(Staff.LEAD, "before", InventedPopulations.WEAK, Set.of(ALPROSTADIL))
        .orThrow();
    CourseId course = world.open();
    String group = world.file(course).opened().group().token();
    bringInMadeMen(80, group, new Random(5));
    runs.start(Staff.LEAD, draft(true, group)).orThrow();
    waiting.remove().run();

    FitResult result = ((FitState.Done) runs.state()).result();
    assertThat(result.doubts()).isEmpty();
    assertThat(result.predicted().orElseThrow().courses()).isEqualTo(80);
    var change = runs.change(result).orElseThrow();
    assertThat(change.inUse()).isEqualTo("before version 1");
    // The invented population has mu 3: half usable at 0.1 e^3 = 2.0 mL.
    assertThat(change.lines().stream().filter(line -> line.now().startsWith("2 mL"))).isNotEmpty();
    assertThat(change.lines().stream().filter(line -> line.then().equals("says nothing")))
        .hasSize(4);
    List<ForecastMove> moves = runs.moves(result);
    assertThat(moves).hasSize(1);
    double now = moves.getFirst().now().orElseThrow().useful().middle();
    double then = moves.getFirst().then().orElseThrow().useful().middle();
    assertThat(then).isGreaterThan(now);

    assertThat(
            runs.sign(Staff.LEAD, runs.fingerprint(result), "our-men", Set.of(ALPROSTADIL))
                .orThrow()
                .key())
        .isEqualTo("our-men version 1");
  }

  @Test
  void a_fit_is_not_signed_by_somebody_who_looked_at_another() {
    bringInMadeMen(70, "vasculogenic", new Random(5));
    runs.start(Staff.LEAD, draft(true, "vasculogenic")).orThrow();
    waiting.remove().run();
    String looked = runs.fingerprint(((FitState.Done) runs.state()).result());
    bringInMadeMen(10, "psychogenic", new Random(6));
    runs.start(Staff.LEAD, draft(true, "vasculogenic", "psychogenic")).orThrow();
    waiting.remove().run();

    assertThat(runs.sign(Staff.LEAD, looked, "our-men", Set.of(ALPROSTADIL)).faults())
        .containsExactly(
            "Another fit was run since this page was opened, so nothing was signed. Read the new"
                + " one.");
    assertThat(world.populations().signed()).isEmpty();
  }

  @Test
  void too_few_courses_are_a_doubt_and_are_not_signed() {
    bringInMadeMen(12, "vasculogenic", new Random(5));
    runs.start(Staff.LEAD, draft(true, "vasculogenic")).orThrow();
    waiting.remove().run();

    FitResult result = ((FitState.Done) runs.state()).result();
    assertThat(result.doubts().stream().map(DoubtWords::of))
        .contains("There are only 12 courses: a fit is offered for signing from 60 on.");
    assertThat(runs.sheet(result)).isEmpty();
    assertThat(
            runs.sign(Staff.LEAD, runs.fingerprint(result), "our-men", Set.of(ALPROSTADIL))
                .faults())
        .hasSize(1);
  }
}
