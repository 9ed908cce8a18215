package rungwise.checks.adversary.law;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The call about a long erection, in plain minutes: what was said, and whether it ended. */
public final class Call {

  private static final long FOUR_HOURS = 240;
  private static final long DAY = 1_440;

  /** A start that somebody said; one that nobody knows is -1. */
  public record Start(String entry, long minute) {}

  public final List<Start> starts = new ArrayList<>();

  /** Times that were said and taken back: nobody but a prescriber takes four hours away. */
  private final List<Start> struck = new ArrayList<>();

  public boolean isOpen;

  /** The entry by which one ended that was, or may have been, 4 hours; 0 where none did. */
  private long endedLong;

  /** The doses of a rescue in one call, by their entries, and the entry of its end. */
  private static final class Rescue {
    private final Map<String, Long> given = new HashMap<>();
    private long end;

    private long last() {
      return given.values().stream().mapToLong(Long::longValue).max().orElse(0);
    }

    private boolean stops(List<Ledger.Reviewed> reviews) {
      long since = Math.max(end, last());
      return !given.isEmpty() && reviews.stream().noneMatch(one -> one.entry() > since);
    }
  }

  private final List<Rescue> rescues = new ArrayList<>();

  /** The minute at which the last one was closed. */
  private long closedAt = Long.MIN_VALUE;

  /** A dose of a rescue was given: in the call that is open or ended lately, else one opens. */
  public void given(String entry, long number, long now) {
    if (!isOpen && (rescues.isEmpty() || now - closedAt >= DAY)) {
      open();
    }
    rescues.getLast().given.put(entry, number);
  }

  /** Something of a rescue that is no dose opens a call just so. */
  public void touched(long now) {
    if (!isOpen && (rescues.isEmpty() || now - closedAt >= DAY)) {
      open();
    }
  }

  /** An entry of a rescue is struck. */
  public void undo(String entry) {
    rescues.forEach(one -> one.given.remove(entry));
  }

  public void open() {
    if (!isOpen) {
      rescues.add(new Rescue());
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
  public void end(long entry, long minute, long now) {
    isOpen = false;
    closedAt = now;
    rescues.getLast().end = entry;
    boolean isLong =
        minute < 0
            || Stream.concat(starts.stream(), struck.stream())
                .anyMatch(one -> one.minute() < 0 || minute - one.minute() >= FOUR_HOURS);
    endedLong = isLong ? entry : endedLong;
  }

  boolean stops(List<Ledger.Reviewed> reviews) {
    return isOpen
        || rescues.stream().anyMatch(one -> one.stops(reviews))
        || (endedLong > 0 && reviews.stream().noneMatch(one -> one.entry() > endedLong));
  }
}
