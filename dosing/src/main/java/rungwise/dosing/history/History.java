package rungwise.dosing.history;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * Everything of one course that a rule may look at.
 *
 * @param injections in the order of time, whatever the order given
 */
public record History(
    List<Injection> injections, List<Reopening> reopenings, List<EmergencyReview> reviews) {

  public static final History EMPTY = new History(List.of(), List.of(), List.of());

  public History {
    injections =
        injections.stream()
            .sorted(Comparator.comparing(Injection::at).thenComparingLong(Injection::entry))
            .toList();
    reopenings = List.copyOf(reopenings);
    reviews = List.copyOf(reviews);
  }

  /** The last injection of any preparation. */
  public Optional<Injection> last() {
    return injections.isEmpty() ? Optional.empty() : Optional.of(injections.getLast());
  }

  /** The injections of one preparation. */
  public List<Injection> of(PreparationId preparation) {
    return injections.stream().filter(one -> one.preparation().equals(preparation)).toList();
  }

  /** The last injection of one preparation. */
  public Optional<Injection> lastOf(PreparationId preparation) {
    return of(preparation).stream().reduce((earlier, later) -> later);
  }

  /** Injections that were, or may have been, an emergency and that nobody has reviewed. */
  public List<Injection> openEmergencies() {
    return injections.stream()
        .filter(Injection::mayBeEmergency)
        .filter(one -> reviews.stream().noneMatch(review -> review.entry() > one.entry()))
        .toList();
  }

  /** The injection that keeps a volume of a preparation closed, if one does. */
  public Optional<Injection> closing(PreparationId preparation, Volume volume) {
    return of(preparation).stream()
        .filter(Injection::closesVolume)
        .filter(one -> !one.drawn().isMoreThan(volume))
        .filter(one -> !isReopened(one, volume))
        .findFirst();
  }

  private boolean isReopened(Injection closing, Volume volume) {
    return reopenings.stream()
        .filter(reopening -> reopening.preparation().equals(closing.preparation()))
        .filter(reopening -> reopening.entry() > closing.entry())
        .anyMatch(reopening -> !volume.isMoreThan(reopening.upTo()));
  }

  /**
   * The injection because of which a volume would be too high: it lasted over an hour, or may have,
   * at less than this volume, and no later one at that volume or more is known to have been short.
   */
  public Optional<Injection> forbiddingHigher(PreparationId preparation, Volume volume) {
    List<Injection> same = of(preparation);
    return same.stream()
        .filter(Injection::forbidsHigherDose)
        .filter(one -> one.drawn().isLessThan(volume))
        .filter(one -> same.stream().noneMatch(other -> isAnswer(one, other)))
        .findFirst();
  }

  private static boolean isAnswer(Injection earlier, Injection later) {
    return later.at().isAfter(earlier.at())
        && !later.drawn().isLessThan(earlier.drawn())
        && later.isKnownShort();
  }

  /** Injections after an instant less a span, that far end left out, and up to the instant. */
  public List<Injection> within(TimeSpan span, Instant until) {
    Instant from = until.minusMillis(span.milliseconds());
    return injections.stream()
        .filter(one -> one.at().isAfter(from) && !one.at().isAfter(until))
        .toList();
  }
}
