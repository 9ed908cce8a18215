package rungwise.dosing.history;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.known.Preparation;
import rungwise.quantities.Volume;

/**
 * What is known of the time before this record began, beside injections that say when they were.
 *
 * @param undated injections of which it is not known when they were; each stands at the latest
 *     instant at which it can have been
 * @param unmapped long ones of which it is not known what was injected, and that no prescriber has
 *     reviewed
 * @param nobodyKnows long ones of which a prescriber has written that nobody can tell
 * @param isOpen whether he was injected and nobody has asked since when the last time was
 */
public record Before(
    List<Injection> undated,
    List<Unmapped> unmapped,
    List<NobodyKnows> nobodyKnows,
    boolean isOpen) {

  public static final Before NOTHING =
      new Before(List.of(), List.of(), List.of(), /* isOpen= */ false);

  public Before {
    undated = List.copyOf(undated);
    unmapped = List.copyOf(unmapped);
    nobodyKnows = List.copyOf(nobodyKnows);
  }

  /** The same, and one more of nobody knows what. */
  public Before and(NobodyKnows one) {
    return new Before(
        undated, unmapped, Stream.concat(nobodyKnows.stream(), Stream.of(one)).toList(), isOpen);
  }

  /** What may have been an emergency, and that no prescriber has reviewed as one. */
  public List<NobodyKnows> openEmergencies(List<EmergencyReview> reviews) {
    return nobodyKnows.stream()
        .filter(NobodyKnows::mayBeEmergency)
        .filter(one -> one.reviewOf(reviews).isEmpty())
        .toList();
  }

  /** The last of those that a prescriber has reviewed. */
  Optional<NobodyKnows> lastReviewed(List<EmergencyReview> reviews) {
    return nobodyKnows.stream()
        .filter(NobodyKnows::mayBeEmergency)
        .filter(one -> one.reviewOf(reviews).isPresent())
        .max(Comparator.comparing(NobodyKnows::at));
  }

  /**
   * An erection that lasted, or may have lasted, 2 hours or more after nobody knows what.
   *
   * @param drawn the volume of it
   */
  public record Unmapped(Volume drawn, Grade grade, SoftAfter soft) {

    /** "fully firm, soft after 150 min". */
    public String responseWords() {
      return grade.words() + ", " + soft.words();
    }
  }

  /**
   * The same once a prescriber has written that nobody can tell what was injected. What is not
   * known counts as the worse: as if it had been whatever dose is asked about.
   *
   * @param entry the number of the prescriber's entry
   * @param at the latest instant at which it can have been
   */
  public record NobodyKnows(long entry, Instant at, Grade grade, SoftAfter soft) {

    /** Whether it lasted, or may have lasted, 4 hours or more. */
    public boolean mayBeEmergency() {
      return soft.mayReach(DurationLimits.EMERGENCY.value());
    }

    /** "fully firm, soft after 300 min". */
    public String responseWords() {
      return grade.words() + ", " + soft.words();
    }

    /** The review that covers it, the first one. */
    private Optional<EmergencyReview> reviewOf(List<EmergencyReview> reviews) {
      return reviews.stream()
          .filter(review -> review.covers(entry, soft))
          .min(Comparator.comparingLong(EmergencyReview::entry));
    }

    /** Whether a dose that was over in time was given in the clinic after its review. */
    public boolean isTestedSince(History history) {
      return reviewOf(history.reviews()).stream()
          .anyMatch(
              review ->
                  history.injections().stream()
                      .filter(Injection::provesInClinic)
                      .filter(dose -> dose.at().isAfter(at))
                      .anyMatch(dose -> dose.entry() > review.entry()));
    }

    Injection asIfOf(Preparation preparation, Volume volume) {
      return new Injection(
          entry,
          at,
          preparation,
          volume,
          Optional.empty(),
          grade,
          soft,
          SimpleCauses.NOT_ASKED,
          Injection.Setting.HOME,
          Stock.NOT_RECORDED);
    }
  }
}
