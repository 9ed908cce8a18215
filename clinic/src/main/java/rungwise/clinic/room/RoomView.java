package rungwise.clinic.room;

import java.util.List;
import java.util.Optional;

/**
 * The board of the room in words.
 *
 * @param answer how many are under observation and how many have to be looked at, in a sentence
 * @param asOf the clock time at which this was so
 * @param men those who are to be looked at now first, then the one injected first
 * @param lastClosed the day that was closed last, if one was
 * @param isClosed whether that is today
 */
public record RoomView(
    String answer,
    String asOf,
    List<WatchView> men,
    Optional<String> lastClosed,
    boolean isClosed) {

  public RoomView {
    men = List.copyOf(men);
  }
}
