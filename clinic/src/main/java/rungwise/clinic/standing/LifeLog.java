package rungwise.clinic.standing;

import java.util.Optional;
import rungwise.clinic.course.CourseFact.LifeWritten;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.life.LifeWord;
import rungwise.dosing.history.Circumstances.Halt;

/**
 * Whether a course runs.
 *
 * @param standing what brought it to a stand; empty while it runs
 */
public record LifeLog(Optional<Written<LifeWritten>> standing) {

  /** What counts of all that was written, in the order of the entries. */
  public static LifeLog of(CourseFile file) {
    Optional<Written<LifeWritten>> standing = Optional.empty();
    for (Written<LifeWritten> one : file.inForce(LifeWritten.class)) {
      standing = after(standing, one);
    }
    return new LifeLog(standing);
  }

  /**
   * What is resumed had been paused, and what is opened again had ended: nothing else is lifted.
   */
  private static Optional<Written<LifeWritten>> after(
      Optional<Written<LifeWritten>> before, Written<LifeWritten> next) {
    return switch (next.fact().word()) {
      case LifeWord.Paused paused -> before.or(() -> Optional.of(next));
      case LifeWord.Ended ended -> Optional.of(next);
      case LifeWord.Resumed resumed -> before.filter(one -> isEnd(one.fact().word()));
      case LifeWord.Reopened reopened -> Optional.empty();
    };
  }

  private static boolean isEnd(LifeWord word) {
    return word instanceof LifeWord.Ended;
  }

  /** Whether somebody paused it, and nobody has resumed it. */
  public boolean isPaused() {
    return standing.filter(one -> !isEnd(one.fact().word())).isPresent();
  }

  /** Whether it has ended. */
  public boolean isEnded() {
    return standing.filter(one -> isEnd(one.fact().word())).isPresent();
  }

  /** The same for the engine. */
  public Optional<Halt> halt() {
    return standing.map(
        one ->
            new Halt(
                isEnd(one.fact().word()) ? Halt.Kind.ENDED : Halt.Kind.PAUSED,
                one.entry().recordedAt()));
  }
}
