package rungwise.clinic.day;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.standing.CourseState;

/**
 * When a man is to be examined next.
 *
 * @param due the day, counted from the last examination or from the first entry of the course
 * @param isAfterEmergency whether nobody has examined him since an emergency: then at once
 */
public record Examination(LocalDate due, boolean isAfterEmergency) {

  /** Of a course, by the clinic's days. */
  public static Examination of(CourseState state, ClinicTime time) {
    LocalDate last =
        state
            .file()
            .answers()
            .examined()
            .map(written -> written.fact().day())
            .orElseGet(() -> time.dayOf(state.file().entries().getFirst().recordedAt()));
    int months = state.question().protocol().limits().reviewMonths().value();
    return new Examination(
        last.plusMonths(months), state.question().notExaminedSince().isPresent());
  }

  /** Since when it is due at the instant of a course, if it is. */
  public static Optional<Instant> dueSince(CourseState state, ClinicTime time) {
    Examination next = of(state, time);
    LocalDate today = time.dayOf(state.now());
    return next.isDue(today)
        ? Optional.of(time.startOf(next.due().isAfter(today) ? today : next.due()))
        : Optional.empty();
  }

  /** Whether it is due by a day. */
  public boolean isDue(LocalDate day) {
    return isAfterEmergency || !due.isAfter(day);
  }
}
