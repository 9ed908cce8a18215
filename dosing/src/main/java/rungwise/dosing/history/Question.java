package rungwise.dosing.history;

import java.time.Instant;
import java.util.Comparator;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.ladder.Beginning;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.screening.Screening;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * Everything that advice may depend on. The same question always has the same answer.
 *
 * @param readiness what is on record for home use
 * @param ladder the signed ladder, or the one proposed for the first signature
 * @param vial the vial in hand, if one is on record
 * @param circumstances what stands around the dose
 * @param now the instant at which it is asked
 */
public record Question(
    AetiologyGroup group,
    Screening screening,
    Set<Readiness> readiness,
    Protocol protocol,
    Ladder ladder,
    History history,
    Optional<VialInHand> vial,
    Circumstances circumstances,
    Instant now) {

  public Question {
    readiness = Set.copyOf(readiness);
  }

  /** The same under other circumstances. */
  public Question with(Circumstances other) {
    return new Question(group, screening, readiness, protocol, ladder, history, vial, other, now);
  }

  /** The same, asked at another instant. */
  public Question at(Instant other) {
    return new Question(
        group, screening, readiness, protocol, ladder, history, vial, circumstances, other);
  }

  /** The preparation that the ladder is for. */
  public Preparation preparation() {
    return ladder.preparation();
  }

  public PreparationId preparationId() {
    return ladder.preparation().id();
  }

  /** The last injection, if it was of this preparation. */
  public Optional<Injection> last() {
    return history.lastOf(preparation());
  }

  /** The last emergency, known or possible, since which nobody has examined him. */
  public Optional<Instant> notExaminedSince() {
    return Stream.concat(
            history.lastReviewed().map(Injection::at).stream(),
            lastOfNobodyKnowsWhat().map(Before.NobodyKnows::at).stream())
        .filter(at -> !circumstances.isExaminedSince(at))
        .max(Comparator.naturalOrder());
  }

  /** The last emergency from before of nobody knows what that a prescriber has reviewed. */
  public Optional<Before.NobodyKnows> lastOfNobodyKnowsWhat() {
    return history.before().lastReviewed(history.reviews());
  }

  /** What the first dose of this preparation rests on. */
  public Beginning beginning() {
    return history.beginning(preparation());
  }

  /** The volume that is proposed as the first one of this preparation, if any is. */
  public Optional<Volume> entry() {
    return beginning().entryTo(ladder);
  }

  /** The smallest time between two injections, by the stricter one of the protocol's versions. */
  public Sourced<TimeSpan> spacing() {
    Sourced<TimeSpan> most = protocol.limits().spacing();
    for (Protocol newer : circumstances.newer()) {
      Sourced<TimeSpan> other = newer.limits().spacing();
      most = other.value().isMoreThan(most.value()) ? other : most;
    }
    return most;
  }

  /** The most injections in any 168 hours, by the stricter one of the protocol's versions. */
  public Sourced<Integer> inSevenDays() {
    Sourced<Integer> least = protocol.limits().inSevenDays();
    for (Protocol newer : circumstances.newer()) {
      Sourced<Integer> other = newer.limits().inSevenDays();
      least = other.value() < least.value() ? other : least;
    }
    return least;
  }
}
