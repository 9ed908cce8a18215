package rungwise.dosing.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rungwise.dosing.draws.Covariance;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.response.Population;
import rungwise.dosing.response.Trial;
import rungwise.inference.Ascent;

/** The fit against reference/fit_scipy.txt, ordinal::clmm and lme4::lmer, and what it doubts. */
final class FittingTest {

  /** Among these three were refused while rounding could keep a search from its end. */
  private static final int WORLDS_THAT_SETTLE = 70;

  private static final Population CLEAN =
      new Population(
          1.29,
          Map.of("mixed", 0.0, "vasculogenic", 0.1, "psychogenic", -0.74),
          1.69,
          3.0,
          -1.5,
          1.5,
          3.69,
          0.5,
          0.45);

  private static final Population USUAL =
      new Population(0.4, Map.of("mixed", 0.0, "other", 0.3), 0.8, 2.2, -1.4, 1.6, 3.8, 0.6, 0.45);

  private static Fit fit(Courses courses, String reference) {
    return Fitting.fit(courses, reference, Workers.alone(), pass -> {});
  }

  @ParameterizedTest
  @ValueSource(strings = {"n60", "n300", "n1000", "n5000"})
  void it_is_that_of_dense_sums_by_scipy(String name) {
    Courses courses = ReferenceFits.courses(name);
    ReferenceFits.Printed expected = ReferenceFits.of("fit_scipy", name);
    String reference = ReferenceFits.referenceOf("fit_scipy", name);

    Fit fit = fit(courses, reference);

    assertThat(Fitting.mostFrequentGroup(courses)).contains(reference);
    assertThat(fit.parameters()).hasSize(expected.estimates().size() - 1);
    assertThat(fit.log()).isCloseTo(expected.of("logLik").value(), within(1e-6));
    fit.parameters()
        .forEach(
            (parameter, estimate) -> {
              ReferenceFits.Estimate wanted = expected.of(parameter);
              assertThat(estimate.value())
                  .as(parameter)
                  .isCloseTo(wanted.value(), near(wanted.value()));
              assertThat(estimate.error().orElseThrow())
                  .as("error of " + parameter)
                  .isCloseTo(wanted.error(), near(wanted.error()));
            });
  }

  private static Offset<Double> near(double value) {
    return within(1e-6 * Math.abs(value));
  }

  @Test
  void parameters_go_together_as_scipy_finds() {
    Covariance covariance = fit(ReferenceFits.courses("n60"), "neurogenic").covariance();

    assertThat(covariance.names()).hasSize(9);
    for (ReferenceSpread.Together both : ReferenceSpread.together("maximum")) {
      int row = covariance.names().indexOf(both.one());
      int column = covariance.names().indexOf(both.other());
      assertThat(covariance.rows().get(row).get(column))
          .as(both.one() + " with " + both.other())
          .isCloseTo(both.value(), near(both.value()));
    }
  }

  @Test
  void grades_alone_are_fitted_as_by_clmm() {
    ReferenceFits.Printed expected = ReferenceFits.of("fit_clmm", "grades");

    Fit fit = fit(ReferenceFits.courses("grades"), "vasculogenic");

    assertThat(fit.population()).isEmpty();
    assertThat(fit.doubts()).containsExactly(new Doubt.NoDurations());
    assertThat(fit.log()).isCloseTo(expected.of("logLik").value(), within(1e-6));
    fit.parameters()
        .forEach(
            (parameter, estimate) ->
                assertThat(estimate.value())
                    .as(parameter)
                    .isCloseTo(expected.of(parameter).value(), within(1e-5)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"n60", "n300", "n1000", "n5000"})
  void away_from_the_top_the_likelihood_is_that_of_dense_sums_too(String name) {
    Courses courses = ReferenceFits.courses(name);
    var layout =
        new Layout(
            courses.groups(), ReferenceFits.referenceOf("fit_scipy", name), Layout.Scale.PLAIN);
    var marginal = new Marginal(courses, layout, Workers.alone(), /* stride= */ 1);
    for (String point : List.of(".at1", ".at2")) {
      ReferenceFits.Printed printed = ReferenceFits.of("fit_scipy", name + point);
      double[] natural =
          layout.names().stream().mapToDouble(one -> printed.of(one).value()).toArray();

      assertThat(marginal.log(layout.scaled(natural)))
          .isCloseTo(printed.of("logLik").value(), within(1e-6));
    }
  }

  /** Without steepness a grade says nothing of the requirement: a mixed linear model is left. */
  @Test
  void durations_alone_are_fitted_as_by_lme4() {
    ReferenceFits.Printed expected = ReferenceFits.of("fit_lme4", "durations");
    Courses courses = ReferenceFits.courses("durations", group -> "all");
    var layout = new Layout(courses.groups(), "all", Layout.Scale.PLAIN);
    var marginal = new Marginal(courses, layout, Workers.alone(), /* stride= */ 1);
    double[] start = layout.scaled(new double[] {0, 0.8, 0, -1, 1, 4, 0.5, 0.5});
    var ranges = new Ranges(layout);
    ranges.low()[0] = 0;
    ranges.high()[0] = 0;
    ranges.hold(Point.BETA, start[layout.place(Point.BETA)]);
    ranges.hold(Point.C2, start[layout.place(Point.C2)]);
    ranges.hold(Point.C4, start[layout.place(Point.C4)]);

    Ascent.Top top =
        Ascent.search(marginal::curved, start, ranges.low(), ranges.high(), /* enough= */ 1e-12);

    double[] found = layout.natural(top.point());
    double[] logChances = logChancesWithoutSteepness();
    double grades = 0;
    for (int trial = 0; trial < courses.trials(); trial++) {
      grades += logChances[courses.grade(trial)];
    }
    // The reference prints 15 digits; its own search stops at about 1e-6 of an estimate.
    assertThat(top.curved().value() - grades)
        .isCloseTo(expected.of("logLik").value(), within(1e-6));
    assertThat(found[layout.place(Point.D0)])
        .isCloseTo(expected.of("intercept").value(), within(1e-5));
    assertThat(found[layout.place(Point.D1)]).isCloseTo(expected.of("slope").value(), within(1e-5));
    assertThat(found[layout.place(Point.TAU)])
        .isCloseTo(expected.of("residual_deviation").value(), within(1e-5));
    assertThat(found[layout.place(Point.OMEGA)] * found[layout.place(Point.D1)])
        .isCloseTo(expected.of("intercept_deviation").value(), within(1e-5));
  }

  /** Of grades 1 to 4 with c2 = -1 and c4 = 1. */
  private static double[] logChancesWithoutSteepness() {
    double atLeast2 = 1 / (1 + Math.exp(-1));
    double atLeast4 = 1 / (1 + Math.exp(1));
    return new double[] {
      Double.NaN,
      Math.log(1 - atLeast2),
      Math.log(atLeast2 - 0.5),
      Math.log(0.5 - atLeast4),
      Math.log(atLeast4)
    };
  }

  @Test
  void any_number_of_threads_finds_the_same_to_the_last_digit() {
    Courses courses = ReferenceFits.courses("n1000");

    String reference = Fitting.mostFrequentGroup(courses).orElseThrow();
    Fit alone = fit(courses, reference);
    Fit three = Fitting.fit(courses, reference, ThreeThreads::share, pass -> {});

    assertThat(three).isEqualTo(alone);
  }

  @Test
  void few_courses_and_small_groups_are_doubted() {
    var made = new MadeCourses(5, USUAL);
    for (int i = 0; i < 30; i++) {
      made.add(6);
    }
    List<MadeCourses.Course> courses = new ArrayList<>(made.all());
    courses.add(new MadeCourses.Course("rare", made.all().getFirst().trials()));

    Fit fit = fit(MadeCourses.of(courses), "mixed");

    assertThat(fit.doubts()).contains(new Doubt.FewCourses(31), new Doubt.SmallGroup("rare", 1));
    assertThat(fit.doubts()).isNotEmpty();
    assertThat(fit.population()).isPresent();
  }

  @Test
  void a_fit_of_many_courses_is_offered_for_signing() {
    Fit fit = fit(ReferenceFits.courses("n300"), "vasculogenic");

    assertThat(fit.doubts()).isEmpty();
    assertThat(fit.doubts()).isEmpty();
  }

  @Test
  void durations_that_fall_with_the_dose_leave_d1_at_its_end() {
    Courses.Builder builder = Courses.builder();
    for (MadeCourses.Course course : made(100).all()) {
      builder.course(course.group());
      for (Trial trial : course.trials()) {
        builder.trial(
            trial.logDose(), trial.grade(), new Lasted.Exactly(Math.exp(4 - trial.logDose())));
      }
    }

    Fit fit = fit(builder.build(), "mixed");

    assertThat(fit.doubts()).contains(new Doubt.AtBound("d1"));
    assertThat(Optional.ofNullable(fit.parameters().get("d1")))
        .contains(new Fit.Estimate(0, OptionalDouble.empty()));
    assertThat(Optional.ofNullable(fit.parameters().get("omega")).orElseThrow().error())
        .isPresent();
  }

  @Test
  void grades_that_never_come_and_groups_without_a_choice_are_doubted() {
    Courses.Builder builder = Courses.builder();
    for (MadeCourses.Course course : made(100).all()) {
      builder.course(course.group());
      for (Trial trial : course.trials()) {
        boolean isOther = course.group().equals("other");
        Grade grade = trial.grade() == Grade.FULLY_FIRM ? Grade.USABLE : trial.grade();
        builder.trial(trial.logDose(), isOther ? Grade.FULLER : grade, trial.lasted());
      }
    }

    Fit fit = fit(builder.build(), "mixed");

    assertThat(fit.doubts()).contains(new Doubt.MissingGrade(4), new Doubt.SeparatedGroup("other"));
    assertThat(fit.population()).as("within what a population may be").isPresent();
  }

  private static MadeCourses made(int count) {
    var made = new MadeCourses(5, USUAL);
    for (int i = 0; i < count; i++) {
      made.add(6);
    }
    return made;
  }

  /** A search that stands still has arrived, however small the steps that are left. */
  @Test
  void no_good_courses_are_refused_because_the_search_did_not_settle() {
    for (int world = 0; world < WORLDS_THAT_SETTLE; world++) {
      var made = new MadeCourses(5000 + world, CLEAN);
      for (int man = 0; man < 200 + world % 5 * 200; man++) {
        made.add(4 + man % 5);
      }
      Fit fit = Fitting.fit(leaking(made, world), "mixed", Workers.alone(), pass -> {});

      assertThat(fit.doubts()).as("world %d, %s", world, fit.log()).isEmpty();
    }
  }

  /** The same with one injection of twenty lost, of which nobody knows. */
  private static Courses leaking(MadeCourses made, int world) {
    var random = new Random(world);
    return MadeCourses.of(
        made.all().stream()
            .map(
                course ->
                    new MadeCourses.Course(
                        course.group(),
                        course.trials().stream()
                            .map(one -> random.nextInt(20) == 0 ? lost(one) : one)
                            .toList()))
            .toList());
  }

  private static Trial lost(Trial one) {
    return new Trial(one.logDose(), Grade.NONE, new Lasted.NotRecorded());
  }
}
