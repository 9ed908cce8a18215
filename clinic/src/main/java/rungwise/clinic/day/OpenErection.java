package rungwise.clinic.day;

import java.time.Instant;
import java.util.Optional;
import rungwise.clinic.course.CourseFact.HandedOver;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.EntryId;
import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.known.Preparation;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * An erection of which nobody has said how it ended.
 *
 * @param injectedAt when he was injected; empty if that is not known
 * @param firmAt when he was last said to be firm; empty if that is not known
 * @param preparation what was injected; empty if nobody said, or if it was of an earlier plan
 * @param drawn how much was; empty if nobody said
 * @param where where he was when he was injected, and whether he has left since
 * @param isWithdrawn whether the report of it was corrected or withdrawn without an end
 * @param isSaid whether 4 hours or more were said in so many words
 * @param handedOver to whom he was handed, if he was
 * @param way what is to be written so that the end is known
 */
public record OpenErection(
    Optional<Instant> injectedAt,
    Optional<Instant> firmAt,
    Optional<Preparation> preparation,
    Optional<Volume> drawn,
    Where where,
    boolean isWithdrawn,
    boolean isSaid,
    Optional<Written<HandedOver>> handedOver,
    Way way) {

  /** Where he is, as far as the record says. */
  public enum Where {
    NOT_SAID,
    AT_HOME,
    LEFT_THE_CLINIC,
    UNDER_OBSERVATION
  }

  /** Where its end is written down. */
  public sealed interface Way {

    /** By a correction of that report. */
    record Correct(EntryId report) implements Way {}

    /** By a report: the one that was begun is not complete. */
    record Report() implements Way {}

    /** At the end of that observation. */
    record EndObservation(EntryId observation) implements Way {}

    /** By a prescriber's review: no report of it counts any more. */
    record Review() implements Way {}
  }

  /**
   * How urgent it is at an instant. A clock that is behind the record is not believed.
   *
   * @param now empty if it is not known
   */
  public Urgency urgency(Optional<Instant> now) {
    Optional<TimeSpan> since =
        now.flatMap(
            known ->
                injectedAt.filter(at -> !at.isAfter(known)).map(at -> TimeSpan.between(at, known)));
    if (isSaid || since.isEmpty() || !since.get().isLessThan(DurationLimits.EMERGENCY.value())) {
      return Urgency.EMERGENCY_DEPARTMENT;
    }
    boolean isLong = !since.get().isLessThan(DurationLimits.CLOSES_VOLUME.value());
    return isLong || where == Where.LEFT_THE_CLINIC ? Urgency.CALL_NOW : Urgency.CALL_AT_TWO_HOURS;
  }

  /** Whether he left the clinic while it was firm and nobody on call has him yet. */
  public boolean isLeft() {
    return where == Where.LEFT_THE_CLINIC && handedOver.isEmpty();
  }

  /** When it will have lasted, or would have lasted, for 2 hours. */
  public Optional<Instant> twoHoursAt() {
    return injectedAt.map(DurationLimits.CLOSES_VOLUME.value()::after);
  }

  /** When it will have lasted, or would have lasted, for 4 hours. */
  public Optional<Instant> fourHoursAt() {
    return injectedAt.map(DurationLimits.EMERGENCY.value()::after);
  }
}
