package rungwise.clinic.joining;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.beside.JoinLog;
import rungwise.clinic.coded.AfterEnd;
import rungwise.clinic.coded.EndReason;
import rungwise.clinic.coded.VialsLeft;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.CourseFact.ElsewhereWritten;
import rungwise.clinic.course.CourseFact.LifeWritten;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.elsewhere.ElsewhereWord;
import rungwise.clinic.life.LifeWord;
import rungwise.clinic.people.Account;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.LifeLog;
import rungwise.clinic.standing.StandingPorts;
import rungwise.quantities.Reading;

/**
 * Two courses are of one man: a prescriber joins them, with a reason. In one of them his treatment
 * goes on, in the other one it ends with its order. Each reads what the other says against a dose.
 * Another prescriber parts them: what was read until then goes on counting, and no order comes
 * back.
 */
public final class Joining {

  private static final String NOT_ALIKE =
      "That course is not of a man of this record number, or of this birth date and a name like"
          + " his: correct who he is first, if it is the same man. Nothing was changed.";
  private static final String FOLLOWS =
      "His treatment goes on in another course, which is joined with this one already: join them"
          + " there. Nothing was changed.";
  private static final String JOINED_ALREADY =
      "That course is joined with another one already. Nothing was changed.";
  private static final String PAUSED =
      "That course is paused: read why, and resume or end it there first. Nothing was changed.";
  private static final String NOT_JOINED = "These courses are not joined: nothing was changed.";
  private static final String SAME_HAND =
      "You have joined these courses: another prescriber parts them. Nothing was changed.";

  private final StandingPorts ports;
  private final CourseChanges changes;

  public Joining(StandingPorts ports) {
    this.ports = ports;
    this.changes = new CourseChanges(ports);
  }

  /** Whether another course is of the same man. */
  public enum Standing {
    /** None that is known. */
    ALONE,
    /** One may be his, and is not joined. */
    MAY_BE_HIS,
    /** One is joined, and he is treated in this one. */
    LEADS,
    /** He is treated in the one that is joined. */
    FOLLOWS
  }

  /** What is known of other courses of the same man. */
  public Standing standing(CourseFile file) {
    JoinLog log = JoinLog.of(file);
    if (log.follows()) {
      return Standing.FOLLOWS;
    }
    if (!mayBeHis(file).isEmpty()) {
      return Standing.MAY_BE_HIS;
    }
    return log.open().isEmpty() ? Standing.ALONE : Standing.LEADS;
  }

  /** Courses that may be of the same man, and that are not joined with this one. */
  public List<CourseFile> mayBeHis(CourseFile file) {
    List<CourseId> joined = JoinLog.of(file).open();
    return ports.courses().alike(file.patient()).stream()
        .filter(id -> !id.equals(file.id()) && !joined.contains(id))
        .flatMap(id -> ports.courses().readable(id).stream())
        .toList();
  }

  /** The courses that are joined with this one now. */
  public List<CourseFile> joined(CourseFile file) {
    return JoinLog.of(file).open().stream()
        .flatMap(id -> ports.courses().readable(id).stream())
        .toList();
  }

  /**
   * Joins another course with the one in which he is treated.
   *
   * @param basis the number of the last entry of this one that was shown
   */
  public Reading<Long> join(
      Account actor, CourseId leading, long basis, CourseId other, String reason) {
    return changes.changeSeen(
        actor,
        leading,
        basis,
        (file, now) ->
            mayBeHis(file).stream()
                .filter(one -> one.id().equals(other))
                .findFirst()
                .map(one -> join(actor, file, one, reason, now))
                .orElseGet(() -> Reading.refused(NOT_ALIKE)));
  }

  private Reading<Long> join(
      Account actor, CourseFile file, CourseFile other, String reason, Instant now) {
    if (!other.isSound()) {
      return Reading.refused(CourseChanges.NOT_SOUND);
    }
    if (JoinLog.of(file).follows()) {
      return Reading.refused(FOLLOWS);
    }
    if (!JoinLog.of(other).open().isEmpty()) {
      return Reading.refused(JOINED_ALREADY);
    }
    if (LifeLog.of(other).isPaused()) {
      return Reading.refused(PAUSED);
    }
    Reading<Long> written =
        append(actor, file, new ElsewhereWord.Joined(other.id().text(), true), reason, now);
    if (written.found().isPresent()) {
      append(actor, other, new ElsewhereWord.Joined(file.id().text(), false), reason, now)
          .orThrow();
      if (!LifeLog.of(other).isEnded()) {
        append(actor, other.id(), new LifeWritten(end()), reason, now).orThrow();
      }
    }
    return written;
  }

  private static LifeWord end() {
    return new LifeWord.Ended(
        EndReason.OTHER, Optional.empty(), VialsLeft.NOT_KNOWN, AfterEnd.OTHER, "");
  }

  /**
   * Parts two courses; none but another prescriber than the one who joined them.
   *
   * @param basis the number of the last entry of this one that was shown
   */
  public Reading<Long> part(Account actor, CourseId id, long basis, CourseId other, String reason) {
    return changes.changeSeen(
        actor, id, basis, (file, now) -> part(actor, file, other, reason, now));
  }

  private Reading<Long> part(
      Account actor, CourseFile file, CourseId other, String reason, Instant now) {
    JoinLog.Join join = JoinLog.of(file).joins().get(other);
    Optional<CourseFile> there = ports.courses().find(other);
    if (join == null || !join.isOpen() || there.isEmpty()) {
      return Reading.refused(NOT_JOINED);
    }
    if (join.last().recordedBy().equals(actor.id())) {
      return Reading.refused(SAME_HAND);
    }
    Reading<Long> written =
        append(actor, file, new ElsewhereWord.Parted(other.text()), reason, now);
    if (written.found().isPresent()) {
      append(actor, there.get(), new ElsewhereWord.Parted(file.id().text()), reason, now).orThrow();
    }
    return written;
  }

  private Reading<Long> append(
      Account actor, CourseFile file, ElsewhereWord word, String reason, Instant now) {
    return append(actor, file.id(), new ElsewhereWritten(word), reason, now);
  }

  private Reading<Long> append(
      Account actor, CourseId id, CourseFact fact, String reason, Instant now) {
    return changes.appendWithReason(id, fact, actor, now, Optional.empty(), reason);
  }
}
