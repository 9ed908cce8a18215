package rungwise.store.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.audit.TrailLine;
import rungwise.clinic.audit.TrailSearch;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.AccountId;
import rungwise.store.SampleCourse;
import rungwise.store.SampleEntries;
import rungwise.store.SqliteStore;

final class SqlTrailTest {

  private static final AccountId ANA = SampleEntries.account(1, "ana.ruiz").id();
  private static final AccountId ZOE = SampleEntries.account(2, "zoe").id();
  private static final CourseId TAKEN = new CourseId(new UUID(2, 1).toString());

  @TempDir Path folder;
  private SqliteStore store;

  @BeforeEach
  void open() {
    store = SqliteStore.open(folder);
    SampleEntries.append(store);
    SampleEntries.appendAccess(store);
    SampleCourse.append(store);
  }

  @AfterEach
  void close() {
    store.close();
  }

  private List<TrailLine> find(TrailSearch search) {
    return store.trail().find(search, Long.MAX_VALUE, 1000);
  }

  private List<TrailLine> all() {
    return find(TrailSearch.ALL);
  }

  private static TrailSearch of(AccountId person) {
    return new TrailSearch(
        Optional.of(person),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private static TrailSearch of(CourseId course) {
    return new TrailSearch(
        Optional.empty(),
        Optional.of(course),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private static TrailSearch of(String kind) {
    return new TrailSearch(
        Optional.empty(), Optional.empty(), Optional.of(kind), Optional.empty(), Optional.empty());
  }

  private static TrailSearch between(Instant from, Instant until) {
    return new TrailSearch(
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.of(from),
        Optional.of(until));
  }

  @Test
  void every_entry_is_found_once_the_newest_first() {
    List<Long> numbers = all().stream().map(TrailLine::number).toList();

    assertThat(numbers).doesNotHaveDuplicates().isSortedAccordingTo((a, b) -> b.compareTo(a));
    assertThat(numbers).hasSize(numbers.getFirst().intValue());
  }

  @Test
  void a_person_is_found_as_the_one_who_did_it_and_as_the_one_it_is_about() {
    List<TrailLine> expected =
        all().stream()
            .filter(line -> line.by().equals(ZOE) || line.about().equals(Optional.of(ZOE)))
            .toList();

    assertThat(find(of(ZOE))).isEqualTo(expected).hasSizeGreaterThanOrEqualTo(2);
    assertThat(find(of(ANA)).stream().map(TrailLine::kind))
        .contains("account_invited", "roles_changed", "signed_in", "second_factor_reset");
  }

  @Test
  void a_course_is_found_by_its_entries_by_who_saw_it_and_by_who_took_access() {
    List<CourseId> courses =
        all().stream().flatMap(line -> line.courses().stream()).distinct().toList();

    assertThat(courses).contains(TAKEN).hasSizeGreaterThan(1);
    for (CourseId course : courses) {
      assertThat(find(of(course)))
          .isEqualTo(all().stream().filter(line -> line.courses().contains(course)).toList())
          .isNotEmpty();
    }
    assertThat(
            find(of(TAKEN)).stream()
                .filter(line -> line.kind().equals("access_taken"))
                .map(TrailLine::reason))
        .containsExactly(Optional.of("he called"));
  }

  @Test
  void a_kind_is_found_alone_and_every_kind_is_listed_once() {
    List<String> kinds = all().stream().map(TrailLine::kind).distinct().sorted().toList();

    assertThat(store.trail().kinds()).isEqualTo(kinds);
    for (String kind : kinds) {
      assertThat(find(of(kind)).stream().map(TrailLine::kind)).containsOnly(kind);
    }
  }

  @Test
  void the_first_instant_counts_and_the_last_does_not() {
    Instant at = SampleEntries.NOW;

    assertThat(find(between(at, at.plusMillis(1)))).isNotEmpty();
    assertThat(find(between(at.plusMillis(1), at.plusMillis(2)))).isEmpty();
    assertThat(find(between(at.minusMillis(1), at)))
        .allSatisfy(line -> assertThat(line.at()).isBefore(at));
  }

  @Test
  void a_long_list_is_read_in_parts_without_loss() {
    var read = new ArrayList<TrailLine>();
    long before = Long.MAX_VALUE;
    List<TrailLine> part = store.trail().find(TrailSearch.ALL, before, 7);
    while (!part.isEmpty()) {
      read.addAll(part);
      part = store.trail().find(TrailSearch.ALL, part.getLast().number(), 7);
    }

    assertThat(read).isEqualTo(all());
  }
}
