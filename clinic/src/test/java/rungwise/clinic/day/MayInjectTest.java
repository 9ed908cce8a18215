package rungwise.clinic.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rungwise.clinic.clock.ClockBelief;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.InMemoryRecord;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.screening.ScreeningForm;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.sheet.NowView;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.supply.VialForm;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.SignForms;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.quantities.Volume;

/** The one answer to "may he inject now?" against what it is made of, over random records. */
final class MayInjectTest {

  private static final int RECORDS = 150;
  private static final int STEPS = 14;

  private final TitrationWorld world =
      new TitrationWorld(InMemoryRecord.ports(), new LabelReader());
  private final Map<NowView.Sign, Integer> seen = new EnumMap<>(NowView.Sign.class);
  private CourseId course = world.open();

  /** What the prescriber was shown when he signed last; what was reported since voids it. */
  private Optional<Advice> signedInFaceOf = Optional.empty();

  @Test
  void the_answer_agrees_with_checks_advice_place_and_signature() {
    for (int seed = 0; seed < RECORDS; seed++) {
      var random = new Random(seed);
      course = world.open();
      world.makeReady(course);
      testInTheClinic();
      signedInFaceOf = Optional.empty();
      for (int step = 0; step < STEPS; step++) {
        act(random);
        check("seed " + seed + ", step " + step);
      }
    }
    assertThat(seen).containsOnlyKeys(NowView.Sign.values());
    assertThat(seen.values()).allMatch(times -> times > STEPS);
  }

  /** A first dose in the clinic, without which nobody injects at home. */
  private void testInTheClinic() {
    var time = world.room().time();
    world.signProposed(course);
    ReportForm seen =
        ReportForm.at(time.dateText(world.now()), time.timeText(world.now())).exactly("40");
    world.pass(Duration.ofDays(2));
    world.report(course, seen).orThrow();
  }

  private void act(Random random) {
    switch (random.nextInt(10)) {
      case 0, 1, 2 -> sign(random);
      case 3, 4, 5 -> report(random);
      case 6 -> world.pass(Duration.ofHours(random.nextInt(72)));
      case 7 -> world.pass(Duration.ofDays(2));
      case 8 -> around(random);
      default -> takeBack(random);
    }
  }

  private void sign(Random random) {
    Advice shown = world.state(course).advice();
    var rungs = world.state(course).question().ladder().rungs();
    long any = rungs.get(random.nextInt(rungs.size())).microlitres();
    boolean isProposed = random.nextBoolean() && shown.decision().proposed().isPresent();
    var draft = isProposed ? world.proposed(course) : world.instead(course, any);
    boolean isHome = random.nextBoolean();
    if (world.sign(course, isHome ? SignForms.atHome(draft) : draft).found().isPresent()) {
      signedInFaceOf = Optional.of(shown);
    }
  }

  private void report(Random random) {
    var time = world.room().time();
    long marks =
        world
            .file(course)
            .signedDose()
            .map(signed -> signed.fact().volume().microlitres() / 10)
            .orElse(12L);
    ReportForm form =
        ReportForm.at(time.dateText(world.now()), time.timeText(world.now()))
            .mark(Long.toString(marks))
            .grade(Integer.toString(random.nextInt(5)));
    world.pass(Duration.ofHours(6));
    ReportForm said =
        switch (random.nextInt(6)) {
          case 0 -> form.exactly("100");
          case 1 -> form.exactly("150");
          case 2 -> random.nextInt(4) == 0 ? form.exactly("250") : form.exactly("70");
          case 3 -> random.nextInt(4) == 0 ? form.atLeast("200") : form.soft("not_known");
          default -> form.exactly("40");
        };
    if (world
        .report(course, random.nextBoolean() ? said : said.place("home"))
        .found()
        .isPresent()) {
      signedInFaceOf = Optional.empty();
    }
  }

  private void around(Random random) {
    switch (random.nextInt(4)) {
      case 0 -> world.receive(course, VialForm.of(SamplePreparations.ALPROSTADIL_40));
      case 1 ->
          world
              .screenings()
              .answer(Staff.EDUCATOR, course, ScreeningForm.one(Condition.SICKLE_CELL, Answer.YES));
      default -> world.receive(course, VialForm.of(SamplePreparations.ALPROSTADIL_20));
    }
  }

  /** A report turns out to have been another one. */
  private void takeBack(Random random) {
    var reports = world.file(course).reports();
    if (reports.isEmpty()) {
      return;
    }
    var last = reports.get(random.nextInt(reports.size()));
    EntryId entry = last.entry().id();
    var time = world.room().time();
    InjectionReported said = last.fact();
    ReportForm form =
        ReportForm.at(time.dateText(said.injectedAt()), time.timeText(said.injectedAt()))
            .mark(Long.toString(said.drawn().microlitres() / 10))
            .exactly("45");
    if (world.report(course, form.correcting(entry, "a slip")).found().isPresent()) {
      signedInFaceOf = Optional.empty();
    }
  }

  private void check(String where) {
    CourseState state = world.state(course);
    CourseView view = new CourseViews(world.room().time(), account -> "somebody").of(state);
    boolean may = mayInject(state);
    seen.merge(view.now().sign(), 1, Integer::sum);

    assertThat(view.day().now().isYes()).as(where + ": " + view.day().now()).isEqualTo(may);
    assertThat(view.isClear()).as(where).isEqualTo(may);
    assertThat(view.now().dose().isPresent()).as(where).isEqualTo(may);
    if (view.day().now() instanceof MayInject.Yes yes) {
      DoseSigned signed = state.file().signedDose().orElseThrow().fact();
      assertThat(yes.place()).as(where).isEqualTo(signed.place());
      assertThat(yes.signed()).as(where).isEqualTo(signed.volume());
      assertThat(view.now().sign())
          .as(where)
          .isEqualTo(yes.place() == Place.HOME ? NowView.Sign.YES : NowView.Sign.CLINIC_ONLY);
    }
    boolean isSuspended =
        state.file().signedDose().isPresent()
            && state.mayInject().verdicts().stream().anyMatch(Verdict::isHardStop);
    assertThat(view.signed().filter(CourseView.SignedLine::isSuspended).isPresent())
        .as(where)
        .isEqualTo(isSuspended);
    assertThat(isSuspended && view.day().need().compareTo(Need.SUSPENDED) > 0).as(where).isFalse();
  }

  /** What must be so for a yes, in plain words. */
  private boolean mayInject(CourseState state) {
    Optional<DoseSigned> signed = state.file().signedDose().map(written -> written.fact());
    Decision decision = state.advice().decision();
    boolean isDecided =
        signedInFaceOf.filter(shown -> shown.decision().equals(decision)).isPresent();
    boolean isOpen =
        state.question().history().openEmergencies().stream()
            .anyMatch(one -> one.soft() instanceof SoftAfter.AtLeast);
    return signed.isPresent()
        && !isOpen
        && state.mayInject().blocks().isEmpty()
        && (isDecided
            || decision
                .proposed()
                .filter(volume -> !volume.isLessThan(signed.get().volume()))
                .isPresent());
  }

  private MayInject now() {
    return MayInject.of(
        world.state(course), world.state(course).advice(), world.state(course).mayInject());
  }

  private void said(String grade, String minutes) {
    var time = world.room().time();
    ReportForm form =
        ReportForm.at(time.dateText(world.now()), time.timeText(world.now())).grade(grade);
    world.pass(Duration.ofDays(2));
    world.report(course, form.exactly(minutes)).orThrow();
  }

  @Test
  void without_a_signature_nothing_is_signed_and_nothing_stops_him_for_good() {
    assertThat(now()).isEqualTo(new MayInject.NotSigned());
  }

  @Test
  void a_higher_dose_is_named_beside_the_signed_one_only_where_one_is_proposed() {
    world.signProposed(course);
    said("4", "40");
    assertThat(((MayInject.Yes) now()).higher()).isEmpty();

    course = world.open();
    world.signProposed(course);
    said("1", "10");
    assertThat(((MayInject.Yes) now()).higher()).contains(Volume.ofMicrolitres(250));
  }

  /** Over an hour: nothing is proposed, a prescriber has to decide, and then he has. */
  @Test
  void where_nothing_is_proposed_a_prescriber_has_to_decide() {
    world.signProposed(course);
    said("3", "70");
    assertThat(world.state(course).advice().decision().proposed()).isEmpty();
    assertThat(now()).isEqualTo(new MayInject.Undecided());
  }

  @Test
  void nobody_may_inject_by_a_clock_that_is_wrong() {
    world.signProposed(course);
    said("4", "40");
    assertThat(now().isYes()).isTrue();

    world.judgeClockBy(() -> new ClockBelief.Wrong(List.of()));
    assertThat(now()).isEqualTo(new MayInject.Stopped(MayInject.Why.CLOCK_NOT_KNOWN));
  }

  @Test
  void an_erection_that_is_not_over_is_said_before_all_else() {
    world.signProposed(course);
    world.pass(Duration.ofMinutes(54));
    world.told(course, ReportForm.at("2026-03-02", "10:00").atLeast("54")).orThrow();

    assertThat(now()).isEqualTo(new MayInject.Stopped(MayInject.Why.NOT_OVER));
  }
}
