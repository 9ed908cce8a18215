package rungwise.clinic.course;

import java.time.LocalDate;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rungwise.clinic.course.CourseFact.AnswerOverturned;
import rungwise.clinic.course.CourseFact.DecisionWritten;
import rungwise.clinic.course.CourseFact.ExaminationRecorded;
import rungwise.clinic.course.CourseFact.Screened;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.screening.Screening;
import rungwise.dosing.screening.Screening.Answered;

/**
 * What a man answered in the course of time, and what of it counts. A yes that may forbid a dose
 * counts until a prescriber writes that it was wrong, whatever is answered later. What an
 * examination found counts until a later examination no longer finds it.
 */
public final class Answers {

  private final Map<Condition, Answered> last = new EnumMap<>(Condition.class);
  private final Map<Condition, Kept> kept = new EnumMap<>(Condition.class);
  private final Set<Condition> decided = EnumSet.noneOf(Condition.class);
  private Optional<Written<ExaminationRecorded>> found = Optional.empty();
  private Optional<Long> lastFound = Optional.empty();
  private Optional<Written<ExaminationRecorded>> examined = Optional.empty();

  /**
   * A yes that counts.
   *
   * @param said the entry that said it first
   * @param denied the last entry that said something else; empty while none did
   */
  public record Kept(CourseEntry said, Optional<CourseEntry> denied) {}

  /** What the entries of a course say, in their order. */
  Answers(Iterable<CourseEntry> entries) {
    for (CourseEntry entry : entries) {
      switch (entry.fact()) {
        case Screened screened -> screened(entry, screened);
        case AnswerOverturned overturned -> overturned(entry, overturned);
        case ExaminationRecorded examination -> examined(new Written<>(entry, examination));
        case DecisionWritten decision -> decided.add(decision.condition());
        default -> {
          // Nothing else is an answer.
        }
      }
    }
  }

  private void screened(CourseEntry entry, Screened screened) {
    last.clear();
    last.putAll(screened.answers());
    screened.answers().forEach((condition, answered) -> answered(entry, condition, answered));
  }

  private void answered(CourseEntry entry, Condition condition, Answered answered) {
    Optional<Kept> before = Optional.ofNullable(kept.get(condition));
    if (answered.answer() != Answer.YES) {
      before.ifPresent(one -> kept.put(condition, new Kept(one.said(), Optional.of(entry))));
    } else if (before.isEmpty() && condition.mayForbid()) {
      kept.put(condition, new Kept(entry, Optional.empty()));
      decided.remove(condition);
    }
  }

  /**
   * What was tested or examined is a no. Of another man's yes nothing follows for this one: what he
   * has answered himself since counts, and without that nobody knows.
   */
  private void overturned(CourseEntry entry, AnswerOverturned overturned) {
    Condition condition = overturned.condition();
    kept.remove(condition);
    switch (overturned.shownBy()) {
      case TEST, EXAMINATION -> last.put(condition, new Answered(Answer.NO, entry.recordedAt()));
      case WRONG_MAN ->
          last.computeIfPresent(
              condition,
              (asked, answered) ->
                  answered.answer() == Answer.YES
                      ? new Answered(Answer.NOT_KNOWN, entry.recordedAt())
                      : answered);
    }
  }

  private static Optional<Written<ExaminationRecorded>> later(
      Optional<Written<ExaminationRecorded>> one, Written<ExaminationRecorded> other) {
    return one.filter(before -> before.fact().day().isAfter(other.fact().day()))
        .or(() -> Optional.of(other));
  }

  private void examined(Written<ExaminationRecorded> written) {
    if (written.fact().scarring() != Answer.NOT_KNOWN) {
      examined = later(examined, written);
    }
    if (written.fact().scarring() == Answer.YES) {
      found = later(found, written);
      lastFound = Optional.of(written.entry().number());
    } else if (written.fact().scarring() == Answer.NO) {
      LocalDate day = written.fact().day();
      found = found.filter(one -> !day.isAfter(one.fact().day()));
    }
  }

  /** What was answered last, whether or not it counts. */
  public Map<Condition, Answered> last() {
    return Collections.unmodifiableMap(last);
  }

  /** The yes of a condition that counts, where he gave one. */
  public Optional<Kept> kept(Condition condition) {
    return Optional.ofNullable(kept.get(condition));
  }

  /** The examination that found curvature or scarring, if no later one is without it. */
  public Optional<Written<ExaminationRecorded>> found() {
    return found;
  }

  /** The last examination, by its day, that told whether there is curvature or scarring. */
  public Optional<Written<ExaminationRecorded>> examined() {
    return examined;
  }

  /** The number of the last entry that found curvature or scarring, whatever came after it. */
  public Optional<Long> lastFound() {
    return lastFound;
  }

  /** What the engine may look at. */
  Screening counting() {
    var counting = new EnumMap<Condition, Answered>(Condition.class);
    counting.putAll(last);
    kept.forEach(
        (condition, yes) ->
            counting.put(
                condition,
                Optional.ofNullable(last.get(condition))
                    .map(one -> new Answered(Answer.YES, one.at()))
                    .orElseGet(() -> new Answered(Answer.YES, yes.said().recordedAt()))));
    found.ifPresent(
        written ->
            counting.put(
                Condition.CURVATURE_OR_SCARRING,
                new Answered(Answer.YES, written.entry().recordedAt())));
    return new Screening(counting, decided);
  }
}
