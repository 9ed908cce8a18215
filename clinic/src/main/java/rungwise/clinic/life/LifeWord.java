package rungwise.clinic.life;

import java.time.LocalDate;
import java.util.Optional;
import rungwise.clinic.coded.AfterEnd;
import rungwise.clinic.coded.EndReason;
import rungwise.clinic.coded.VialsLeft;

/** What brings a course to a stand, and what lets it go on. The reason is the entry's. */
public sealed interface LifeWord {

  /** Whether it goes on holding where nothing is proven: nothing that was lifted is lifted then. */
  default boolean holds() {
    return this instanceof Paused || this instanceof Ended;
  }

  /** Nothing is injected until a prescriber resumes it. */
  record Paused() implements LifeWord {}

  /** A prescriber resumes what was paused: what is signed counts again. */
  record Resumed() implements LifeWord {}

  /**
   * The treatment ends, and the signed dose with it.
   *
   * @param lastDose the day of the last injection; empty if that is not known or there was none
   * @param referredTo to whom he is referred; may be empty
   */
  record Ended(
      EndReason why,
      Optional<LocalDate> lastDose,
      VialsLeft vials,
      AfterEnd after,
      String referredTo)
      implements LifeWord {}

  /** A prescriber opens what had ended again: a dose needs a new signature. */
  record Reopened() implements LifeWord {}
}
