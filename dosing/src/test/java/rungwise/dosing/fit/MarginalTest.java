package rungwise.dosing.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.response.Population;
import rungwise.dosing.response.Requirement;
import rungwise.dosing.response.Trial;
import rungwise.inference.Curved;

/** The sum over courses and its derivatives. */
final class MarginalTest {

  private static final Layout LAYOUT =
      new Layout(List.of("mixed", "other", "third"), "other", Layout.Scale.PLAIN);
  private static final double[] NATURAL = {0.4, 0.3, -0.5, 0.8, 2.2, -1.4, 1.6, 3.8, 0.6, 0.45};

  private static Population population(double omega, double beta, double tau) {
    return new Population(
        0.4,
        Map.of("mixed", 0.3, "other", 0.0, "third", -0.5),
        omega,
        beta,
        -1.4,
        1.6,
        3.8,
        0.6,
        tau);
  }

  private static Marginal marginal(Courses courses) {
    List<String> groups = courses.groups();
    return new Marginal(
        courses, new Layout(groups, "other", Layout.Scale.PLAIN), Workers.alone(), /* stride= */ 1);
  }

  private static MadeCourses made(Population population, int count) {
    var made = new MadeCourses(7, population);
    for (int i = 0; i < count; i++) {
      made.add(i % 12);
    }
    return made;
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3})
  void the_probability_of_each_course_is_that_of_the_forecasts(int hardness) {
    // Forecasts are checked against dense sums of SciPy: ForecastGoldenTest.
    double omega = List.of(0.3, 0.8, 1.6, 2.3).get(hardness);
    double beta = List.of(1.0, 2.2, 4.0, 6.0).get(hardness);
    double tau = List.of(0.8, 0.45, 0.3, 0.2).get(hardness);
    Population population = population(omega, beta, tau);
    var made = made(population, 300);
    double[] natural = NATURAL.clone();
    natural[3] = omega;
    natural[4] = beta;
    natural[9] = tau;

    for (MadeCourses.Course course : made.all()) {
      Courses courses = MadeCourses.of(List.of(course));
      double[] own = natural.clone();
      own[0] = population.meanOf(course.group()).orElseThrow();
      double[] alone = new double[Point.COUNT];
      alone[0] = own[0];
      System.arraycopy(own, 3, alone, 1, Point.COUNT - 1);
      var layout = new Layout(courses.groups(), course.group(), Layout.Scale.PLAIN);
      double log =
          new Marginal(courses, layout, Workers.alone(), /* stride= */ 1).log(layout.scaled(alone));
      double expected =
          Requirement.of(population, course.group(), course.trials()).logProbabilityOfTrials();

      // The largest difference seen in these 1200 courses was 1.4e-9, at beta 6 and omega 2.3.
      assertThat(log).as("%s", course).isCloseTo(expected, within(1e-8));
    }
  }

  @Test
  void both_derivatives_are_those_of_central_differences() {
    Marginal marginal = marginal(made(population(0.8, 2.2, 0.45), 120).courses());
    double[] scaled = marginal.layout().scaled(NATURAL);
    Curved curved = marginal.curved(scaled);

    assertThat(curved.value()).isCloseTo(marginal.log(scaled), within(1e-8));
    for (int i = 0; i < scaled.length; i++) {
      double[] more = scaled.clone();
      double[] less = scaled.clone();
      more[i] += 1e-4;
      less[i] -= 1e-4;
      Curved above = marginal.curved(more);
      Curved below = marginal.curved(less);
      // The third derivative over 6, some thousands, times the square of the step.
      assertThat(curved.gradient()[i])
          .as(marginal.layout().names().get(i))
          .isCloseTo((above.value() - below.value()) / 2e-4, within(1e-4));
      for (int j = 0; j < scaled.length; j++) {
        assertThat(curved.hessian()[i][j])
            .as(marginal.layout().names().get(i) + " and " + marginal.layout().names().get(j))
            .isCloseTo((above.gradient()[j] - below.gradient()[j]) / 2e-4, within(1e-3));
      }
    }
  }

  @Test
  void the_order_of_courses_does_not_matter() {
    List<MadeCourses.Course> courses = made(population(0.8, 2.2, 0.45), 300).all();
    List<MadeCourses.Course> shuffled = new ArrayList<>(courses);
    Collections.shuffle(shuffled, new Random(3));
    double[] scaled = LAYOUT.scaled(NATURAL);

    // Sums of 300 numbers of order ten, in another order.
    assertThat(marginal(MadeCourses.of(shuffled)).log(scaled))
        .isCloseTo(marginal(MadeCourses.of(courses)).log(scaled), within(1e-10));
  }

  @Test
  void a_course_without_trials_adds_nothing() {
    List<MadeCourses.Course> courses = made(population(0.8, 2.2, 0.45), 30).all();
    List<MadeCourses.Course> more = new ArrayList<>(courses);
    more.add(new MadeCourses.Course("mixed", List.of()));
    double[] scaled = LAYOUT.scaled(NATURAL);

    Curved without = marginal(MadeCourses.of(courses)).curved(scaled);
    Curved with = marginal(MadeCourses.of(more)).curved(scaled);

    assertThat(with.value()).isCloseTo(without.value(), within(1e-10));
    // The integral of a normal curve and its derivatives, to the accuracy of the sum.
    assertThat(with.gradient()).containsExactly(without.gradient(), within(1e-9));
  }

  @Test
  void men_who_are_all_alike_leave_plain_ordinal_and_linear_regression() {
    List<MadeCourses.Course> courses = made(population(0.8, 2.2, 0.45), 100).all();
    Courses.Builder builder = Courses.builder();
    double expected = 0;
    for (MadeCourses.Course course : courses) {
      builder.course(course.group());
      double mean = population(0.8, 2.2, 0.45).meanOf(course.group()).orElseThrow();
      for (Trial trial : course.trials()) {
        boolean isExact = trial.lasted() instanceof Lasted.Exactly;
        Lasted lasted = isExact ? trial.lasted() : new Lasted.NotRecorded();
        builder.trial(trial.logDose(), trial.grade(), lasted);
        expected += logChance(trial.grade(), 2.2 * (trial.logDose() - mean));
        if (trial.grade().isUseful() && lasted instanceof Lasted.Exactly(double minutes)) {
          double e = (Math.log(minutes) - 3.8 - 0.6 * (trial.logDose() - mean)) / 0.45;
          expected -= e * e / 2 + Math.log(0.45 * minutes * Math.sqrt(2 * Math.PI));
        }
      }
    }
    double[] natural = NATURAL.clone();
    natural[3] = 1e-6;

    double log = marginal(builder.build()).log(LAYOUT.scaled(natural));

    // Half the square of omega times the squared slopes of 100 courses, some ten thousand.
    assertThat(log).isCloseTo(expected, within(1e-7));
  }

  /** Of a grade where the logistic surplus over c_3 is given, by its definition. */
  private static double logChance(Grade grade, double surplus) {
    double[] cuts = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, -1.4, 0, 1.6, 1e9};
    int number = Math.max(1, grade.number());
    return Math.log(
        1 / (1 + Math.exp(cuts[number] - surplus))
            - 1 / (1 + Math.exp(cuts[number + 1] - surplus)));
  }
}
