package rungwise.clinic.course;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.people.AccountId;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;

/** What every adapter of {@link Courses} keeps to. */
public abstract class CoursesContract {

  private static final AccountId BY = AccountId.of(new UUID(1, 1));
  private static final CourseId FIRST = new CourseId(new UUID(2, 1).toString());
  private static final CourseId SECOND = new CourseId(new UUID(2, 2).toString());
  private static final EntryId NOWHERE = new EntryId(new UUID(3, 1).toString());
  private static final Instant NOW = SampleFacts.NOW;

  private CoursePorts stored;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  @BeforeEach
  void begin() {
    stored = open();
  }

  private static NewEntry entry(CourseId course, CourseFact fact) {
    return NewEntry.of(course, fact, BY, NOW);
  }

  private static NewEntry opening(CourseId course, Patient patient) {
    return entry(course, SampleFacts.opened(patient));
  }

  private static CourseFact answer(Answer answer) {
    return SampleFacts.screened(answer);
  }

  private static Patient man(String name, int birthYear, String number) {
    return new Patient(name, LocalDate.of(birthYear, 4, 30), number);
  }

  private List<CourseEntry> entries(CourseId course) {
    return stored.courses().find(course).orElseThrow().entries();
  }

  @Test
  void a_new_store_has_no_course() {
    assertThat(stored.courses().all()).isEmpty();
    assertThat(stored.courses().find(FIRST)).isEmpty();
    assertThat(stored.courses().alike(SampleFacts.PATIENT)).isEmpty();
  }

  @Test
  void every_kind_of_fact_comes_back_as_it_was_written() {
    var facts = new ArrayList<CourseFact>();
    facts.add(SampleFacts.opened(SampleFacts.PATIENT));
    stored.append(entry(FIRST, facts.getFirst()));
    facts.addAll(SampleFacts.later(entries(FIRST).getFirst().id()));

    facts.stream().skip(1).forEach(fact -> stored.append(entry(FIRST, fact)));

    assertThat(entries(FIRST)).extracting(CourseEntry::fact).isEqualTo(facts);
  }

  @Test
  void the_sample_leaves_out_no_kind_of_fact_and_no_kind_of_duration() {
    Stream<CourseFact> facts =
        Stream.concat(
            Stream.of(SampleFacts.opened(SampleFacts.PATIENT)),
            SampleFacts.later(NOWHERE).stream());

    assertThat(facts.<Class<?>>map(Object::getClass).distinct())
        .containsExactlyInAnyOrder(CourseFact.class.getPermittedSubclasses());
    assertThat(SampleInjections.durations().stream().<Class<?>>map(Object::getClass).distinct())
        .containsExactlyInAnyOrder(SoftAfter.class.getPermittedSubclasses());
  }

  @Test
  void an_entry_says_who_when_why_and_what_it_corrects() {
    stored.append(opening(FIRST, SampleFacts.PATIENT));
    long asked = stored.append(entry(FIRST, answer(Answer.NO)));
    EntryId corrected = entries(FIRST).getLast().id();
    AccountId other = AccountId.of(new UUID(1, 2));
    Instant later = NOW.plusSeconds(60);

    long number =
        stored.append(
            NewEntry.of(FIRST, answer(Answer.YES), other, later)
                .correcting(corrected)
                .because("he \"remembered\"\nan operation"));

    assertThat(entries(FIRST)).hasSize(3);
    assertThat(entries(FIRST).get(1).number()).isEqualTo(asked);
    assertThat(entries(FIRST).getLast())
        .usingRecursiveComparison()
        .ignoringFields("id")
        .isEqualTo(
            new CourseEntry(
                number,
                NOWHERE,
                later,
                other,
                Optional.of(corrected),
                Optional.of("he \"remembered\"\nan operation"),
                answer(Answer.YES)));
    assertThat(stored.courses().find(FIRST).orElseThrow().screening().answerTo(Condition.TRAZODONE))
        .isEqualTo(Answer.YES);
  }

  @Test
  void a_reason_needs_no_correction_and_a_correction_no_reason() {
    stored.append(opening(FIRST, SampleFacts.PATIENT));
    stored.append(entry(FIRST, answer(Answer.NO)).because("asked by telephone"));
    EntryId asked = entries(FIRST).getLast().id();
    stored.append(entry(FIRST, answer(Answer.NO)).correcting(asked));

    assertThat(entries(FIRST))
        .extracting(CourseEntry::reason)
        .containsExactly(Optional.empty(), Optional.of("asked by telephone"), Optional.empty());
    assertThat(entries(FIRST))
        .extracting(CourseEntry::corrects)
        .containsExactly(Optional.empty(), Optional.empty(), Optional.of(asked));
  }

  @Test
  void numbers_rise_over_all_courses_and_a_course_has_only_its_own_entries() {
    long one = stored.append(opening(FIRST, SampleFacts.PATIENT));
    long two = stored.append(opening(SECOND, SampleFacts.PATIENT));
    long three = stored.append(entry(FIRST, answer(Answer.NO)));
    long four = stored.append(entry(SECOND, answer(Answer.YES)));

    assertThat(List.of(one, two, three, four)).isSorted().doesNotHaveDuplicates();
    assertThat(entries(FIRST)).extracting(CourseEntry::number).containsExactly(one, three);
    assertThat(entries(SECOND)).extracting(CourseEntry::number).containsExactly(two, four);
    assertThat(stored.courses().find(SECOND).orElseThrow().basis()).isEqualTo(four);
  }

  @Test
  void no_two_entries_share_an_id() {
    stored.append(opening(FIRST, SampleFacts.PATIENT));
    stored.append(opening(SECOND, SampleFacts.PATIENT));
    SampleFacts.later(entries(FIRST).getFirst().id())
        .forEach(fact -> stored.append(entry(FIRST, fact)));

    var ids = Stream.concat(entries(FIRST).stream(), entries(SECOND).stream()).map(CourseEntry::id);

    assertThat(ids).doesNotHaveDuplicates();
  }

  @Test
  void instants_are_kept_to_the_millisecond() {
    Instant finer = NOW.plusNanos(456_789);
    stored.append(NewEntry.of(FIRST, SampleFacts.opened(SampleFacts.PATIENT), BY, finer));

    assertThat(entries(FIRST).getFirst().recordedAt())
        .isEqualTo(finer.truncatedTo(ChronoUnit.MILLIS))
        .isEqualTo(NOW);
  }

  @Test
  void the_course_opened_last_is_listed_first() {
    stored.append(opening(FIRST, SampleFacts.PATIENT));
    stored.append(opening(SECOND, SampleFacts.PATIENT));
    stored.append(entry(FIRST, answer(Answer.NO)));

    assertThat(stored.courses().all()).containsExactly(SECOND, FIRST);
  }

  @Test
  void a_corrected_opening_lists_the_course_once_and_in_its_old_place() {
    stored.append(opening(FIRST, SampleFacts.PATIENT));
    stored.append(opening(SECOND, man("Somebody Else", 1970, "MR-2")));
    stored.append(
        opening(FIRST, man("Øystein Sampel", 1961, "MR-0417"))
            .correcting(entries(FIRST).getFirst().id())
            .because("a slip of the pen"));

    assertThat(stored.courses().all()).containsExactly(SECOND, FIRST);
    assertThat(stored.courses().alike(SampleFacts.PATIENT)).containsExactly(FIRST);
    assertThat(stored.courses().find(FIRST).orElseThrow().patient().fullName())
        .isEqualTo("Øystein Sampel");
  }

  @Test
  void a_man_of_that_record_number_is_alike_however_it_is_written() {
    stored.append(opening(FIRST, man("Øystein Sample", 1961, "MR-0417")));

    for (String number : List.of("MR-0417", "mr-0417", " Mr-0417\t")) {
      assertThat(stored.courses().alike(man("Somebody Else", 1970, number)))
          .as(number)
          .containsExactly(FIRST);
    }
    assertThat(stored.courses().alike(man("Somebody Else", 1970, "MR-04170"))).isEmpty();
  }

  @Test
  void a_man_of_that_name_and_birth_date_is_alike_however_the_name_is_written() {
    stored.append(opening(FIRST, man("Øystein Sample", 1961, "MR-0417")));

    for (String name : List.of("Øystein Sample", "øystein SAMPLE", " ØYSTEIN  sample ")) {
      assertThat(stored.courses().alike(man(name, 1961, "other"))).as(name).containsExactly(FIRST);
    }
    assertThat(stored.courses().alike(man("Øystein Sample", 1962, "other"))).isEmpty();
    assertThat(stored.courses().alike(man("Oystein Sample", 1961, "other"))).containsExactly(FIRST);
    assertThat(stored.courses().alike(man("Ola Sample", 1961, "other"))).isEmpty();
  }

  @Test
  void a_man_of_that_name_is_found_whenever_he_was_born() {
    stored.append(opening(FIRST, man("Øystein Sample", 1961, "MR-0417")));
    stored.append(opening(SECOND, man(" øystein  SAMPLE ", 1970, "MR-2")));

    assertThat(stored.courses().namedLike(man("Øystein Sample", 1988, "other")))
        .containsExactly(SECOND, FIRST);
    assertThat(stored.courses().namedLike(man("Oystein Sample", 1961, "MR-0417"))).isEmpty();
  }

  @Test
  void every_course_that_is_alike_is_named_the_one_opened_last_first() {
    stored.append(opening(FIRST, man("Øystein Sample", 1961, "one")));
    stored.append(opening(SECOND, man("Somebody Else", 1970, "two")));

    assertThat(stored.courses().alike(man("Øystein Sample", 1961, "two")))
        .containsExactly(SECOND, FIRST);
  }

  @Test
  void what_a_failed_transaction_wrote_is_gone() {
    stored.append(opening(FIRST, SampleFacts.PATIENT));
    CourseFile before = stored.courses().find(FIRST).orElseThrow();

    assertThatThrownBy(
            () ->
                stored.run(
                    () -> {
                      stored.courses().append(opening(SECOND, SampleFacts.PATIENT));
                      SampleFacts.later(before.entries().getFirst().id())
                          .forEach(fact -> stored.courses().append(entry(FIRST, fact)));
                      assertThat(entries(FIRST)).hasSizeGreaterThan(1);
                      throw new IllegalArgumentException("on purpose");
                    }))
        .hasMessage("on purpose");

    assertThat(stored.courses().all()).containsExactly(FIRST);
    assertThat(stored.courses().find(FIRST)).contains(before);
  }

  @Test
  void nothing_is_appended_outside_a_transaction() {
    assertThatThrownBy(() -> stored.courses().append(opening(FIRST, SampleFacts.PATIENT)))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("outside a transaction");

    assertThat(stored.courses().all()).isEmpty();
  }

  @Test
  void a_course_begins_with_its_opening_and_is_opened_once() {
    assertThatThrownBy(() -> stored.append(entry(FIRST, answer(Answer.NO))))
        .isInstanceOf(IllegalStateException.class);
    stored.append(opening(FIRST, SampleFacts.PATIENT));
    assertThatThrownBy(() -> stored.append(opening(FIRST, SampleFacts.PATIENT)))
        .isInstanceOf(IllegalStateException.class);

    assertThat(entries(FIRST)).hasSize(1);
  }

  @Test
  void an_entry_corrects_only_what_stands_in_its_own_course() {
    stored.append(opening(FIRST, SampleFacts.PATIENT));
    stored.append(opening(SECOND, SampleFacts.PATIENT));
    EntryId others = entries(SECOND).getFirst().id();

    for (EntryId wrong : List.of(others, NOWHERE)) {
      assertThatThrownBy(() -> stored.append(entry(FIRST, answer(Answer.NO)).correcting(wrong)))
          .isInstanceOf(IllegalStateException.class);
    }

    assertThat(entries(FIRST)).hasSize(1);
  }
}
