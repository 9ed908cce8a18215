package rungwise.clinic.rescuing;

import java.util.List;
import java.util.Optional;

/**
 * The rescue of one man in words.
 *
 * @param lines what was written, the last time first, those that were struck too
 * @param inTheHour "600 mcg", what was given in the last hour; empty where no dose is on record
 * @param isAtLeast whether an amount of it is not known
 * @param limit "1,000 mcg", what may be given in an hour without a reason
 * @param next when the next dose may be asked for, as a clock time; empty before the first
 * @param nextDistance how far that is from now; empty before the first
 * @param isTooSoon whether that is still to come
 */
public record RescueView(
    List<Line> lines,
    Optional<String> inTheHour,
    boolean isAtLeast,
    String limit,
    Optional<String> next,
    String nextDistance,
    boolean isTooSoon) {

  /**
   * One line of the log.
   *
   * @param flags what is to be looked at in it
   * @param written when and by whom, with the reason where there is one
   */
  public record Line(
      String entry, String words, List<String> flags, boolean isStruck, String written) {
    public Line {
      flags = List.copyOf(flags);
    }
  }

  public RescueView {
    lines = List.copyOf(lines);
  }

  /** The lines that count, by which one is struck. */
  public List<Line> counting() {
    return lines.stream().filter(line -> !line.isStruck()).toList();
  }
}
