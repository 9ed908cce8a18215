package rungwise.clinic.elsewhere;

import java.time.LocalDate;
import java.util.Optional;
import rungwise.clinic.coded.ToldBy;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.Volume;

/**
 * What is written of a man who is taken over from elsewhere, or who has another course here. None
 * of it is corrected: a second word stands beside the first one, and the lower dose and the longer
 * erection of both count.
 */
public sealed interface ElsewhereWord {

  /** Whether it goes on holding where nothing is proven. */
  default boolean holds() {
    return !(this instanceof Opened);
  }

  /**
   * What he injects elsewhere, as it was told. Nothing of it is ordered, seen or proven here.
   *
   * @param drawn how much of the preparation
   * @param barrel the token of the syringe by whose line the dose was told; empty if it was told in
   *     mL
   * @param from where he was treated
   * @param lastDay the day of his last injection there; empty if that is not known
   * @param soft how long it lasts there
   * @param by from what it is known
   */
  record Told(
      PreparationId preparation,
      Volume drawn,
      Optional<String> barrel,
      String from,
      Optional<LocalDate> lastDay,
      Grade grade,
      SoftAfter soft,
      ToldBy by)
      implements ElsewhereWord {
    public Told {
      if (drawn.equals(Volume.ZERO)) {
        throw new IllegalArgumentException("bug: a told dose of nothing");
      }
    }
  }

  /** A prescriber opens the schedule of a preparation at a part of what was told before it. */
  record Opened(PreparationId preparation, Volume upTo) implements ElsewhereWord {}

  /**
   * Another course is of the same man.
   *
   * @param course the id of that one
   * @param leads whether his treatment goes on in this course; it ends in the other one
   */
  record Joined(String course, boolean leads) implements ElsewhereWord {}

  /**
   * Another prescriber writes that it is not of the same man, or that it goes on apart. What was
   * read of it until then goes on counting.
   *
   * @param course the id of that one
   */
  record Parted(String course) implements ElsewhereWord {}
}
