package rungwise.checks.adversary.law;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** The call about a long erection, in plain minutes: what was said, and whether it ended. */
public final class Call {

  private static final long FOUR_HOURS = 240;

  /** A start that somebody said; one that nobody knows is -1. */
  public record Start(String entry, long minute) {}

  public final List<Start> starts = new ArrayList<>();

  /** Times that were said and taken back: nobody but a prescriber takes four hours away. */
  private final List<Start> struck = new ArrayList<>();

  public boolean isOpen;

  /** The entry by which one ended that was, or may have been, 4 hours; 0 where none did. */
  private long endedLong;

  public void open() {
    if (!isOpen) {
      starts.clear();
      struck.clear();
      isOpen = true;
    }
  }

  /** A start is taken back. */
  public void strike(String entry) {
    List<Start> gone = starts.stream().filter(one -> one.entry().equals(entry)).toList();
    starts.removeAll(gone);
    gone.stream().filter(one -> one.minute() >= 0).forEach(struck::add);
  }

  /** Soft, or in others' care where no minute is given. */
  public void end(long entry, long minute) {
    isOpen = false;
    boolean isLong =
        minute < 0
            || Stream.concat(starts.stream(), struck.stream())
                .anyMatch(one -> one.minute() < 0 || minute - one.minute() >= FOUR_HOURS);
    endedLong = isLong ? entry : endedLong;
  }

  boolean stops(List<Ledger.Reviewed> reviews) {
    return isOpen || (endedLong > 0 && reviews.stream().noneMatch(one -> one.entry() > endedLong));
  }
}
