package rungwise.clinic.befell;

import java.time.LocalDate;
import java.util.Optional;
import rungwise.dosing.supply.WarmSpell;
import rungwise.quantities.TimeSpan;

/** What befell a vial. Why anybody says so is the entry's reason. */
public sealed interface VialWord {

  /** Whether nothing is drawn from it any more until somebody has judged it. */
  default boolean stops() {
    return switch (this) {
      case Warm warm -> true;
      case Put put -> put.place() != Place.REFRIGERATOR;
      case Gone gone -> true;
      case Judged judged -> false;
    };
  }

  /** Whether what was drawn from it since then may be weaker than its label. */
  default boolean maySpoil() {
    return stops() && !(this instanceof Gone);
  }

  /** The day on which it happened; a judgement has none of its own. */
  default Optional<LocalDate> since() {
    return switch (this) {
      case Warm warm -> Optional.of(warm.day());
      case Put put -> Optional.of(put.day());
      case Gone gone -> Optional.of(gone.day());
      case Judged judged -> Optional.empty();
    };
  }

  /**
   * It was warmer than it is kept.
   *
   * @param celsius the most it can have been; empty if nobody knows
   * @param least for how many hours at least; empty if nobody knows
   * @param most for how many hours at most; empty if nobody knows
   */
  record Warm(
      LocalDate day, Optional<Integer> celsius, Optional<Integer> least, Optional<Integer> most)
      implements VialWord {

    /** The same for the general rule. */
    public WarmSpell spell() {
      return new WarmSpell(celsius, least.map(TimeSpan::ofHours), most.map(TimeSpan::ofHours));
    }
  }

  /** It was put somewhere. */
  record Put(LocalDate day, Place place) implements VialWord {}

  /** Where a vial was. */
  enum Place {
    REFRIGERATOR("in the refrigerator"),
    ROOM("at room temperature"),
    TRAVEL("on a journey"),
    FROZEN("frozen"),
    NOT_KNOWN("nobody knows where");

    private final String words;

    Place(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** Nothing is drawn from it any more. */
  record Gone(LocalDate day, How how) implements VialWord {}

  /** How a vial went. */
  enum How {
    THROWN_AWAY("thrown away"),
    EMPTY("empty"),
    TAKEN_BACK("taken back");

    private final String words;

    How(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** A prescriber says that it may be used as its label says, whatever was written before. */
  record Judged() implements VialWord {}
}
