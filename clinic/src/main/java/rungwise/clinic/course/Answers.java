package rungwise.clinic.course;

import java.time.LocalDate;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
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
  private final Map<Condition, Long> decided = new EnumMap<>(Condition.class);
  private final Map<Condition, CourseEntry> overturned = new EnumMap<>(Condition.class);
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
        case AnswerOverturned wrong -> overturned(entry, wrong);
        case ExaminationRecorded examination -> examined(new Written<>(entry, examination));
        case DecisionWritten decision -> decided.put(decision.condition(), entry.number());
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
  private void overturned(CourseEntry entry, AnswerOverturned wrong) {
    Condition condition = wrong.condition();
    kept.remove(condition);
    overturned.put(condition, entry);
    switch (wrong.shownBy()) {
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

  /**
   * The same with every yes of another course of his. It counts as one of here until a prescriber
   * of either course writes that it was wrong, and what was found there until a later examination
   * of here is without it. No no and no decision of there counts.
   *
   * @param since the number of the entry from which on the other course is read
   */
  public Answers with(Answers there, long since) {
    var both = new Answers(List.of());
    both.last.putAll(last);
    both.kept.putAll(kept);
    both.decided.putAll(decided);
    both.overturned.putAll(overturned);
    both.found = found;
    both.lastFound = lastFound;
    both.examined = examined;
    there.last.forEach((condition, answered) -> both.caution(condition, answered));
    there.kept.forEach((condition, yes) -> both.yes(condition, yes, since));
    there.found.ifPresent(both::foundThere);
    both.lastFound =
        Stream.concat(lastFound.stream(), there.lastFound.map(one -> Math.max(one, since)).stream())
            .max(Comparator.naturalOrder());
    return both;
  }

  private void caution(Condition condition, Answered there) {
    boolean isNews =
        Optional.ofNullable(last.get(condition))
            .filter(here -> !here.at().isBefore(there.at()))
            .isEmpty();
    if (there.answer() == Answer.YES && !condition.mayForbid() && isNews) {
      last.put(condition, there);
    }
  }

  private void yes(Condition condition, Kept there, long since) {
    boolean isWrong =
        Optional.ofNullable(overturned.get(condition))
            .filter(one -> one.number() > since)
            .filter(one -> !one.recordedAt().isBefore(there.said().recordedAt()))
            .isPresent();
    if (!isWrong && kept.putIfAbsent(condition, new Kept(there.said(), Optional.empty())) == null) {
      decided.computeIfPresent(condition, (same, number) -> number > since ? number : null);
    }
  }

  private void foundThere(Written<ExaminationRecorded> there) {
    boolean isGone =
        examined
            .filter(one -> one.fact().scarring() == Answer.NO)
            .filter(one -> one.fact().day().isAfter(there.fact().day()))
            .isPresent();
    if (!isGone) {
      found = later(found, there);
    }
  }

  /** What the engine may look at. */
  public Screening counting() {
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
    return new Screening(counting, decided.keySet());
  }
}
