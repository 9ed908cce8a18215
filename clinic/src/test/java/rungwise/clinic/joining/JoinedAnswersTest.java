package rungwise.clinic.joining;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rungwise.clinic.beside.JoinLog;
import rungwise.clinic.course.CourseFact.AnswerOverturned;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.InMemoryRecord;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.AccountState;
import rungwise.clinic.people.Role;
import rungwise.clinic.people.SignInName;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.running.Running;
import rungwise.clinic.screening.ScreeningForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.quantities.Reading;

/** What a man answered in one of his courses, where another one is joined with it. */
final class JoinedAnswersTest {

  private static final Account SECOND =
      new Account(
          AccountId.of(new UUID(77, 7)),
          new SignInName("second.prescriber"),
          "Second Prescriber",
          Set.of(Role.PRESCRIBER),
          AccountState.ACTIVE);

  private final TitrationWorld world =
      new TitrationWorld(InMemoryRecord.ports(), new LabelReader());
  private final Joining joining = new Joining(world.ports());
  private CourseId first = world.open();
  private CourseId second = Twin.of(world, first);

  private long basis(CourseId id) {
    return world.file(id).basis();
  }

  private Reading<Long> join(CourseId leading, CourseId other) {
    return joining.join(Staff.PRESCRIBER, leading, basis(leading), other, "one man");
  }

  private void says(CourseId id, Condition condition, Answer answer) {
    world.pass(Duration.ofHours(1));
    world.answer(id, condition, answer);
  }

  private boolean has(CourseId id, Condition condition) {
    return world.state(id).question().screening().answerTo(condition) == Answer.YES;
  }

  private void overturns(CourseId id, Condition condition, String shownBy) {
    world.pass(Duration.ofHours(1));
    world.screenings().overturn(SECOND, id, condition.name(), shownBy, "looked at again").orThrow();
  }

  /**
   * He is one man: what forbids a dose in one course forbids it in both, whatever is said later.
   */
  @Test
  void a_contraindication_of_either_stops_both_until_a_prescriber_writes_that_it_was_wrong() {
    says(second, Condition.MYELOMA_OR_LEUKAEMIA, Answer.YES);
    world.signProposed(first);
    join(first, second).orThrow();

    assertThat(world.state(first).mayInject().verdicts())
        .anyMatch(verdict -> verdict.rule() == GuardRule.CONTRAINDICATED);
    says(first, Condition.MYELOMA_OR_LEUKAEMIA, Answer.NOT_KNOWN);
    says(first, Condition.MYELOMA_OR_LEUKAEMIA, Answer.NO);
    says(second, Condition.MYELOMA_OR_LEUKAEMIA, Answer.NO);
    assertThat(has(first, Condition.MYELOMA_OR_LEUKAEMIA)).isTrue();

    overturns(first, Condition.MYELOMA_OR_LEUKAEMIA, "TEST");
    assertThat(has(first, Condition.MYELOMA_OR_LEUKAEMIA)).isFalse();
    assertThat(has(second, Condition.MYELOMA_OR_LEUKAEMIA)).isTrue();
  }

  @Test
  void what_was_found_to_be_wrong_here_before_they_were_joined_takes_nothing_back_of_there() {
    says(first, Condition.SICKLE_CELL, Answer.YES);
    overturns(first, Condition.SICKLE_CELL, "TEST");
    says(second, Condition.SICKLE_CELL, Answer.YES);
    join(first, second).orThrow();

    assertThat(has(first, Condition.SICKLE_CELL)).isTrue();
  }

  @Test
  void a_decision_is_written_anew_for_a_yes_of_the_other_course() {
    says(first, Condition.LONG_ERECTION_BEFORE, Answer.YES);
    says(second, Condition.LONG_ERECTION_BEFORE, Answer.YES);
    says(second, Condition.MAO_INHIBITOR, Answer.YES);
    world
        .screenings()
        .decide(Staff.PRESCRIBER, second, Condition.MAO_INHIBITOR.name(), "considered")
        .orThrow();
    join(first, second).orThrow();
    assertThat(undecided(first))
        .containsExactlyInAnyOrder(Condition.LONG_ERECTION_BEFORE, Condition.MAO_INHIBITOR);

    world
        .screenings()
        .decide(Staff.PRESCRIBER, first, Condition.MAO_INHIBITOR.name(), "considered")
        .orThrow();
    assertThat(undecided(first)).containsExactly(Condition.LONG_ERECTION_BEFORE);
  }

  private List<Condition> undecided(CourseId id) {
    return world.state(id).question().screening().undecided(SamplePreparations.ALPROSTADIL_20);
  }

  /** The hospital is told of it; what he says later counts, as in one course. */
  @Test
  void a_caution_of_the_other_course_is_known_here_until_he_says_otherwise() {
    says(second, Condition.ANTICOAGULANT, Answer.YES);
    join(first, second).orThrow();
    assertThat(has(first, Condition.ANTICOAGULANT)).isTrue();

    says(first, Condition.ANTICOAGULANT, Answer.YES);
    says(first, Condition.ANTICOAGULANT, Answer.NO);
    assertThat(has(first, Condition.ANTICOAGULANT)).isFalse();
  }

  @Test
  void a_no_of_the_other_course_answers_nothing_here() {
    first = world.openUnprepared("vasculogenic", "u100-1");
    second = Twin.of(world, first);
    join(first, second).orThrow();

    assertThat(world.state(first).question().screening().answers()).isEmpty();
  }

  /** Of a pause nobody reads why in the course that ends. */
  @Test
  void a_course_that_is_paused_is_resumed_or_ended_before_it_is_joined() {
    var running = new Running(world.ports());
    running.pause(Staff.EDUCATOR, second, "chest pain").orThrow();
    assertThat(join(first, second).faults())
        .singleElement()
        .asString()
        .startsWith("That course is paused");

    running.resume(Staff.PRESCRIBER, second, basis(second), "seen, and well").orThrow();
    join(first, second).orThrow();
  }

  /** Over records at random: whoever says what when, and is joined or parted when. */
  @Test
  void while_they_are_joined_every_yes_of_either_counts_in_both() {
    int yeses = 0;
    for (int seed = 0; seed < 150; seed++) {
      first = world.open();
      second = Twin.of(world, first);
      var random = new SplittableRandom(seed);
      for (int i = 0; i < 7; i++) {
        switch (random.nextInt(5)) {
          case 0, 1 -> join(first, second);
          case 2 -> joining.part(SECOND, first, basis(first), second, "other papers");
          default -> answers(random.nextBoolean() ? first : second, random);
        }
        world.pass(Duration.ofHours(random.nextInt(30)));
        yeses += everyYesCounts("seed " + seed + ", act " + i);
      }
    }
    assertThat(yeses).isGreaterThan(100);
  }

  /** Anything by anybody, whether or not it is taken. */
  private void answers(CourseId id, SplittableRandom random) {
    Condition[] some = {
      Condition.SICKLE_CELL, Condition.MYELOMA_OR_LEUKAEMIA, Condition.STROKE_OR_ARTERIAL_DISEASE
    };
    Condition condition = some[random.nextInt(some.length)];
    Answer answer = List.of(Answer.values()).get(random.nextInt(Answer.values().length));
    world.screenings().answer(Staff.EDUCATOR, id, ScreeningForm.one(condition, answer));
    if (random.nextInt(4) == 0) {
      world
          .screenings()
          .overturn(Staff.PRESCRIBER, id, condition.name(), "TEST", "the test is negative");
    }
  }

  /** While they are joined, what forbids a dose in one of them forbids it in the other one. */
  private int everyYesCounts(String where) {
    if (JoinLog.of(world.file(first)).open().isEmpty()) {
      return 0;
    }
    int yeses = 0;
    for (Condition condition : Condition.values()) {
      boolean isYes = condition.mayForbid() && (said(first, condition) || said(second, condition));
      if (isYes && !isOverturned(condition)) {
        assertThat(has(first, condition) && has(second, condition)).as(where).isTrue();
        yeses++;
      }
    }
    return yeses;
  }

  private boolean said(CourseId id, Condition condition) {
    return world.file(id).screening().answerTo(condition) == Answer.YES;
  }

  private boolean isOverturned(Condition condition) {
    return Stream.of(first, second)
        .flatMap(id -> world.file(id).inForce(AnswerOverturned.class).stream())
        .anyMatch(written -> written.fact().condition() == condition);
  }
}
