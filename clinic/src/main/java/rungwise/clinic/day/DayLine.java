package rungwise.clinic.day;

import java.time.Instant;
import java.util.Comparator;
import java.util.Optional;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.ObservationStarted;
import rungwise.clinic.course.CourseFact.ReachWritten;
import rungwise.clinic.course.CourseFact.SheetMade;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.HowToReach;
import rungwise.clinic.standing.LifeLog;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Clearance;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Place;

/**
 * A course in the list of the day.
 *
 * @param since since when it waits: the injection that worries, when it was due, or the last thing
 *     written of his treatment
 * @param now whether he may inject now
 * @param open the erection of which nobody has said how it ended
 * @param again the call that did not reach him; it changes nothing of all else
 */
public record DayLine(
    Need need,
    Instant since,
    MayInject now,
    Optional<OpenErection> open,
    Optional<HowToReach.Again> again) {

  /** One that nobody has to call again. */
  private DayLine(Need need, Instant since, MayInject now, Optional<OpenErection> open) {
    this(need, since, now, open, Optional.empty());
  }

  private DayLine callingAgain(HowToReach.Again tried) {
    boolean isAll = need.rank() > Need.CALL_AGAIN.rank() && need != Need.PAUSED;
    return new DayLine(
        isAll ? Need.CALL_AGAIN : need, isAll ? tried.due() : since, now, open, Optional.of(tried));
  }

  /**
   * What a course needs.
   *
   * @param examinationDue since when an examination is due, if one is
   */
  public static DayLine of(
      CourseState state, Advice advice, Clearance clearance, Optional<Instant> examinationDue) {
    DayLine line = treated(state, advice, clearance, examinationDue);
    return HowToReach.of(state.file()).again().map(line::callingAgain).orElse(line);
  }

  private static DayLine treated(
      CourseState state, Advice advice, Clearance clearance, Optional<Instant> examinationDue) {
    Optional<OpenErection> open = OpenErections.first(state);
    Optional<Instant> over = OpenErections.over(state).stream().findFirst();
    Optional<Instant> observed = observed(state.file());
    Instant last = lastOfTreatment(state.file());
    MayInject now = MayInject.of(state, advice, clearance);
    if (open.isPresent()) {
      Instant since = open.get().injectedAt().orElse(last);
      return new DayLine(ofOpen(open.get(), state.knownNow()), since, now, open);
    }
    if (!state.file().isSound()) {
      return new DayLine(Need.RECORD_NOT_SOUND, last, now, open);
    }
    if (over.isPresent()) {
      return new DayLine(Need.EMERGENCY_OVER, over.get(), now, open);
    }
    if (observed.isPresent()) {
      return new DayLine(Need.OBSERVATION, observed.get(), now, open);
    }
    LifeLog life = LifeLog.of(state.file());
    boolean isSuspended = isSuspended(state, clearance) && isOtherStop(clearance);
    Optional<Instant> flagged =
        state.flagsToSee().stream()
            .map(flag -> flag.report().fact().injectedAt())
            .min(Comparator.naturalOrder());
    if (!isSuspended && flagged.isPresent()) {
      return new DayLine(Need.FLAGGED, flagged.get(), now, open);
    }
    if (!isSuspended && life.since().isPresent()) {
      Need halted = life.isEnded() ? Need.ENDED : Need.PAUSED;
      return new DayLine(halted, life.since().get(), now, open);
    }
    Need need = isSuspended ? Need.SUSPENDED : ofTheDose(state, advice);
    return need == Need.NOTHING && examinationDue.isPresent()
        ? new DayLine(Need.EXAMINATION, examinationDue.get(), now, open)
        : new DayLine(need, last, now, open);
  }

  private static Optional<Instant> observed(CourseFile file) {
    return file.observing().stream()
        .map(Written::fact)
        .map(ObservationStarted::injectedAt)
        .min(Comparator.naturalOrder());
  }

  /** When anything was written last but how he is reached and sheets: no part of his treatment. */
  private static Instant lastOfTreatment(CourseFile file) {
    return file.entries().reversed().stream()
        .filter(entry -> !(entry.fact() instanceof ReachWritten))
        .filter(entry -> !(entry.fact() instanceof SheetMade))
        .findFirst()
        .orElseThrow()
        .recordedAt();
  }

  /** Whether anything stops for good that is not the pause itself. */
  private static boolean isOtherStop(Clearance clearance) {
    return clearance.verdicts().stream()
        .filter(Verdict::isHardStop)
        .anyMatch(verdict -> verdict.rule() != GuardRule.COURSE_PAUSED);
  }

  private static Need ofOpen(OpenErection open, Optional<Instant> now) {
    if (open.urgency(now) == Urgency.EMERGENCY_DEPARTMENT) {
      return Need.EMERGENCY;
    }
    return open.isWithdrawn() ? Need.END_NOT_KNOWN : Need.FIRM;
  }

  /** Whether a check that no signature opens stands against the signed dose. */
  public static boolean isSuspended(CourseState state, Clearance clearance) {
    return state.file().signedDose().isPresent()
        && clearance.verdicts().stream().anyMatch(Verdict::isHardStop);
  }

  private static Need ofTheDose(CourseState state, Advice advice) {
    Optional<Written<DoseSigned>> signed = state.file().signedDose();
    if (signed.filter(one -> Decided.by(state.file(), one, advice)).isPresent()) {
      return signed.filter(one -> isToTeach(one.fact(), advice)).isPresent()
          ? Need.TEACHING
          : Need.NOTHING;
    }
    if (advice.reason().rule() == TitrationRule.SCREENING_FIRST) {
      return Need.SCREENING;
    }
    return advice
        .decision()
        .proposed()
        .map(
            volume ->
                signed.filter(one -> one.fact().volume().equals(volume)).isPresent()
                    ? Need.NOTHING
                    : Need.SIGNATURE)
        .orElse(Need.DECISION);
  }

  private static boolean isToTeach(DoseSigned signed, Advice advice) {
    return signed.place() == Place.CLINIC
        && advice.homeVerdicts().stream()
            .anyMatch(verdict -> verdict.rule() == GuardRule.HOME_NOT_READY);
  }
}
