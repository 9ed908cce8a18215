package rungwise.clinic.screening;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.Baseline;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.screening.ErectileScore;
import rungwise.quantities.Reading;

/** Examinations for scarring and the baseline, over any store. */
public abstract class ExaminationContract {

  private TitrationWorld world;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /** He answered no to everything, and a dose is signed. */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.open();
    world.signProposed(course);
  }

  private Reading<Long> examine(String day, String scarring) {
    return world.screenings().examine(Staff.EDUCATOR, course, day, scarring, "felt both sides");
  }

  private void stillTrue() {
    world.screenings().answer(Staff.EDUCATOR, course, ScreeningForm.stillTrue()).orThrow();
  }

  private void assertRefused(Reading<Long> reading, String words) {
    assertThat(reading.faults()).singleElement().asString().contains(words);
  }

  @Test
  void scarring_found_at_an_examination_stops_the_course_until_its_question_is_answered_again() {
    examine("2026-03-02", "yes").orThrow();
    assertThat(world.blocks(course)).containsExactly(GuardRule.CONTRAINDICATED);

    world.pass(Duration.ofMinutes(5));
    world.answer(course, Condition.TRAZODONE, Answer.YES);
    stillTrue();
    assertThat(world.blocks(course)).containsExactly(GuardRule.CONTRAINDICATED);

    world.answer(course, Condition.CURVATURE_OR_SCARRING, Answer.NO);
    assertThat(world.blocks(course)).isEmpty();
  }

  @Test
  void a_later_examination_without_scarring_lifts_what_one_before_had_found() {
    examine("2026-03-02", "yes").orThrow();

    examine("2026-03-02", "no").orThrow();

    assertThat(world.blocks(course)).isEmpty();
  }

  @Test
  void an_examination_names_a_day_that_has_come_and_what_was_found() {
    assertRefused(examine("2026-03-03", "no"), "3 March 2026 is still to come.");
    assertRefused(examine("2026-03-02", ""), "Choose whether curvature or scarring was found.");
    assertThat(examine("2026-02-30", "perhaps").faults()).hasSize(2);
    assertThat(world.file(course).examined()).isEmpty();
  }

  @Test
  void a_baseline_is_kept_with_and_without_a_score_and_the_last_one_counts() {
    world
        .screenings()
        .baseline(Staff.EDUCATOR, course, new BaselineDraft("7", "good", "limited", "himself"))
        .orThrow();
    assertThat(world.file(course).baseline()).map(Baseline::score).contains(ErectileScore.of(7));

    world
        .screenings()
        .baseline(Staff.EDUCATOR, course, new BaselineDraft("", "good", "good", "partner"))
        .orThrow();

    assertThat(world.file(course).baseline()).get().matches(last -> last.score().isEmpty());
    assertThat(
            world
                .screenings()
                .baseline(Staff.EDUCATOR, course, new BaselineDraft("26", "", "bad", "him"))
                .faults())
        .hasSize(4);
  }
}
