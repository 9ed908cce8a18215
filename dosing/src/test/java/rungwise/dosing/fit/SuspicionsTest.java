package rungwise.dosing.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.response.Population;
import rungwise.dosing.response.Trial;

/** How often made files that somebody spoilt are found, and clean ones are not. */
final class SuspicionsTest {

  private static final int FILES = 100;
  private static final int MEN = 1000;
  private static final int INJECTIONS = 8;
  private static final double MINUTES_IN_AN_HOUR = 60;

  private static final Population POPULATION =
      new Population(
          0.6, Map.of("mixed", 0.0, "vasculogenic", 0.5), 0.8, 2.5, -1.5, 1.5, 3.7, 0.5, 0.45);

  private static List<MadeCourses.Course> made(int seed) {
    var made = new MadeCourses(seed, POPULATION);
    for (int man = 0; man < MEN; man++) {
      made.add(INJECTIONS);
    }
    return new ArrayList<>(made.all().stream().map(one -> timed(one, Math::rint)).toList());
  }

  /** The same with other exact durations. */
  private static MadeCourses.Course timed(MadeCourses.Course course, DoubleUnaryOperator written) {
    return new MadeCourses.Course(
        course.group(),
        course.trials().stream()
            .map(
                one ->
                    one.lasted() instanceof Lasted.Exactly(double minutes)
                        ? new Trial(
                            one.logDose(),
                            one.grade(),
                            new Lasted.Exactly(Math.max(0.1, written.applyAsDouble(minutes))))
                        : one)
            .toList());
  }

  private static List<Doubt> doubts(List<MadeCourses.Course> courses) {
    return Doubts.suspicions(MadeCourses.of(courses));
  }

  @Test
  void clean_files_are_not_suspected() {
    int alarms = 0;
    for (int file = 0; file < FILES; file++) {
      alarms += doubts(made(file)).isEmpty() ? 0 : 1;
    }

    assertThat(alarms).isLessThanOrEqualTo(5);
  }

  @Test
  void thirty_men_in_hours_are_found() {
    for (int file = 0; file < FILES; file++) {
      List<MadeCourses.Course> courses = made(file);
      for (int man = 0; man < 30; man++) {
        courses.set(man, timed(courses.get(man), minutes -> minutes / MINUTES_IN_AN_HOUR));
      }

      assertThat(doubts(courses)).hasAtLeastOneElementOfType(Doubt.LikeHours.class);
    }
  }

  @Test
  void ten_men_who_stand_there_twice_are_found() {
    int found = 0;
    for (int file = 0; file < FILES; file++) {
      List<MadeCourses.Course> courses = made(file);
      var random = new Random(file);
      for (int man = 0; man < 10; man++) {
        courses.add(courses.get(random.nextInt(MEN)));
      }
      found += doubts(courses).stream().anyMatch(Doubt.Repeated.class::isInstance) ? 1 : 0;
    }

    assertThat(found).isGreaterThanOrEqualTo(95);
  }

  @Test
  void three_days_are_doubted_and_the_course_is_numbered() {
    List<MadeCourses.Course> courses = made(1);
    var trial = new Trial(0, Grade.FULLY_FIRM, new Lasted.Exactly(4321));
    courses.set(6, new MadeCourses.Course("mixed", List.of(trial)));

    assertThat(doubts(courses)).containsExactly(new Doubt.LikeDays(1, 7));
  }

  /** Pairs grow with the square of the men: what two share by chance must not be a doubt. */
  @Test
  void among_more_men_more_equal_durations_are_asked_for() {
    assertThat(Doubt.equalDurations(2)).isEqualTo(3);
    assertThat(Doubt.equalDurations(10_000)).isEqualTo(3);
    assertThat(Doubt.equalDurations(10_001)).isEqualTo(4);
    assertThat(Doubt.equalDurations(1_000_000)).isEqualTo(5);
    assertThat(Doubt.equalDurations(Integer.MAX_VALUE)).isEqualTo(9);
  }
}
