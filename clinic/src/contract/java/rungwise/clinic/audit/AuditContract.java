package rungwise.clinic.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalLong;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.audit.Viewed.Outcome;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.NewEntry;
import rungwise.clinic.course.SampleFacts;
import rungwise.clinic.people.AccountId;
import rungwise.dosing.screening.Answer;

/** What every adapter of {@link Audit} keeps to, and the use cases over it. */
public abstract class AuditContract {

  private static final AccountId ANA = AccountId.of(new UUID(1, 1));
  private static final AccountId BEN = AccountId.of(new UUID(1, 2));
  private static final CourseId FIRST = new CourseId(new UUID(2, 1).toString());
  private static final CourseId SECOND = new CourseId(new UUID(2, 2).toString());
  private static final CourseId NOWHERE = new CourseId(new UUID(2, 3).toString());

  private CoursePorts stored;
  private Viewing viewing;
  private Instant now = SampleFacts.NOW;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  @BeforeEach
  void begin() {
    stored = open();
    viewing = new Viewing(stored.audit(), stored.courses(), stored.transactions(), () -> now);
    openCourse(FIRST);
    openCourse(SECOND);
  }

  private void openCourse(CourseId course) {
    write(course, SampleFacts.opened(SampleFacts.PATIENT));
  }

  private long write(CourseId course, CourseFact fact) {
    return stored.append(NewEntry.of(course, fact, ANA, now));
  }

  private void look(AccountId by, Screen screen, CourseId... courses) {
    viewing.record(by, screen, Outcome.SHOWN, List.of(courses));
  }

  private List<Look> looks(CourseId course) {
    return viewing.of(course, OptionalLong.empty()).orElseThrow().looks();
  }

  private static CourseFact examined(Answer scarring) {
    return new CourseFact.ExaminationRecorded(LocalDate.of(2026, 3, 2), scarring);
  }

  @Test
  void a_course_that_nobody_has_seen_says_so() {
    assertThat(looks(FIRST)).isEmpty();
    assertThat(viewing.of(NOWHERE, OptionalLong.empty())).isEmpty();
  }

  @Test
  void a_view_says_who_when_which_page_and_whether_it_was_shown() {
    viewing.record(BEN, Screen.SIGNED_DOSE, Outcome.REFUSED, List.of(FIRST));

    Look look = looks(FIRST).getFirst();
    assertThat(look)
        .isEqualTo(
            new Look(look.number(), BEN, SampleFacts.NOW, Screen.SIGNED_DOSE, Outcome.REFUSED));
    assertThat(looks(SECOND)).isEmpty();
  }

  @Test
  void every_screen_comes_back_as_it_was_written() {
    for (Screen screen : Screen.values()) {
      look(ANA, screen, FIRST);
    }

    assertThat(looks(FIRST).reversed()).extracting(Look::screen).containsExactly(Screen.values());
  }

  @Test
  void views_are_listed_the_newest_first_even_if_the_clock_was_put_back() {
    look(ANA, Screen.COURSE, FIRST);
    now = now.minus(Duration.ofHours(1));
    look(BEN, Screen.REPORT, FIRST);

    assertThat(looks(FIRST)).extracting(Look::by).containsExactly(BEN, ANA);
    assertThat(looks(FIRST)).extracting(Look::number).isSortedAccordingTo((a, b) -> b.compareTo(a));
  }

  @Test
  void a_list_is_one_view_of_every_course_it_names() {
    look(ANA, Screen.DAY_LIST, FIRST, SECOND);

    assertThat(looks(FIRST)).isEqualTo(looks(SECOND)).hasSize(1);
  }

  @Test
  void a_page_that_names_nobody_leaves_no_entry() {
    long before = write(FIRST, examined(Answer.NO));

    look(ANA, Screen.DAY_LIST);

    assertThat(write(FIRST, examined(Answer.YES))).isEqualTo(before + 1);
  }

  @Test
  void a_view_is_an_entry_of_the_one_journal() {
    long before = write(FIRST, examined(Answer.NO));

    look(ANA, Screen.COURSE, FIRST);

    assertThat(looks(FIRST)).extracting(Look::number).containsExactly(before + 1);
    assertThat(write(FIRST, examined(Answer.YES))).isEqualTo(before + 2);
  }

  @Test
  void views_are_not_part_of_the_course_and_do_not_move_what_advice_has_read() {
    CourseFile before = stored.courses().find(FIRST).orElseThrow();

    look(ANA, Screen.COURSE, FIRST);
    look(BEN, Screen.DAY_LIST, FIRST, SECOND);

    assertThat(stored.courses().find(FIRST)).contains(before);
    assertThat(stored.courses().all()).containsExactly(SECOND, FIRST);
  }

  @Test
  void a_long_list_is_read_in_parts_of_fifty_without_loss() {
    IntStream.range(0, 101).forEach(number -> look(ANA, Screen.COURSE, FIRST));
    look(BEN, Screen.COURSE, SECOND);

    CourseLooks newest = viewing.of(FIRST, OptionalLong.empty()).orElseThrow();
    CourseLooks middle = viewing.of(FIRST, newest.older()).orElseThrow();
    CourseLooks oldest = viewing.of(FIRST, middle.older()).orElseThrow();

    assertThat(newest.looks()).hasSize(50);
    assertThat(middle.looks()).hasSize(50).doesNotContainAnyElementsOf(newest.looks());
    assertThat(oldest.looks()).hasSize(1).doesNotContainAnyElementsOf(middle.looks());
    assertThat(oldest.older()).isEmpty();
  }

  @Test
  void exactly_fifty_views_have_no_older_part() {
    IntStream.range(0, 50).forEach(number -> look(ANA, Screen.COURSE, FIRST));

    assertThat(viewing.of(FIRST, OptionalLong.empty()).orElseThrow().older()).isEmpty();
  }

  @Test
  void a_view_is_written_in_a_transaction_only_and_undone_with_it() {
    var viewed = new Viewed(ANA, now, Screen.COURSE, Outcome.SHOWN, List.of(FIRST));

    assertThatThrownBy(() -> stored.audit().append(viewed))
        .isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(
            () ->
                stored.run(
                    () -> {
                      stored.audit().append(viewed);
                      throw new IllegalArgumentException("on purpose");
                    }))
        .hasMessage("on purpose");

    assertThat(looks(FIRST)).isEmpty();
  }

  @Test
  void a_view_of_nobody_or_of_one_course_twice_cannot_be_made() {
    assertThatThrownBy(() -> new Viewed(ANA, now, Screen.COURSE, Outcome.SHOWN, List.of()))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(
            () -> new Viewed(ANA, now, Screen.COURSE, Outcome.SHOWN, List.of(FIRST, FIRST)))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
