package rungwise.clinic.standing;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseFact.LifeWritten;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.life.LifeWord;
import rungwise.dosing.history.Circumstances.Halt;

/**
 * Whether a course runs.
 *
 * @param standing what brought it to a stand: every pause that nobody has lifted, the first one
 *     first, or the end; empty while it runs
 */
public record LifeLog(List<Written<LifeWritten>> standing) {

  public LifeLog {
    standing = List.copyOf(standing);
  }

  /** What counts of all that was written, in the order of the entries. */
  public static LifeLog of(CourseFile file) {
    var log = new LifeLog(List.of());
    for (Written<LifeWritten> one : file.inForce(LifeWritten.class)) {
      log = log.after(one);
    }
    return log;
  }

  /**
   * What is resumed had been paused, and what is opened again had ended: nothing else is lifted.
   */
  private LifeLog after(Written<LifeWritten> next) {
    return switch (next.fact().word()) {
      case LifeWord.Paused paused ->
          isEnded()
              ? this
              : new LifeLog(Stream.concat(standing.stream(), Stream.of(next)).toList());
      case LifeWord.Ended ended -> new LifeLog(List.of(next));
      case LifeWord.Resumed resumed -> isEnded() ? this : new LifeLog(List.of());
      case LifeWord.Reopened reopened -> new LifeLog(List.of());
    };
  }

  /** Whether somebody paused it, and nobody has resumed it. */
  public boolean isPaused() {
    return !standing.isEmpty() && !isEnded();
  }

  /** Whether it has ended. */
  public boolean isEnded() {
    return standing.stream().anyMatch(one -> one.fact().word() instanceof LifeWord.Ended);
  }

  /** Since when it has been at a stand; empty while it runs. */
  public Optional<Instant> since() {
    return standing.stream().findFirst().map(one -> one.entry().recordedAt());
  }

  /** The same for the engine. */
  public Optional<Halt> halt() {
    return since().map(from -> new Halt(isEnded() ? Halt.Kind.ENDED : Halt.Kind.PAUSED, from));
  }
}
