package rungwise.clinic.sheet;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.day.Urgency;
import rungwise.clinic.reaching.ReachView;

/**
 * An erection of which nobody has said how it ended, in words: the block that stands above
 * everything else about the man.
 *
 * @param isFirm whether firm is the last that was said
 * @param headline what is the matter, and where nobody says it was firm, that
 * @param elapsed how long ago he was injected
 * @param fourHours when it will have lasted, or would have lasted, for 4 hours
 * @param call what is to be done now
 * @param about what is known of him and of this injection
 * @param reach how he is called now
 * @param handed to whom he was handed, when and after what was tried
 * @param way where its end is written down
 * @param isSound whether his record is as it was written; if not, nothing of it is relied on
 */
public record OpenErectionView(
    CourseId course,
    String man,
    String recordNumber,
    Urgency urgency,
    boolean isFirm,
    String headline,
    String elapsed,
    String fourHours,
    String call,
    About about,
    ReachView reach,
    Optional<String> handed,
    Way way,
    boolean isSound) {

  /**
   * What a reader must know to act. Who has no right to the course is not shown it.
   *
   * @param injected when and where, and how much of what
   * @param plan the lines of his emergency plan; one that says so where none is agreed
   * @param tell his medicines and conditions that a hospital must know first; may be empty
   * @param more other injections of his of which nobody knows the end
   */
  public record About(
      String injected, List<String> plan, Optional<String> tell, List<String> more) {
    public About {
      plan = List.copyOf(plan);
      more = List.copyOf(more);
    }
  }

  /** Where the end of an erection is written down. */
  public sealed interface Way {

    /** By a correction of the report of an entry. */
    record Correct(String entry) implements Way {}

    /** By a report: the one that was begun is not complete. */
    record Report() implements Way {}

    /** In the room, where he is under observation. */
    record EndObservation() implements Way {}

    /** By a prescriber's review. */
    record Review() implements Way {}
  }

  private static final About TAKE_ACCESS =
      new About(
          "Take access to the course for his emergency plan and his medicines.",
          List.of(),
          Optional.empty(),
          List.of());

  /**
   * For who has no standing right to the course.
   *
   * @param isOnCall whether it is the reader's task to call him
   */
  public OpenErectionView withoutAbout(boolean isOnCall) {
    return new OpenErectionView(
        course,
        man,
        recordNumber,
        urgency,
        isFirm,
        headline,
        elapsed,
        fourHours,
        call,
        TAKE_ACCESS,
        isOnCall ? reach : ReachView.HIDDEN,
        handed,
        way,
        isSound);
  }

  /** Whether the reader may know how he is called. */
  public boolean isCallable() {
    return !reach.equals(ReachView.HIDDEN);
  }

  /** Whether it fills its head with the colour of danger: everything but a first call to come. */
  public boolean isLoud() {
    return urgency == Urgency.EMERGENCY_DEPARTMENT || (isFirm && urgency == Urgency.CALL_NOW);
  }
}
