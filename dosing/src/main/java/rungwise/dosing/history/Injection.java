package rungwise.dosing.history;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.ladder.Beginning;
import rungwise.dosing.ladder.Carried;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * One injection that happened and what followed it.
 *
 * @param entry the number of the record's entry that says so; a later entry has a larger number
 * @param at when it was injected
 * @param preparation what was injected, with its composition at that time
 * @param drawn the volume really drawn
 * @param ordered the volume that was signed for it; empty if none was
 * @param setting where it was, and who saw it
 */
public record Injection(
    long entry,
    Instant at,
    Preparation preparation,
    Volume drawn,
    Optional<Volume> ordered,
    Grade grade,
    SoftAfter soft,
    SimpleCauses causes,
    Setting setting,
    Stock stock) {

  /** Where an injection was, and who saw it. What was only told of the clinic grants nothing. */
  public enum Setting {
    HOME,

    /**
     * Somebody said that it was in the clinic and nobody there wrote it down; or it was watched
     * there and said later to have been at home. It proves nothing, and is no dose at home.
     */
    CLINIC_AS_TOLD,

    /** It was given in the clinic and watched there until its end was written down. */
    CLINIC_OBSERVED;

    /** The one of a place. */
    public static Setting of(Place place, boolean isObserved) {
      return switch (place) {
        case HOME -> isObserved ? CLINIC_AS_TOLD : HOME;
        case CLINIC -> isObserved ? CLINIC_OBSERVED : CLINIC_AS_TOLD;
      };
    }
  }

  public Injection {
    if (drawn.equals(Volume.ZERO) || ordered.equals(Optional.of(Volume.ZERO))) {
      throw new IllegalArgumentException("bug: an injection of nothing");
    }
  }

  public boolean isAtHome() {
    return setting == Setting.HOME;
  }

  /** It was, or may have been, an emergency. A duration counts whatever the grade. */
  public boolean mayBeEmergency() {
    return soft.mayReach(DurationLimits.EMERGENCY.value());
  }

  /** It lasted, or may have lasted, so long that its volume closes. */
  public boolean closesVolume() {
    return soft.mayReach(DurationLimits.CLOSES_VOLUME.value());
  }

  /** It lasted, or may have lasted, too long for any higher dose. */
  public boolean forbidsHigherDose() {
    return soft.mayPass(DurationLimits.NO_HIGHER_DOSE.value()) || isNotKnownHowLong();
  }

  /**
   * Whether its dose waits until a prescriber signs anew: it lasted, or may have lasted, over an
   * hour and under two, or it was firm and nobody knows how long. What lasted two hours or more
   * closes its volume instead.
   */
  public boolean waitsForSignature() {
    return !closesVolume()
        && (soft.mayPass(DurationLimits.NO_HIGHER_DOSE.value()) || isFirmNotKnownHowLong());
  }

  private boolean isFirmNotKnownHowLong() {
    return grade.isFirm() && !soft.isKnown();
  }

  /** Whether there was some firmness and nobody knows how long. */
  public boolean isNotKnownHowLong() {
    return grade.isAnyFirmness() && !soft.isKnown();
  }

  /** It is known to have been over in time. */
  public boolean isKnownShort() {
    return !forbidsHigherDose();
  }

  /**
   * Whether it is known to have gone in. After something went wrong it is not; where nobody has
   * asked, only some firmness shows it, because a dose that leaked away looks like one that did
   * nothing.
   */
  public boolean wentIn() {
    return switch (causes) {
      case NONE_FOUND -> true;
      case ONE_FOUND -> false;
      case NOT_ASKED -> grade.isAnyFirmness();
    };
  }

  /**
   * Whether it shows that a dose of this size is over in time: it went in, from a vial whose label
   * is on record, and was known to be short. It only ever grants: what stops, closes or holds asks
   * every injection.
   */
  public boolean provesShort() {
    return wentIn() && isKnownShort() && stock.isLabelKnown();
  }

  /**
   * Whether it fills "given in the clinic": seen there from the injection to its end, and shown to
   * be over in time. A report never does, whatever it says of the place.
   */
  public boolean provesInClinic() {
    return setting == Setting.CLINIC_OBSERVED && provesShort();
  }

  /** A poor response, over in time, with nothing wrong: what a signed next step waits for. */
  public boolean wasTooLittle() {
    return !grade.isUseful() && isKnownShort() && causes == SimpleCauses.NONE_FOUND;
  }

  /** A partial response that speaks of the dose: too little, but firm. */
  public boolean isPartial() {
    return grade == Grade.FIRM_NOT_USABLE && wasTooLittle();
  }

  /** Whether a dose is at least as strong as this one was, of this or of another preparation. */
  public boolean isReachedBy(Preparation other, Volume volume) {
    return other.holdsAtLeast(volume, preparation, drawn);
  }

  /** Whether a dose is stronger than this one was. */
  public boolean isPassedBy(Preparation other, Volume volume) {
    return other.holdsMore(volume, preparation, drawn);
  }

  /**
   * Whether this report of the same injection completes what was said of it before, and takes
   * nothing away that spoke for danger: the same time, an end that was possible by then, and a dose
   * of which every component is no more than was said. Where neither says how it ended, it was no
   * less firm. Whatever else is said contradicts it.
   */
  public boolean completes(Injection said) {
    return at.equals(said.at)
        && soft.isWithin(said.soft)
        && (soft.isKnown() || grade.compareTo(said.grade) >= 0)
        && isReachedBy(said.preparation, said.drawn);
  }

  /** Whether he had not been injected yet then, or was last seen firm then or later. */
  public boolean wasFirmAt(Instant instant) {
    return !instant.isAfter(at)
        || (soft instanceof SoftAfter.AtLeast(TimeSpan seen) && !seen.after(at).isBefore(instant));
  }

  /** What a step up is counted from: a draw above the order raises nothing. */
  public Volume smallerOfDrawnAndOrdered() {
    return ordered.filter(drawn::isMoreThan).orElse(drawn);
  }

  /** Whether less was drawn than was ordered. */
  public boolean isLessThanOrdered() {
    return ordered.filter(drawn::isLessThan).isPresent();
  }

  /** "fuller but not firm, soft after 20 min". */
  public String responseWords() {
    return grade.words() + ", " + soft.words();
  }

  /** What a next preparation may begin with, after what has lasted too long since. */
  Beginning carried(List<Beginning.Held> tooLongSince) {
    return new Beginning.AtMost(new Carried(preparation, drawn, tooLongSince));
  }

  /** How much of what it was. */
  public Beginning.Held held() {
    return new Beginning.Held(preparation, drawn);
  }
}
