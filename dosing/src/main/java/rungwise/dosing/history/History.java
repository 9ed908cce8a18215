package rungwise.dosing.history;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.ladder.Carried;
import rungwise.dosing.supply.Freshness;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * Everything of one course that a rule may look at.
 *
 * @param injections in the order of time, whatever the order given
 * @param struck reports that were corrected or withdrawn and that no prescriber has confirmed to be
 *     wrong
 * @param observing injections in the clinic of which it is not yet recorded how they ended
 * @param before what is known of the time before this record began
 */
public record History(
    List<Injection> injections,
    List<Struck> struck,
    List<Observing> observing,
    List<Reopening> reopenings,
    List<EmergencyReview> reviews,
    Before before) {

  private static final TimeSpan DAY = TimeSpan.ofHours(24);

  private static final Comparator<Injection> IN_ORDER =
      Comparator.comparing(Injection::at).thenComparingLong(Injection::entry);

  public static final History EMPTY = of(List.of());

  /** These injections and nothing else. */
  public static History of(List<Injection> injections) {
    return new History(injections, List.of(), List.of(), List.of(), List.of(), Before.NOTHING);
  }

  public History {
    injections = injections.stream().sorted(IN_ORDER).toList();
    struck = List.copyOf(struck);
    observing = List.copyOf(observing);
    reopenings = List.copyOf(reopenings);
    reviews = List.copyOf(reviews);
  }

  /** The same, with what is known of the time before this record began. */
  public History withPast(List<Injection> dated, Before known) {
    return new History(
        Stream.concat(dated.stream(), injections.stream()).toList(),
        struck,
        observing,
        reopenings,
        reviews,
        known);
  }

  /** The last injection of any preparation. */
  public Optional<Injection> last() {
    return injections.isEmpty() ? Optional.empty() : Optional.of(injections.getLast());
  }

  /** The injections of one preparation. */
  public List<Injection> of(PreparationId preparation) {
    return injections.stream().filter(one -> one.preparation().id().equals(preparation)).toList();
  }

  /**
   * The injections of one preparation since another one was injected. Whoever comes back to a
   * preparation begins it anew.
   */
  public List<Injection> sinceChangeTo(PreparationId preparation) {
    int from = injections.size();
    while (from > 0 && injections.get(from - 1).preparation().id().equals(preparation)) {
      from--;
    }
    return injections.subList(from, injections.size());
  }

  /** The last injection, if it was of that preparation. */
  public Optional<Injection> lastOf(PreparationId preparation) {
    return last().filter(one -> one.preparation().id().equals(preparation));
  }

  /**
   * All that was said and still counts for stopping, closing and holding, in the order of time: the
   * injections, those from before of which it is not known when they were, and what struck reports
   * said.
   */
  public List<Injection> everSaid() {
    return struck.isEmpty() && before.undated().isEmpty()
        ? injections
        : Stream.of(
                injections.stream(),
                before.undated().stream(),
                struck.stream().filter(Struck::counts).map(Struck::said))
            .flatMap(said -> said)
            .sorted(IN_ORDER)
            .toList();
  }

  /** Whether it is not known when that was: it stands at the latest instant at which it can be. */
  public boolean isUndated(Injection injection) {
    return before.undated().contains(injection);
  }

  /**
   * Injections that were, or may have been, an emergency, and that no prescriber has reviewed: each
   * once, by the gravest of what was said of it.
   */
  public List<Injection> openEmergencies() {
    var open =
        new ArrayList<>(
            Stream.concat(injections.stream(), before.undated().stream())
                .filter(Injection::mayBeEmergency)
                .filter(this::isOpen)
                .toList());
    Set<Long> told = open.stream().map(Injection::entry).collect(Collectors.toSet());
    struck.stream()
        .filter(one -> one.mayBeEmergency() && isOpen(one.said()))
        .sorted(Comparator.comparing(one -> !one.said().soft().saysEmergency()))
        .filter(one -> told.add(one.now()))
        .map(Struck::said)
        .forEach(open::add);
    return List.copyOf(open);
  }

  private boolean isOpen(Injection emergency) {
    return reviewOf(emergency).isEmpty();
  }

  /** The last emergency, known or possible, that a prescriber has reviewed. */
  public Optional<Injection> lastReviewed() {
    return emergencies().filter(one -> !isOpen(one)).max(IN_ORDER);
  }

  private Stream<Injection> emergencies() {
    return Stream.of(
            injections.stream().filter(Injection::mayBeEmergency),
            before.undated().stream().filter(Injection::mayBeEmergency),
            struck.stream().filter(Struck::mayBeEmergency).map(Struck::said))
        .flatMap(said -> said);
  }

  /** The review that covers it, the first one. */
  private Optional<EmergencyReview> reviewOf(Injection emergency) {
    return reviews.stream()
        .filter(review -> review.covers(emergency))
        .min(Comparator.comparingLong(EmergencyReview::entry));
  }

  /** Whether a dose that was over in time was given in the clinic after an emergency's review. */
  public boolean isTestedSince(Injection emergency) {
    return reviewOf(emergency).stream()
        .anyMatch(
            review ->
                injections.stream()
                    .filter(dose -> dose.place() == Place.CLINIC && dose.isKnownShort())
                    .filter(dose -> dose.at().isAfter(emergency.at()))
                    .anyMatch(dose -> dose.entry() > review.entry()));
  }

  /**
   * The injection that keeps a volume of a preparation closed, if one does: of this preparation, or
   * of another one of which this volume holds as much or more.
   */
  public Optional<Injection> closing(Preparation preparation, Volume volume) {
    return everSaid().stream()
        .filter(Injection::closesVolume)
        .filter(one -> one.isReachedBy(preparation, volume))
        .filter(one -> !isReopened(one, preparation.id(), volume))
        .findFirst();
  }

  private boolean isReopened(Injection closing, PreparationId preparation, Volume volume) {
    return reopenings.stream()
        .filter(reopening -> reopening.preparation().equals(preparation))
        .filter(reopening -> reopening.entry() > closing.entry())
        .anyMatch(reopening -> !volume.isMoreThan(reopening.upTo()));
  }

  /**
   * The injection because of which a volume would be too high: it lasted over an hour, or may have,
   * at less than this volume, and no later one at that dose or more is known to have been short.
   */
  public Optional<Injection> forbiddingHigher(Preparation preparation, Volume volume) {
    return everSaid().stream()
        .filter(Injection::forbidsHigherDose)
        .filter(one -> one.isPassedBy(preparation, volume))
        .filter(one -> injections.stream().noneMatch(other -> isAnswer(one, other)))
        .findFirst();
  }

  /** What is said of the same injection now is no answer to what was said of it before. */
  private boolean isAnswer(Injection earlier, Injection later) {
    return later.isKnownShort()
        && struck.stream().noneMatch(one -> one.said() == earlier && one.isReplacedBy(later))
        && later.at().isAfter(earlier.at())
        && earlier.isReachedBy(later.preparation(), later.drawn());
  }

  /** Injections after an instant less a span, that far end left out, and up to the instant. */
  public List<Injection> within(TimeSpan span, Instant until) {
    Instant from = until.minusMillis(span.milliseconds());
    return injections.stream()
        .filter(one -> one.at().isAfter(from) && !one.at().isAfter(until))
        .toList();
  }

  /** Doses in the same stay before this one: in the clinic, within the day before it. */
  public List<Injection> sameStayBefore(Injection injection) {
    return injection.place() == Place.HOME
        ? List.of()
        : within(DAY, injection.at()).stream()
            .filter(one -> one.at().isBefore(injection.at()))
            .filter(one -> one.place() == Place.CLINIC)
            .filter(one -> one.preparation().id().equals(injection.preparation().id()))
            .toList();
  }

  /** All that was injected of a preparation in the stay of one injection, itself counted. */
  public Volume cumulative(Injection injection) {
    return sameStayBefore(injection).stream()
        .map(Injection::drawn)
        .reduce(injection.drawn(), Volume::plus);
  }

  /**
   * The last volume of a preparation that was over in time, with nothing at that volume or less
   * that lasted too long.
   */
  public Optional<Injection> lastTolerated(PreparationId preparation) {
    List<Injection> same = of(preparation);
    return same.stream()
        .filter(Injection::isKnownShort)
        .filter(
            one ->
                same.stream()
                    .filter(Injection::forbidsHigherDose)
                    .noneMatch(other -> !other.drawn().isMoreThan(one.drawn())))
        .reduce((earlier, later) -> later);
  }

  /** What he last tolerated of the preparation that he was injected with before this one. */
  public Optional<Carried> carriedTo(PreparationId next) {
    return injections.stream()
        .map(Injection::preparation)
        .filter(preparation -> !preparation.id().equals(next))
        .reduce((earlier, later) -> later)
        .flatMap(
            before ->
                lastTolerated(before.id())
                    .map(tolerated -> new Carried(before, tolerated.drawn())));
  }

  /** The last dose of a preparation that was drawn from fresh stock and was over in time. */
  public Optional<Injection> lastOnFreshStock(PreparationId preparation) {
    return of(preparation).stream()
        .filter(one -> one.stock().freshness() == Freshness.FRESH)
        .filter(Injection::isKnownShort)
        .reduce((earlier, later) -> later);
  }
}
