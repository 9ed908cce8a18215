package rungwise.clinic.audit;

import java.time.Instant;
import java.util.List;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.AccountId;

/**
 * A page about to be shown to somebody, or refused.
 *
 * @param at kept to the millisecond
 * @param courses at least one, each once: those that the page names
 */
public record Viewed(
    AccountId by, Instant at, Screen screen, Outcome outcome, List<CourseId> courses) {

  /** What became of the wish to see the page. */
  public enum Outcome {
    SHOWN,
    REFUSED
  }

  public Viewed {
    courses = List.copyOf(courses);
    if (courses.isEmpty() || courses.stream().distinct().count() != courses.size()) {
      throw new IllegalArgumentException("bug: a view names courses, each of them once");
    }
  }
}
