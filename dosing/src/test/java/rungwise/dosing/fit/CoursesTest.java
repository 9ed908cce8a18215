package rungwise.dosing.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.response.Trial;

final class CoursesTest {

  private static final Lasted NONE = new Lasted.NotRecorded();

  @Test
  void courses_keep_their_group_and_trials_in_order() {
    Courses courses =
        Courses.builder()
            .course("mixed")
            .trial(0.5, Grade.NONE, NONE)
            .trial(0.7, Grade.USABLE, new Lasted.Exactly(60))
            .course("other")
            .course("mixed")
            .trial(0.2, Grade.FULLY_FIRM, new Lasted.Between(0, 30))
            .build();

    assertThat(courses.groups()).containsExactly("mixed", "other");
    assertThat(courses.count()).isEqualTo(3);
    assertThat(courses.trials()).isEqualTo(3);
    assertThat(courses.countOf("mixed")).isEqualTo(2);
    assertThat(courses.countOf("unknown")).isZero();
    assertThat(courses.firstTrial(1)).isEqualTo(courses.firstTrial(2)).isEqualTo(2);
    assertThat(courses.grade(0)).as("grade 0 is read as 1").isEqualTo(1);
    assertThat(courses.grade(1)).isEqualTo(3);
    assertThat(courses.duration(1)).isEqualTo(Courses.EXACT);
    assertThat(courses.low(1)).isEqualTo(Math.log(60));
    assertThat(courses.low(2)).isEqualTo(Double.NEGATIVE_INFINITY);
    assertThat(courses.high(2)).isEqualTo(Math.log(30));
  }

  @Test
  void a_duration_counts_only_where_it_says_something_of_a_usable_response() {
    Courses courses =
        Courses.builder()
            .course("mixed")
            .trial(0, Grade.FIRM_NOT_USABLE, new Lasted.Exactly(60))
            .trial(0, Grade.USABLE, new Lasted.AtLeast(0))
            .trial(0, Grade.USABLE, new Lasted.AtLeast(1))
            .build();

    assertThat(courses.duration(0)).isEqualTo(Courses.NOT_KNOWN);
    assertThat(courses.duration(1)).isEqualTo(Courses.NOT_KNOWN);
    assertThat(courses.duration(2)).isEqualTo(Courses.BOUNDED);
  }

  @Test
  void trials_come_back_as_the_model_reads_them() {
    List<Trial> given =
        List.of(
            new Trial(0.5, Grade.FULLER, NONE),
            new Trial(0.7, Grade.USABLE, new Lasted.Exactly(59.9)),
            new Trial(0.7, Grade.USABLE, new Lasted.AtLeast(120)),
            new Trial(0.7, Grade.FULLY_FIRM, new Lasted.Between(0, 60)),
            new Trial(0.7, Grade.FULLY_FIRM, new Lasted.Between(237.1, 240)),
            new Trial(0.7, Grade.FULLY_FIRM, NONE));
    Courses.Builder builder = Courses.builder().course("mixed").course("other");
    given.forEach(one -> builder.trial(one.logDose(), one.grade(), one.lasted()));
    builder.course("mixed").trial(0.1, Grade.NONE, new Lasted.Exactly(5));

    Courses courses = builder.build();

    assertThat(courses.trialsOf(0)).isZero();
    assertThat(courses.listOfTrials(0)).isEmpty();
    assertThat(courses.trialsOf(1)).isEqualTo(6);
    assertThat(courses.nameOfGroup(1)).isEqualTo("other");
    assertThat(courses.listOfTrials(1)).isEqualTo(given);
    assertThat(courses.listOfTrials(2)).containsExactly(new Trial(0.1, Grade.FULLER, NONE));
  }

  /** A limit is reached or not: no duration may move over it by a rounding. */
  @Test
  void durations_come_back_to_the_last_digit() {
    Courses.Builder builder = Courses.builder().course("mixed");
    for (int tenths = 1; tenths <= 6000; tenths++) {
      builder.trial(0, Grade.USABLE, new Lasted.Exactly(tenths / 10.0));
    }

    List<Trial> trials = builder.build().listOfTrials(0);

    for (int tenths = 1; tenths <= 6000; tenths++) {
      assertThat(trials.get(tenths - 1).lasted()).isEqualTo(new Lasted.Exactly(tenths / 10.0));
    }
  }

  @Test
  void many_courses_are_taken() {
    Courses.Builder builder = Courses.builder();
    for (int course = 0; course < 5000; course++) {
      builder.course("mixed");
      for (int trial = 0; trial < course % 4; trial++) {
        builder.trial(course, Grade.USABLE, new Lasted.Exactly(1 + trial));
      }
    }

    Courses courses = builder.build();

    assertThat(courses.trials()).isEqualTo(5000 / 4 * 6);
    assertThat(courses.logDose(courses.firstTrial(4999))).isEqualTo(4999);
    assertThat(courses.low(courses.trials() - 1)).isEqualTo(Math.log(3));
  }

  @Test
  void what_cannot_be_a_trial_is_refused() {
    assertThatThrownBy(() -> Courses.builder().trial(0, Grade.USABLE, NONE))
        .hasMessageStartingWith("bug:");
    assertThatThrownBy(() -> Courses.builder().course("a").trial(Double.NaN, Grade.USABLE, NONE))
        .hasMessageStartingWith("bug:");
    assertThatThrownBy(
            () -> Courses.builder().course("a").trial(0, Grade.USABLE, new Lasted.Exactly(0)))
        .hasMessageStartingWith("bug:");
  }
}
