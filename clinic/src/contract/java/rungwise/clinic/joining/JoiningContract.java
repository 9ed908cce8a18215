package rungwise.clinic.joining;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.beside.JoinLog;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.day.Need;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.AccountState;
import rungwise.clinic.people.Role;
import rungwise.clinic.people.SignInName;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.running.Running;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Question;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/** Two courses of one man, joined and parted, over any store. */
public abstract class JoiningContract {

  private static final String REASON = "the same papers";
  private static final Account SECOND =
      new Account(
          AccountId.of(new UUID(77, 7)),
          new SignInName("second.prescriber"),
          "Second Prescriber",
          Set.of(Role.PRESCRIBER),
          AccountState.ACTIVE);

  private TitrationWorld world;
  private Joining joining;
  private CourseId first;
  private CourseId second;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    joining = new Joining(world.ports());
    first = world.open();
    second = Twin.of(world, first);
  }

  private long basis(CourseId id) {
    return world.file(id).basis();
  }

  private Reading<Long> join(CourseId leading, CourseId other) {
    return joining.join(Staff.PRESCRIBER, leading, basis(leading), other, REASON);
  }

  private Reading<Long> part(Account by, CourseId id, CourseId other) {
    return joining.part(by, id, basis(id), other, "other papers");
  }

  private History history(CourseId id) {
    return world.state(id).question().history();
  }

  private void injects(CourseId id, String minutes) {
    world.pass(Duration.ofHours(8));
    world
        .report(
            id,
            ReportForm.at(
                    world.ports().time().dateText(world.now().minus(Duration.ofHours(7))),
                    world.ports().time().timeText(world.now().minus(Duration.ofHours(7))))
                .mark("25")
                .exactly(minutes))
        .orThrow();
  }

  private long mostSignable(CourseId id) {
    Question question = world.state(id).question();
    return question.ladder().rungs().stream()
        .filter(rung -> world.state(id).advice().isAllowed(rung))
        .mapToLong(Volume::microlitres)
        .max()
        .orElse(0);
  }

  private int open(CourseId id) {
    return history(id).openEmergencies().size();
  }

  @Test
  void each_course_shows_that_the_other_may_be_his() {
    assertThat(joining.mayBeHis(world.file(first))).extracting(CourseFile::id).contains(second);
    assertThat(joining.mayBeHis(world.file(second))).extracting(CourseFile::id).contains(first);
    assertThat(joining.standing(world.file(second))).isEqualTo(Joining.Standing.MAY_BE_HIS);

    join(first, second).orThrow();
    assertThat(joining.standing(world.file(first))).isEqualTo(Joining.Standing.LEADS);
    assertThat(joining.standing(world.file(second))).isEqualTo(Joining.Standing.FOLLOWS);
  }

  @Test
  void nobody_but_a_prescriber_joins_and_only_of_what_he_has_seen_with_a_reason() {
    assertThat(joining.join(Staff.EDUCATOR, first, basis(first), second, REASON).found()).isEmpty();
    assertThat(joining.join(Staff.PRESCRIBER, first, basis(first) - 1, second, REASON).found())
        .isEmpty();
    assertThat(joining.join(Staff.PRESCRIBER, first, basis(first), second, " ").found()).isEmpty();
    assertThat(JoinLog.of(world.file(first)).open()).isEmpty();
    assertThat(JoinLog.of(world.file(second)).open()).isEmpty();
  }

  @Test
  void only_a_course_that_may_be_his_is_joined() {
    CourseId stranger = world.open();

    assertThat(join(first, stranger).found()).isEmpty();
    assertThat(join(first, first).found()).isEmpty();
  }

  @Test
  void the_order_of_the_other_course_is_taken_away_and_never_comes_back() {
    world.signProposed(second);
    join(first, second).orThrow();

    assertThat(world.file(second).signedDose()).isEmpty();
    assertThat(world.state(second).mayInject().isClear()).isFalse();
    assertThat(new Running(world.ports()).reopen(SECOND, second, basis(second), "again").found())
        .isEmpty();

    part(SECOND, first, second).orThrow();
    new Running(world.ports()).reopen(SECOND, second, basis(second), "another man").orThrow();
    assertThat(world.file(second).signedDose()).isEmpty();
  }

  @Test
  void an_emergency_of_either_stops_both_until_each_was_reviewed() {
    injects(second, "300");
    join(first, second).orThrow();

    assertThat(open(first)).isEqualTo(1);
    assertThat(open(second)).isEqualTo(1);
    assertThat(world.blocks(first)).contains(GuardRule.EMERGENCY_OPEN);
    assertThat(need(second)).isEqualTo(Need.EMERGENCY_OVER);

    world.lifting().reviewEmergency(Staff.PRESCRIBER, first, "seen").orThrow();
    assertThat(open(first)).isZero();
    assertThat(open(second)).isEqualTo(1);
    assertThat(need(second)).isEqualTo(Need.EMERGENCY_OVER);
  }

  private Need need(CourseId id) {
    return new CourseViews(world.ports().time(), one -> "Ines Halloran")
        .dayOf(world.state(id))
        .day()
        .need();
  }

  @Test
  void what_was_reviewed_here_before_they_were_joined_reviews_nothing_of_there() {
    injects(second, "300");
    injects(first, "300");
    world.lifting().reviewEmergency(Staff.PRESCRIBER, first, "seen").orThrow();
    join(first, second).orThrow();

    assertThat(open(first)).isEqualTo(1);
  }

  @Test
  void a_dose_that_is_closed_in_one_is_closed_in_both_and_stays_so_when_they_are_parted() {
    injects(second, "150");
    Volume closed = Volume.ofMicrolitres(250);
    join(first, second).orThrow();
    assertThat(history(first).closing(SamplePreparations.ALPROSTADIL_20, closed)).isPresent();

    part(SECOND, first, second).orThrow();
    assertThat(history(first).closing(SamplePreparations.ALPROSTADIL_20, closed)).isPresent();

    injects(second, "300");
    assertThat(open(first)).isZero();
  }

  @Test
  void who_has_joined_them_does_not_part_them() {
    join(first, second).orThrow();

    assertThat(part(Staff.PRESCRIBER, first, second).found()).isEmpty();
    assertThat(part(Staff.EDUCATOR, first, second).found()).isEmpty();
    assertThat(part(SECOND, second, first).found()).isPresent();
    assertThat(part(SECOND, first, second).found()).isEmpty();
  }

  @Test
  void an_injection_of_the_other_course_counts_for_the_time_between_two_and_proves_nothing() {
    injects(second, "30");
    join(first, second).orThrow();
    world.signProposed(first);

    assertThat(world.blocks(first)).contains(GuardRule.SPACING);
    assertThat(history(first).injections()).isEmpty();
    assertThat(mostSignable(first)).isEqualTo(120);
  }

  @Test
  void a_signature_is_replayed_as_the_other_course_was_then() {
    join(first, second).orThrow();
    injects(second, "30");
    world.pass(Duration.ofDays(3));
    world.signProposed(first);
    injects(second, "300");

    assertThat(world.blocks(first)).contains(GuardRule.EMERGENCY_OPEN);
    assertThat(world.titration().replays(world.file(first)))
        .singleElement()
        .satisfies(replay -> assertThat(replay.differences()).isEmpty());
  }

  /** The same law over records at random. */
  @Test
  void joining_and_parting_never_end_an_emergency_and_never_open_a_dose() {
    String[] minutes = {"20", "45", "61", "90", "119", "120", "150", "239", "240", "300"};
    for (int seed = 0; seed < 25; seed++) {
      first = world.open();
      second = Twin.of(world, first);
      var random = new SplittableRandom(seed);
      for (int i = 0; i < 6; i++) {
        CourseId one = random.nextBoolean() ? first : second;
        switch (random.nextInt(4)) {
          case 0 -> compared(() -> join(first, second));
          case 1 -> compared(() -> part(SECOND, first, second));
          default -> injects(one, minutes[random.nextInt(minutes.length)]);
        }
        world.pass(Duration.ofDays(random.nextInt(3)));
      }
    }
  }

  private void compared(Runnable act) {
    int emergencies = open(first) + open(second);
    long most = mostSignable(first);
    long other = mostSignable(second);
    int here = open(first);

    act.run();

    assertThat(open(first) + open(second)).isGreaterThanOrEqualTo(emergencies);
    assertThat(open(first)).isGreaterThanOrEqualTo(here);
    assertThat(mostSignable(first)).isLessThanOrEqualTo(most);
    assertThat(mostSignable(second)).isLessThanOrEqualTo(other);
  }
}
