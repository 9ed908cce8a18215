package rungwise.clinic.course;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseFact.FaultAcknowledged;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.soundness.Acknowledgement;
import rungwise.clinic.soundness.Acknowledgement.Side;

/**
 * A fact as it stands in the record.
 *
 * @param number rises with every entry of the whole clinic
 * @param corrects the entry that this one replaces
 * @param reason why, in the writer's words, where a reason is asked for
 */
public record CourseEntry(
    long number,
    EntryId id,
    Instant recordedAt,
    AccountId recordedBy,
    Optional<EntryId> corrects,
    Optional<String> reason,
    CourseFact fact) {

  /** What people have acknowledged of faults, in the order of the entries. */
  static List<Acknowledgement> acknowledgements(List<CourseEntry> entries) {
    return entries.stream().flatMap(entry -> entry.acknowledgement().stream()).toList();
  }

  private Optional<Acknowledgement> acknowledgement() {
    return fact instanceof FaultAcknowledged(long faulty, String read, Side side)
        ? Optional.of(new Acknowledgement(number, faulty, read, recordedBy.text(), side))
        : Optional.empty();
  }

  /**
   * The entries that count: those that no later one corrects. Up to the last acknowledged fault
   * they prove nothing: what is left of each is what stops.
   *
   * @param unproven the number of the entry that acknowledged it; 0 if none did
   */
  static List<CourseEntry> counting(List<CourseEntry> entries, long unproven) {
    Set<EntryId> corrected =
        entries.stream()
            .flatMap(entry -> entry.corrects().stream())
            .collect(Collectors.toUnmodifiableSet());
    return entries.stream()
        .filter(entry -> !corrected.contains(entry.id()))
        .flatMap(entry -> entry.number() > unproven ? Stream.of(entry) : entry.onlyWhatStops())
        .toList();
  }

  private Stream<CourseEntry> onlyWhatStops() {
    return fact.onlyWhatStops().stream()
        .map(left -> new CourseEntry(number, id, recordedAt, recordedBy, corrects, reason, left));
  }

  /** The minute in which it was written: a form's time has no seconds. */
  public Instant minute() {
    return recordedAt.truncatedTo(ChronoUnit.MINUTES);
  }
}
