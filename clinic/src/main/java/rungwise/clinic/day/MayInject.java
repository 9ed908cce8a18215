package rungwise.clinic.day;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Clearance;
import rungwise.dosing.guard.Clears;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Place;
import rungwise.quantities.Volume;

/**
 * The one answer to "may he inject now?": safety checks, advice, place and signature in one. It
 * never says yes while one of them says no.
 */
public sealed interface MayInject {

  /**
   * The signed dose, where it is signed for.
   *
   * @param place where; what is signed for the clinic is for the clinic only
   * @param higher a higher dose that is proposed and that nobody has signed
   */
  record Yes(Volume signed, Place place, Optional<Volume> higher) implements MayInject {}

  /** Every check that stops him clears by itself, the last one then. */
  record NotBefore(Instant at) implements MayInject {}

  /**
   * Somebody has to do something first: what, stands with the checks.
   *
   * @param at when those that clear by themselves will have cleared, if there are any
   */
  record NotYet(Optional<Instant> at) implements MayInject {}

  /** A lower dose than the signed one is proposed, and nobody has signed it. */
  record LowerWaits(Volume signed, Volume lower) implements MayInject {}

  /** No dose is proposed: a prescriber has to decide, and has not since. */
  record Undecided() implements MayInject {}

  record NotSigned() implements MayInject {}

  /** A check that no signature opens. */
  record Stopped(Why why) implements MayInject {}

  /** Why everything is stopped. */
  enum Why {
    /** An erection is not known to be over. */
    NOT_OVER,

    /** What was, or may have been, an emergency waits for a prescriber's review. */
    NOT_REVIEWED,

    /** He was injected and is still under observation. */
    UNDER_OBSERVATION,

    /** Somebody has paused his treatment. */
    PAUSED,

    /** His treatment has ended. */
    ENDED,

    /** What stands on record is not as it was written. */
    RECORD_NOT_SOUND,

    /** It is not known what time it is, and nothing else stops him for good. */
    CLOCK_NOT_KNOWN,

    /** Something else: it stands with the checks. */
    CHECK
  }

  /** Whether he may. */
  default boolean isYes() {
    return this instanceof Yes;
  }

  /** The answer for a course. */
  static MayInject of(CourseState state, Advice advice, Clearance clearance) {
    Optional<Written<DoseSigned>> signed = state.file().signedDose();
    Optional<Why> stop = stop(state, clearance);
    if (stop.isPresent()) {
      return new Stopped(stop.get());
    }
    if (signed.isEmpty()) {
      return new NotSigned();
    }
    return signed(state.file(), signed.get(), advice, clearance);
  }

  private static MayInject signed(
      CourseFile file, Written<DoseSigned> written, Advice advice, Clearance clearance) {
    DoseSigned signed = written.fact();
    Optional<Volume> proposed = advice.decision().proposed();
    boolean isDecided = Decided.by(file, written, advice);
    if (proposed.isEmpty() && !isDecided) {
      return new Undecided();
    }
    Optional<Volume> lower = proposed.filter(volume -> volume.isLessThan(signed.volume()));
    if (lower.isPresent() && !isDecided) {
      return new LowerWaits(signed.volume(), lower.get());
    }
    if (clearance.isClear()) {
      return new Yes(
          signed.volume(),
          signed.place(),
          proposed.filter(volume -> volume.isMoreThan(signed.volume())));
    }
    return clearance
        .clearsAt()
        .<MayInject>map(NotBefore::new)
        .orElseGet(() -> new NotYet(Clearance.latest(clearance.blocks())));
  }

  /** What stops everything until somebody acts; a missing signature and mere time do not. */
  private static Optional<Why> stop(CourseState state, Clearance clearance) {
    if (OpenErections.first(state).isPresent()) {
      return Optional.of(Why.NOT_OVER);
    }
    List<GuardRule> rules =
        clearance.verdicts().stream()
            .filter(Verdict::isHardStop)
            .filter(verdict -> !(verdict.clears() instanceof Clears.At))
            .map(Verdict::rule)
            .filter(rule -> rule != GuardRule.NO_ORDER)
            .toList();
    if (rules.isEmpty()) {
      return Optional.empty();
    }
    if (rules.contains(GuardRule.EMERGENCY_OPEN)) {
      return Optional.of(Why.NOT_REVIEWED);
    }
    if (rules.contains(GuardRule.RECORD_NOT_SOUND)) {
      return Optional.of(Why.RECORD_NOT_SOUND);
    }
    if (rules.stream().allMatch(rule -> rule == GuardRule.CLOCK_NOT_KNOWN)) {
      return Optional.of(Why.CLOCK_NOT_KNOWN);
    }
    return Optional.of(whyOf(rules));
  }

  private static Why whyOf(List<GuardRule> rules) {
    if (rules.contains(GuardRule.UNDER_OBSERVATION)) {
      return Why.UNDER_OBSERVATION;
    }
    if (rules.contains(GuardRule.COURSE_ENDED)) {
      return Why.ENDED;
    }
    return rules.contains(GuardRule.COURSE_PAUSED) ? Why.PAUSED : Why.CHECK;
  }
}
