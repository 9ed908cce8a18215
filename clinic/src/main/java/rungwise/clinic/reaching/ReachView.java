package rungwise.clinic.reaching;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.reach.Telephone;
import rungwise.clinic.reach.Wishes;

/**
 * How a man is called now, in words.
 *
 * @param numbers those that are his, the one to try first first
 * @param wishes what he asked for, whatever the number
 * @param again that he was not reached, by whom, and when the next try is due
 * @param gone numbers that are no longer his
 */
public record ReachView(
    List<Line> numbers,
    List<String> wishes,
    Optional<Wishes> asked,
    Optional<String> again,
    List<String> gone) {

  /** Nothing of a man, for who has no right to the course. */
  public static final ReachView HIDDEN =
      new ReachView(List.of(), List.of(), Optional.empty(), Optional.empty(), List.of());

  /**
   * One number.
   *
   * @param entry of the record
   * @param wishes what he asked for at this number, as it is to be done now
   */
  public record Line(String entry, Telephone telephone, List<String> wishes) {
    public Line {
      wishes = List.copyOf(wishes);
    }

    /** Where a tap on it leads; empty if it has to be dialled by hand. */
    public Optional<String> link() {
      return telephone.dialled().map(digits -> "tel:" + digits);
    }
  }

  public ReachView {
    numbers = List.copyOf(numbers);
    wishes = List.copyOf(wishes);
    gone = List.copyOf(gone);
  }
}
