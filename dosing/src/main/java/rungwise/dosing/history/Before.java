package rungwise.dosing.history;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.ladder.Beginning;
import rungwise.quantities.Volume;

/**
 * What is known beside the injections of this record: of the time before it began, and of
 * elsewhere. It stops, closes, holds and bounds, and proves nothing.
 *
 * @param undated injections of which it is not known when they were; each stands at the latest
 *     instant at which it can have been
 * @param unmapped long ones of which it is not known what was injected, and that no prescriber has
 *     reviewed
 * @param nobodyKnows long ones of which a prescriber has written that nobody can tell
 * @param isOpen whether he was injected and nobody has asked since when the last time was
 * @param elsewhere what is known of injections in other places
 */
public record Before(
    List<Injection> undated,
    List<Unmapped> unmapped,
    List<NobodyKnows> nobodyKnows,
    boolean isOpen,
    Elsewhere elsewhere) {

  public static final Before NOTHING =
      new Before(List.of(), List.of(), List.of(), /* isOpen= */ false, Elsewhere.NOTHING);

  public Before {
    undated = List.copyOf(undated);
    unmapped = List.copyOf(unmapped);
    nobodyKnows = List.copyOf(nobodyKnows);
  }

  /** The time before alone. */
  public Before(
      List<Injection> undated,
      List<Unmapped> unmapped,
      List<NobodyKnows> nobodyKnows,
      boolean isOpen) {
    this(undated, unmapped, nobodyKnows, isOpen, Elsewhere.NOTHING);
  }

  /** The same, and one more of nobody knows what. */
  public Before and(NobodyKnows one) {
    return new Before(
        undated,
        unmapped,
        Stream.concat(nobodyKnows.stream(), Stream.of(one)).toList(),
        isOpen,
        elsewhere);
  }

  /**
   * The same, with what is known of other places.
   *
   * @param isOpenThere whether nobody has asked since when the last injection there was
   */
  public Before with(Elsewhere other, boolean isOpenThere) {
    return new Before(undated, unmapped, nobodyKnows, isOpen || isOpenThere, other);
  }

  /** Whether it is not known when that was. */
  boolean isUndated(Injection injection) {
    return undated.contains(injection)
        || elsewhere.takenOver().stream().anyMatch(one -> one.told().equals(injection));
  }

  /** All of it that says what it was, in no order. */
  List<Injection> said() {
    return elsewhere.all().isEmpty()
        ? undated
        : Stream.concat(undated.stream(), elsewhere.all().stream()).toList();
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
   * Injections in other places. They stop, close and bound like any other, and count for the time
   * between two; they prove nothing, and no dose is called the same as one of them.
   *
   * @param takenOver the doses that were told when he was taken over, in the order of their entries
   * @param opened the volume up to which a prescriber has opened the schedule since all of them
   * @param joined what other courses of his say of injections
   */
  public record Elsewhere(
      List<TakenOver> takenOver, Optional<Opened> opened, List<Injection> joined) {

    public static final Elsewhere NOTHING = new Elsewhere(List.of(), Optional.empty());

    public Elsewhere {
      takenOver = List.copyOf(takenOver);
      joined = List.copyOf(joined);
    }

    /** Of a man who has no other course. */
    public Elsewhere(List<TakenOver> takenOver, Optional<Opened> opened) {
      this(takenOver, opened, List.of());
    }

    /** The same, with what other courses of his say. */
    public Elsewhere withJoined(List<Injection> others) {
      return new Elsewhere(takenOver, opened, others);
    }

    /** Every injection, in no order. */
    public List<Injection> all() {
      return Stream.concat(takenOver.stream().map(TakenOver::told), joined.stream()).toList();
    }

    /** What counts for the time between two: those here and elsewhere, in the order of time. */
    public List<Injection> with(List<Injection> here) {
      return takenOver.isEmpty() && joined.isEmpty()
          ? here
          : Stream.concat(here.stream(), all().stream()).sorted(History.IN_ORDER).toList();
    }

    /** What a first dose here may hold at most of each told one. */
    List<Beginning.Held> parts() {
      return takenOver.stream().map(TakenOver::part).toList();
    }

    /** What the first dose of a preparation rests on, where nothing here speaks of it. */
    Beginning beginning(Preparation next) {
      return takenOver.isEmpty()
          ? new Beginning.AsNew()
          : new Beginning.AsTold(
              takenOver.stream().map(one -> one.told().held()).toList(),
              parts(),
              opened.filter(one -> one.preparation().isSameAs(next)).map(Opened::upTo));
    }
  }

  /**
   * A dose that he injects elsewhere, as it was told here.
   *
   * @param told at the latest instant at which it can have been
   * @param percent how much of it a first dose here may be: 1 to 50
   */
  public record TakenOver(Injection told, int percent) {

    private static final int WHOLE = 100;

    public TakenOver {
      if (percent < 1 || percent + percent > WHOLE) {
        throw new IllegalArgumentException("bug: a first dose of " + percent + " percent");
      }
    }

    /** What a first dose here may hold at most of it, rounded down to a microlitre. */
    public Beginning.Held part() {
      return new Beginning.Held(
          told.preparation(), Volume.ofMicrolitres(told.drawn().microlitres() * percent / WHOLE));
    }

    /** Whether a dose shows how he bears what it holds here: watched after it had been told. */
    public boolean isAnsweredBy(Injection here) {
      return here.provesInClinic() && here.entry() > told.entry() && !here.at().isBefore(told.at());
    }
  }

  /** A prescriber's entry that the schedule begins at a part of a told dose. */
  public record Opened(Preparation preparation, Volume upTo) {}

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
