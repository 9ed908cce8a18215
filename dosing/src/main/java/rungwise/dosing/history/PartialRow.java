package rungwise.dosing.history;

import java.util.List;
import java.util.Optional;
import rungwise.dosing.protocol.Protocol;

/**
 * Partial responses in a row to one dose: grade 2, over in time, with nothing wrong, at the same
 * volume of the same preparation. Anything else ends the row, and so does another preparation. A
 * response after two doses in one visit belongs to both, so the second of them is not counted.
 *
 * @param counted how many there are
 * @param wanted how many a protocol waits for before a step up, 2 or 3
 */
public record PartialRow(int counted, int wanted) {

  /**
   * The row that the last injection of a history ends; empty where that was no partial response, or
   * where the protocol goes up after each.
   */
  public static Optional<PartialRow> of(History history, Protocol protocol) {
    int wanted = protocol.partialResponsesBeforeStep();
    return history
        .last()
        .filter(last -> wanted > 1 && last.isPartial())
        .map(last -> new PartialRow(counted(history, last), wanted));
  }

  /** Whether nothing waits for another partial response. */
  public static boolean isEnough(History history, Protocol protocol) {
    return of(history, protocol).filter(row -> !row.isEnough()).isEmpty();
  }

  private static int counted(History history, Injection last) {
    List<Injection> same = history.sinceChangeTo(last.preparation());
    return (int)
        same.reversed().stream()
            .takeWhile(one -> one.isPartial() && one.drawn().equals(last.drawn()))
            .filter(one -> history.sameStayBefore(one).isEmpty())
            .count();
  }

  /** Whether there are as many as the protocol waits for. */
  public boolean isEnough() {
    return counted >= wanted;
  }

  /** "1 of 2". */
  @Override
  public String toString() {
    return counted + " of " + wanted;
  }
}
