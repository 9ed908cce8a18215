package rungwise.dosing.predictive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Forecast;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.response.Population;
import rungwise.dosing.response.Requirement;
import rungwise.dosing.response.Trial;

final class StepsAheadTest {

  /** Of 14,436 probabilities the farthest apart were 4.4e-12. */
  private static final double AGREES = 1e-10;

  private static final double CERTAIN = 1e-12;

  private static final Population POPULATION =
      new Population(0.75, Map.of("mixed", 0.0), 0.8, 2.2, -1.6, 1.9, Math.log(45), 0.55, 0.5);

  private static double[] numbers(Ahead ahead) {
    return new double[] {
      ahead.atLeast2(),
      ahead.useful(),
      ahead.atLeast4(),
      ahead.useful60(),
      ahead.useful120(),
      ahead.useful240()
    };
  }

  @Test
  void each_report_is_foreseen_as_dense_sums_foresee_it() {
    List<ReferenceSteps.Course> courses = ReferenceSteps.courses();
    double worst = 0;

    assertThat(courses.stream().mapToInt(course -> course.trials().size()).sum()).isEqualTo(2406);
    for (ReferenceSteps.Course course : courses) {
      List<Ahead> foreseen = StepsAhead.of(course.population(), course.group(), course.trials());
      for (int i = 0; i < foreseen.size(); i++) {
        double[] ours = numbers(foreseen.get(i));
        List<Double> theirs = course.expected().get(i);
        for (int j = 0; j < ours.length; j++) {
          worst = Math.max(worst, Math.abs(ours[j] - theirs.get(j)));
        }
      }
    }
    assertThat(worst).isLessThan(AGREES);
  }

  /** The law of total probability: what is foreseen now is the mean of what will be. */
  @Test
  void a_report_moves_what_is_foreseen_and_its_mean_over_all_reports_does_not() {
    Trial next = new Trial(0.9, Grade.USABLE, new Lasted.NotRecorded());
    Ahead before = StepsAhead.of(POPULATION, "mixed", List.of(next)).getFirst();
    Ahead first = StepsAhead.of(POPULATION, "mixed", List.of(report(Grade.USABLE))).getFirst();
    double[] chances = {
      1 - first.atLeast2(),
      first.atLeast2() - first.useful(),
      first.useful() - first.atLeast4(),
      first.atLeast4()
    };
    double[] mean = new double[numbers(before).length];
    for (int grade = 1; grade <= chances.length; grade++) {
      Trial report = report(Grade.of(grade).orElseThrow());
      double[] after = numbers(StepsAhead.of(POPULATION, "mixed", List.of(report, next)).getLast());
      for (int i = 0; i < mean.length; i++) {
        mean[i] += chances[grade - 1] * after[i];
      }
    }

    assertThat(mean).containsExactly(numbers(before), within(CERTAIN));
  }

  private static Trial report(Grade grade) {
    return new Trial(0.4, grade, new Lasted.NotRecorded());
  }

  @Test
  void reports_far_from_what_the_group_holds_likely_are_followed() {
    Trial long4 = new Trial(0, Grade.FULLY_FIRM, new Lasted.Between(3000, 3600));
    Trial exact = new Trial(0, Grade.FULLY_FIRM, new Lasted.Exactly(3000));
    List<Trial> trials = IntStream.range(0, 40).mapToObj(i -> i % 2 == 0 ? long4 : exact).toList();
    Requirement requirement = Requirement.of(POPULATION, "mixed", trials.subList(0, 39));
    Forecast expected = requirement.forecast(0);

    Ahead ahead = StepsAhead.of(POPULATION, "mixed", trials).getLast();

    assertThat(requirement.mean()).isLessThan(0.75 - 8 * 0.8);
    assertThat(ahead.useful()).isCloseTo(expected.useful(), within(AGREES));
    assertThat(ahead.useful240()).isCloseTo(expected.useful240(), within(AGREES));
  }

  @Test
  void without_trials_nothing_is_foreseen_and_an_unknown_group_is_refused() {
    assertThat(StepsAhead.of(POPULATION, "mixed", List.of())).isEmpty();
    assertThatThrownBy(() -> StepsAhead.of(POPULATION, "other", List.of()))
        .hasMessage("bug: no group other");
  }

  @Test
  void a_grade_is_found_by_its_part() {
    var ahead = new Ahead(0.75, 0.5, 0.25, 0.4, 0.2, 0.1, 0, 0);

    assertThat(DoubleStream.of(0, 0.25, 0.5, 0.75, 1).mapToInt(ahead::gradeAt))
        .containsExactly(4, 3, 2, 1, 1);
    assertThat(ahead.longer(Limit.HOUR)).isEqualTo(0.8);
    assertThat(ahead.longer(Limit.TWO_HOURS)).isEqualTo(0.4);
    assertThat(ahead.longer(Limit.EMERGENCY)).isEqualTo(0.2);
  }

  /** The generator of the JDK is the published one as well. */
  @Test
  void random_numbers_of_a_course_are_those_of_the_published_generator() {
    for (long seed : new long[] {0, -1, 1_234_567}) {
      var ours = new CourseRandom(seed);
      var theirs = new SplittableRandom(seed);
      for (int i = 0; i < 100; i++) {
        assertThat(ours.nextLong()).isEqualTo(theirs.nextLong());
      }
    }
    assertThat(new CourseRandom(1_234_567).nextLong()).isEqualTo(6_457_827_717_110_365_317L);
  }
}
