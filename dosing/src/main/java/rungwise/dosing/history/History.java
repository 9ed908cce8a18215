package rungwise.dosing.history;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.ladder.Beginning;
import rungwise.dosing.supply.Freshness;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * Everything of one course that a rule may look at.
 *
 * @param injections in the order of time, whatever the order given
 * @param mayHaveBeen what an injection from nobody knows which vial may have been besides, once for
 *     each other label that he had; it stops, closes and holds, and proves nothing
 * @param struck reports that were corrected or withdrawn and that no prescriber has confirmed to be
 *     wrong
 * @param observing injections in the clinic of which it is not yet recorded how they ended
 * @param acceptances how long an erection may last at doses that were signed
 * @param before what is known of the time before this record began
 */
public record History(
    List<Injection> injections,
    List<Injection> mayHaveBeen,
    List<Struck> struck,
    List<Observing> observing,
    List<Reopening> reopenings,
    List<EmergencyReview> reviews,
    List<Acceptance> acceptances,
    Before before) {

  private static final TimeSpan DAY = TimeSpan.ofHours(24);

  static final Comparator<Injection> IN_ORDER =
      Comparator.comparing(Injection::at).thenComparingLong(Injection::entry);

  public static final History EMPTY = of(List.of());

  /** These injections and nothing else. */
  public static History of(List<Injection> injections) {
    return new History(
        injections,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        Before.NOTHING);
  }

  public History {
    injections = injections.stream().sorted(IN_ORDER).toList();
    mayHaveBeen = List.copyOf(mayHaveBeen);
    struck = List.copyOf(struck);
    observing = List.copyOf(observing);
    reopenings = List.copyOf(reopenings);
    reviews = List.copyOf(reviews);
    acceptances = List.copyOf(acceptances);
  }

  /**
   * The same, with what is known of the time before this record began.
   *
   * @param taken what was brought in and taken back, and goes on counting
   */
  public History withPast(List<Injection> dated, List<Struck> taken, Before known) {
    return new History(
        Stream.concat(dated.stream(), injections.stream()).toList(),
        mayHaveBeen,
        Stream.concat(struck.stream(), taken.stream()).toList(),
        observing,
        reopenings,
        reviews,
        acceptances,
        known);
  }

  /** The last injection of any preparation. */
  public Optional<Injection> last() {
    return injections.isEmpty() ? Optional.empty() : Optional.of(injections.getLast());
  }

  /** The injections of one preparation, whatever record of it they name. */
  public List<Injection> of(Preparation preparation) {
    return injections.stream().filter(one -> one.preparation().isSameAs(preparation)).toList();
  }

  /**
   * The injections of one preparation since another one was injected. Whoever comes back to a
   * preparation begins it anew.
   */
  public List<Injection> sinceChangeTo(Preparation preparation) {
    int from = injections.size();
    while (from > 0 && injections.get(from - 1).preparation().isSameAs(preparation)) {
      from--;
    }
    return injections.subList(from, injections.size());
  }

  /** The last injection, if it was of that preparation. */
  public Optional<Injection> lastOf(Preparation preparation) {
    return last().filter(one -> one.preparation().isSameAs(preparation));
  }

  /**
   * All that was said and still counts for stopping, closing and holding, in the order of time: the
   * injections, what they may have been besides, those from before of which it is not known when
   * they were, those elsewhere, and what struck reports said.
   */
  public List<Injection> everSaid() {
    return struck.isEmpty() && mayHaveBeen.isEmpty() && before.said().isEmpty()
        ? injections
        : Stream.of(
                injections.stream(),
                mayHaveBeen.stream(),
                before.said().stream(),
                struck.stream().filter(Struck::counts).map(Struck::said))
            .flatMap(said -> said)
            .sorted(IN_ORDER)
            .toList();
  }

  /** Whether it is not known when that was: it stands at the latest instant at which it can be. */
  public boolean isUndated(Injection injection) {
    return before.isUndated(injection);
  }

  /**
   * Injections that were, or may have been, an emergency, and that no prescriber has reviewed: each
   * once, by the gravest of what was said of it.
   */
  public List<Injection> openEmergencies() {
    var open = new ArrayList<Injection>();
    addOpen(injections, open);
    addOpen(before.said(), open);
    Map<Long, Long> told = new HashMap<>();
    open.forEach(one -> told.put(one.entry(), one.entry()));
    struck.stream()
        .filter(one -> one.mayBeEmergency() && isOpen(one.said()))
        .sorted(Comparator.comparing(one -> !one.said().soft().saysEmergency()))
        .filter(one -> isFirst(told, one))
        .map(Struck::said)
        .filter(said -> open.stream().noneMatch(one -> isOtherLabelOf(one, said)))
        .forEach(open::add);
    return List.copyOf(open);
  }

  /** Everything that was said of them and does not say when the erection was over. */
  public List<Injection> openWithoutEnd() {
    return emergencies().filter(this::isOpen).filter(one -> !one.soft().hasKnownEnd()).toList();
  }

  private void addOpen(List<Injection> said, List<Injection> open) {
    said.stream().filter(one -> one.mayBeEmergency() && isOpen(one)).forEach(open::add);
  }

  /** Of one injection one report is told; of one entry that told of several, each of them. */
  private static boolean isFirst(Map<Long, Long> told, Struck one) {
    return told.computeIfAbsent(one.now(), now -> one.said().entry()).equals(one.said().entry());
  }

  private boolean isOpen(Injection emergency) {
    return reviewOf(emergency).isEmpty();
  }

  /** The last emergency, known or possible, that a prescriber has reviewed. */
  public Optional<Injection> lastReviewed() {
    return reviews.isEmpty()
        ? Optional.empty()
        : emergencies().filter(one -> !isOpen(one)).max(IN_ORDER);
  }

  private Stream<Injection> emergencies() {
    return Stream.of(
            injections.stream().filter(Injection::mayBeEmergency),
            before.said().stream().filter(Injection::mayBeEmergency),
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
                    .filter(Injection::provesInClinic)
                    .filter(dose -> dose.at().isAfter(emergency.at()))
                    .anyMatch(dose -> dose.entry() > review.entry()));
  }

  /**
   * The injection that keeps a volume of a preparation closed, if one does: of this preparation, or
   * of another one of which this volume holds as much or more, or of nobody knows what.
   */
  public Optional<Injection> closing(Preparation preparation, Volume volume) {
    for (Injection one : everSaid()) {
      if (one.closesVolume()
          && one.isReachedBy(preparation, volume)
          && !isReopened(one, preparation.id(), volume)) {
        return Optional.of(one);
      }
    }
    return before.nobodyKnows().stream()
        .map(one -> one.asIfOf(preparation, volume))
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
    for (Injection one : everSaid()) {
      if (one.forbidsHigherDose()
          && one.isPassedBy(preparation, volume)
          && injections.stream().noneMatch(other -> isAnswer(one, other))) {
        return Optional.of(one);
      }
    }
    return Optional.empty();
  }

  /** What is said of the same injection now is no answer to what was said of it before. */
  private boolean isAnswer(Injection earlier, Injection later) {
    return later.provesShort()
        && struck.stream().noneMatch(one -> one.said().equals(earlier) && one.isReplacedBy(later))
        && later.at().isAfter(earlier.at())
        && earlier.isReachedBy(later.preparation(), later.drawn());
  }

  /**
   * The injections because of which a volume waits until a prescriber signs anew: at it or less an
   * erection lasted over an hour, or nobody knows how long, and nobody has accepted that.
   */
  public List<Injection> waiting(Preparation preparation, Volume volume) {
    var waiting = new ArrayList<Injection>();
    for (Injection one : everSaid()) {
      if (one.waitsForSignature()
          && one.isReachedBy(preparation, volume)
          && acceptances.stream().noneMatch(accepted -> accepted.covers(one))) {
        waiting.add(one);
      }
    }
    return List.copyOf(waiting);
  }

  /** Injections after an instant less a span, that far end left out, and up to the instant. */
  public List<Injection> within(TimeSpan span, Instant until) {
    Instant from = until.minusMillis(span.milliseconds());
    return injections.stream()
        .filter(one -> one.at().isAfter(from) && !one.at().isAfter(until))
        .toList();
  }

  /**
   * Doses in the same stay before this one, in the order of time and of entries: in the clinic,
   * within the day before it, or at the very same instant wherever it was.
   */
  public List<Injection> sameStayBefore(Injection injection) {
    return injections.subList(0, Math.max(0, injections.lastIndexOf(injection))).stream()
        .filter(one -> one.preparation().isSameAs(injection.preparation()))
        .filter(one -> isSameStay(one, injection))
        .toList();
  }

  private static boolean isSameStay(Injection earlier, Injection later) {
    return earlier.at().equals(later.at())
        || (!earlier.isAtHome()
            && !later.isAtHome()
            && DAY.after(earlier.at()).isAfter(later.at()));
  }

  /** All that was injected of a preparation in the stay of one injection, itself counted. */
  public Volume cumulative(Injection injection) {
    return sameStayBefore(injection).stream()
        .map(Injection::drawn)
        .reduce(injection.drawn(), Volume::plus);
  }

  /**
   * The last dose of a preparation that is known to have gone in and to have been over in time,
   * with nothing that holds as little or less, of any preparation, that lasted too long. A dose
   * from fresh stock comes before all others: older stock holds less than its label says.
   */
  public Optional<Injection> lastTolerated(Preparation preparation) {
    return lastTolerated(preparation, injections);
  }

  private Optional<Injection> lastTolerated(Preparation preparation, List<Injection> of) {
    List<Injection> tolerated =
        of.stream()
            .filter(one -> one.preparation().isSameAs(preparation))
            .filter(Injection::provesShort)
            .filter(this::isBelowLong)
            .toList();
    return last(tolerated.stream().filter(History::isFresh)).or(() -> last(tolerated.stream()));
  }

  private boolean isBelowLong(Injection one) {
    return everTooLong().noneMatch(other -> other.isReachedBy(one.preparation(), one.drawn()));
  }

  private Stream<Injection> everTooLong() {
    return everSaid().stream().filter(Injection::forbidsHigherDose);
  }

  private static boolean isFresh(Injection one) {
    return one.stock().freshness() == Freshness.FRESH;
  }

  private static Optional<Injection> last(Stream<Injection> injections) {
    return injections.reduce((earlier, later) -> later);
  }

  /** What the first dose of a preparation rests on, since another one was injected. */
  public Beginning beginning(Preparation next) {
    List<Injection> before = injections.subList(0, injections.size() - sinceChangeTo(next).size());
    return before.reversed().stream()
        .map(Injection::preparation)
        .distinct()
        .flatMap(one -> lastTolerated(one, before).stream())
        .findFirst()
        .map(one -> one.carried(tooLongSince(one)))
        .orElseGet(() -> afterNothingTolerated(before, next));
  }

  private List<Beginning.Held> tooLongSince(Injection tolerated) {
    Stream<Injection> since = everTooLong().filter(one -> one.at().isAfter(tolerated.at()));
    return since.map(Injection::held).toList();
  }

  /**
   * What was struck counts too until a prescriber agrees; of this preparation while nothing of it
   * counts, because then nothing else speaks of it. What he may have been injected with, from
   * nobody knows which vial, makes a change of it only where he was injected with anything else.
   */
  private Beginning afterNothingTolerated(List<Injection> before, Preparation next) {
    boolean isNothingOfIt = before.size() == injections.size();
    List<Injection> ofNext =
        everSaid().stream()
            .filter(one -> !isNothingOfIt)
            .filter(one -> one.preparation().isSameAs(next) && !before.contains(one))
            .toList();
    List<Injection> tooLong = everTooLong().filter(one -> !ofNext.contains(one)).toList();
    boolean isNew =
        before.isEmpty()
            && tooLong.stream()
                .allMatch(one -> ofNext.stream().anyMatch(read -> mayHaveBeen(read, one)));
    return tooLong.isEmpty() || isNew
        ? this.before.elsewhere().beginning(next)
        : new Beginning.BelowTooLong(
            tooLong.stream().map(Injection::held).toList(), this.before.elsewhere().parts());
  }

  /** Whether both are one injection from nobody knows which vial, by two of the labels he had. */
  private boolean isOtherLabelOf(Injection told, Injection said) {
    return mayHaveBeen(told, said) && !told.preparation().isSameAs(said.preparation());
  }

  /** Whether one is what another may have been besides, from nobody knows which vial. */
  private boolean mayHaveBeen(Injection read, Injection besides) {
    return read.entry() == besides.entry()
        && read.at().equals(besides.at())
        && read.drawn().equals(besides.drawn())
        && !isUndated(besides);
  }

  /** The doses that are proven on fresh stock to be over in time, of whatever preparation. */
  public List<Injection> provenOnFreshStock() {
    return injections.stream().filter(Injection::provesShort).filter(History::isFresh).toList();
  }
}
