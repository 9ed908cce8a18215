package rungwise.clinic.standing;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.ReachWritten;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.reach.ReachWord;
import rungwise.clinic.reach.ReachWord.NotReached;
import rungwise.clinic.reach.ReachWord.NumberGone;
import rungwise.clinic.reach.ReachWord.NumberKept;
import rungwise.clinic.reach.ReachWord.Reached;
import rungwise.clinic.reach.ReachWord.WishesKept;
import rungwise.clinic.reach.Telephone;
import rungwise.clinic.reach.Wishes;

/**
 * How the man of a course is reached, as far as it is on record.
 *
 * @param numbers those that are his, in the order in which they were first written
 * @param gone those that are no longer his, with the entries that say so
 * @param wishes what he asked for; empty if nobody asked him
 * @param again the tries since he was reached last; empty if nobody has to try again
 */
public record HowToReach(
    List<Known> numbers, List<Known> gone, Optional<Wishes> wishes, Optional<Again> again) {

  /** A number with the entry that says so. */
  public record Known(CourseEntry entry, Telephone telephone) {}

  /**
   * He was called and not reached.
   *
   * @param tries how often since he was reached last, at least once
   * @param last the entry of the last try
   * @param due when the next one is
   */
  public record Again(int tries, CourseEntry last, Instant due) {}

  public HowToReach {
    numbers = List.copyOf(numbers);
    gone = List.copyOf(gone);
  }

  /** Of a course. */
  public static HowToReach of(CourseFile file) {
    List<Written<ReachWritten>> inForce = file.inForce(ReachWritten.class);
    return new HowToReach(
        inForce.stream()
            .sorted(Comparator.comparingLong(one -> file.beganAt(one.entry())))
            .flatMap(HowToReach::number)
            .toList(),
        inForce.stream().flatMap(one -> gone(file, one)).toList(),
        inForce.stream()
            .map(one -> one.fact().word())
            .flatMap(word -> word instanceof WishesKept(Wishes w) ? Stream.of(w) : Stream.empty())
            .reduce((earlier, later) -> later),
        again(inForce));
  }

  private static Stream<Known> number(Written<ReachWritten> written) {
    return written.fact().word() instanceof NumberKept(Telephone telephone)
        ? Stream.of(new Known(written.entry(), telephone))
        : Stream.empty();
  }

  /** What the number was when it was said to be his no longer. */
  private static Stream<Known> gone(CourseFile file, Written<ReachWritten> written) {
    return written.fact().word() instanceof NumberGone
        ? written.entry().corrects().stream()
            .map(file::entry)
            .flatMap(
                one ->
                    one.fact() instanceof ReachWritten(NumberKept(Telephone was))
                        ? Stream.of(new Known(written.entry(), was))
                        : Stream.empty())
        : Stream.empty();
  }

  private static Optional<Again> again(List<Written<ReachWritten>> inForce) {
    Optional<Again> again = Optional.empty();
    for (Written<ReachWritten> written : inForce) {
      ReachWord word = written.fact().word();
      if (word instanceof Reached) {
        again = Optional.empty();
      } else if (word instanceof NotReached(String number, Instant next)) {
        int before = again.map(Again::tries).orElse(0);
        again = Optional.of(new Again(before + 1, written.entry(), next));
      }
    }
    return again;
  }
}
