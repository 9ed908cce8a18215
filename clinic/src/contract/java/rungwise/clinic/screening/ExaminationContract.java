package rungwise.clinic.screening;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
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
import rungwise.quantities.Fault;
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
  void no_answer_and_no_prescribers_word_lifts_what_an_examination_found() {
    examine("2026-03-02", "yes").orThrow();
    List<GuardRule> found = List.of(GuardRule.CONTRAINDICATED, GuardRule.SIGNED_BEFORE_FINDING);
    assertThat(world.blocks(course)).isEqualTo(found);

    world.pass(Duration.ofMinutes(5));
    world.answer(course, Condition.TRAZODONE, Answer.YES);
    stillTrue();
    world.answer(course, Condition.CURVATURE_OR_SCARRING, Answer.NOT_KNOWN);
    world.answer(course, Condition.CURVATURE_OR_SCARRING, Answer.NO);
    assertRefused(
        world
            .screenings()
            .overturn(
                Staff.PRESCRIBER,
                course,
                Condition.CURVATURE_OR_SCARRING.name(),
                "EXAMINATION",
                "it was nothing"),
        "lifted by a later examination without it");

    assertThat(world.blocks(course)).isEqualTo(found);
  }

  @Test
  void a_later_examination_without_it_and_a_new_signature_bring_a_dose_back() {
    examine("2026-03-02", "yes").orThrow();
    world.pass(Duration.ofDays(30));
    examine("2026-04-01", "no").orThrow();
    assertThat(world.blocks(course)).containsExactly(GuardRule.SIGNED_BEFORE_FINDING);

    world.signProposed(course);

    assertThat(world.blocks(course)).isEmpty();
  }

  /** On the same day, before it, written down before it, or of no result. */
  @Test
  void an_examination_that_is_not_later_or_not_without_it_lifts_nothing() {
    world.pass(Duration.ofDays(30));
    examine("2026-04-01", "no").orThrow();
    examine("2026-03-20", "yes").orThrow();
    assertThat(world.blocks(course)).contains(GuardRule.CONTRAINDICATED);

    examine("2026-03-20", "no").orThrow();
    examine("2026-03-19", "no").orThrow();
    examine("2026-04-01", "not known").orThrow();
    assertThat(world.blocks(course)).contains(GuardRule.CONTRAINDICATED);
    examine("2026-03-21", "no").orThrow();

    assertThat(world.blocks(course)).containsExactly(GuardRule.SIGNED_BEFORE_FINDING);
  }

  @Test
  void what_he_said_himself_counts_after_an_examination_without_it_too() {
    world.answer(course, Condition.CURVATURE_OR_SCARRING, Answer.YES);
    examine("2026-03-02", "yes").orThrow();
    world.pass(Duration.ofDays(30));
    examine("2026-04-01", "no").orThrow();
    assertThat(world.blocks(course)).contains(GuardRule.CONTRAINDICATED);

    world.overturn(course, Condition.CURVATURE_OR_SCARRING);

    assertThat(world.blocks(course)).containsExactly(GuardRule.SIGNED_BEFORE_FINDING);
  }

  @Test
  void an_examination_names_a_day_that_has_come_and_what_was_found() {
    assertRefused(examine("2026-03-03", "no"), "3 March 2026 is still to come.");
    assertRefused(examine("2026-03-02", ""), "Choose whether curvature or scarring was found.");
    assertThat(examine("2026-02-30", "perhaps").faults()).hasSize(2);
    assertThat(world.file(course).examined()).isEmpty();
  }

  @Test
  void the_time_of_an_examination_is_kept_where_it_is_said() {
    world.pass(Duration.ofDays(1));
    world.screenings().examine(Staff.EDUCATOR, course, "2026-03-02", "9:30 pm", "no", "").orThrow();
    assertThat(world.file(course).examined().orElseThrow().fact().at())
        .isEqualTo(Optional.of(Instant.parse("2026-03-03T02:30:00Z")));

    examine("2026-03-02", "no").orThrow();
    assertThat(world.file(course).examined().orElseThrow().fact().at()).isEmpty();
    assertRefused(
        world.screenings().examine(Staff.EDUCATOR, course, "2026-03-03", "23:59", "no", ""),
        "Tuesday 3 March 2026 23:59 is still to come.");
    assertThat(
            world
                .screenings()
                .examine(Staff.EDUCATOR, course, "2026-03-02", "soon", "", "")
                .placed())
        .extracting(Fault::field)
        .containsExactly(Screenings.TIME, Screenings.SCARRING);
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
