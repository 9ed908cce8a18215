package rungwise.clinic.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.NewEntry;
import rungwise.clinic.course.SampleFacts;
import rungwise.clinic.people.Account;
import rungwise.clinic.titration.Staff;
import rungwise.quantities.Reading;

/** What every adapter of {@link TakenAccesses} keeps to, and the use cases over it. */
public abstract class CourseAccessContract {

  private static final CourseId FIRST = new CourseId(new UUID(2, 1).toString());
  private static final CourseId SECOND = new CourseId(new UUID(2, 2).toString());
  private static final CourseId NOWHERE = new CourseId(new UUID(2, 3).toString());
  private static final Duration BLINK = Duration.ofMillis(1);

  private CourseAccess access;
  private Instant now = SampleFacts.NOW;

  /** Opens an empty store that knows the staff. */
  protected abstract CoursePorts open();

  protected abstract TakenAccesses taken();

  @BeforeEach
  void begin() {
    CoursePorts stored = open();
    access = new CourseAccess(taken(), stored.courses(), stored.transactions(), () -> now);
    for (CourseId course : List.of(FIRST, SECOND)) {
      stored.append(
          NewEntry.of(course, SampleFacts.opened(SampleFacts.PATIENT), Staff.PRESCRIBER.id(), now));
    }
  }

  private Reading<TakenAccess> take(
      Account by, CourseId course, AccessReason reason, String words) {
    return access.take(by, course, Optional.of(reason), words);
  }

  @Test
  void who_treats_has_a_standing_right_and_nobody_else_has() {
    assertThat(access.isOpen(Staff.PRESCRIBER, FIRST)).isTrue();
    assertThat(access.isOpen(Staff.EDUCATOR, FIRST)).isTrue();
    assertThat(access.isOpen(Staff.ON_CALL, FIRST)).isFalse();
    assertThat(access.isOpen(Staff.AUDITOR, FIRST)).isFalse();
  }

  @Test
  void an_access_opens_one_course_for_one_person_for_twelve_hours() {
    TakenAccess taken = take(Staff.ON_CALL, FIRST, AccessReason.CALLED, "").orThrow();

    assertThat(taken.goodUntil()).isEqualTo(now.plus(Duration.ofHours(12)));
    assertThat(access.isOpen(Staff.ON_CALL, FIRST)).isTrue();
    assertThat(access.isOpen(Staff.ON_CALL, SECOND)).isFalse();
    assertThat(access.isOpen(Staff.AUDITOR, FIRST)).isFalse();
    now = taken.goodUntil().minus(BLINK);
    assertThat(access.isOpen(Staff.ON_CALL, FIRST)).isTrue();
    now = taken.goodUntil();
    assertThat(access.isOpen(Staff.ON_CALL, FIRST)).isFalse();
  }

  @Test
  void what_was_taken_is_listed_with_its_reason_the_newest_first() {
    take(Staff.ON_CALL, FIRST, AccessReason.LONG_ERECTION, "").orThrow();
    take(Staff.ON_CALL, SECOND, AccessReason.OTHER, " asked by his partner ").orThrow();

    List<TakenAccess> listed =
        access.list(Long.MAX_VALUE).stream().map(TakenAccess.Numbered::access).toList();

    assertThat(listed).extracting(TakenAccess::course).containsExactly(SECOND, FIRST);
    assertThat(listed)
        .extracting(TakenAccess::reason)
        .containsExactly(
            "Another reason, which I write below: asked by his partner",
            "His erection is not going down");
    assertThat(listed).extracting(TakenAccess::at).containsOnly(now);
    long newest = access.list(Long.MAX_VALUE).getFirst().number();
    assertThat(access.list(newest)).hasSize(1);
  }

  @Test
  void an_access_without_a_reason_is_not_taken() {
    assertThat(access.take(Staff.ON_CALL, FIRST, Optional.empty(), "because").faults()).hasSize(1);
    assertThat(take(Staff.ON_CALL, FIRST, AccessReason.OTHER, "  ").faults()).hasSize(1);
    assertThat(take(Staff.ON_CALL, FIRST, AccessReason.CALLED, "x".repeat(501)).faults())
        .hasSize(1);
    assertThat(access.list(Long.MAX_VALUE)).isEmpty();
  }

  @ParameterizedTest
  @EnumSource
  void nobody_takes_access_who_is_no_clinician_whatever_the_reason(AccessReason reason) {
    assertThat(take(Staff.AUDITOR, FIRST, reason, "urgent").faults()).hasSize(1);
    assertThat(access.list(Long.MAX_VALUE)).isEmpty();
  }

  @Test
  void there_is_no_access_to_a_course_that_is_not_there() {
    assertThat(take(Staff.ON_CALL, NOWHERE, AccessReason.CALLED, "").faults()).hasSize(1);
  }
}
