package rungwise.clinic.takeover;

import java.time.Instant;
import java.util.Optional;
import rungwise.clinic.beside.TransferLog;
import rungwise.clinic.course.CourseFact.ElsewhereWritten;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.elsewhere.ElsewhereWord;
import rungwise.clinic.people.Account;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseReader;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.StandingPorts;
import rungwise.clinic.titration.DrawnMark;
import rungwise.dosing.history.Question;
import rungwise.dosing.ladder.Beginning;
import rungwise.dosing.syringe.Barrel;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/**
 * A man who injects already elsewhere is taken over. Whoever treats him writes down what was told,
 * which only bounds and stops; only a prescriber opens the schedule at a part of it.
 */
public final class TakingOver {

  /** The field of the volume that is opened. */
  public static final String UP_TO = "upTo";

  private static final String NOTHING_TOLD =
      "Nothing was told of a dose elsewhere: nothing was changed.";
  private static final String NOT_OPENABLE =
      "No part of what was told can open the schedule: it begins as for a man without it, or what"
          + " was told lasted too long, or nobody knows how long. Nothing was changed.";

  private final StandingPorts ports;
  private final CourseChanges changes;
  private final CourseReader reader;

  public TakingOver(StandingPorts ports) {
    this.ports = ports;
    this.changes = new CourseChanges(ports);
    this.reader = new CourseReader(ports);
  }

  /** Writes down what he injects elsewhere; a second word stands beside the first one. */
  public Reading<Long> tell(Account actor, CourseId id, ToldDraft draft) {
    if (!By.CLINICIAN.includes(actor)) {
      return Reading.refused(By.CLINICIAN.refusal());
    }
    Reading<ElsewhereWord> word =
        ToldReading.of(draft, one -> ports.preparations().apply(one).isPresent(), ports.today());
    return word.found().isEmpty()
        ? new Reading.Refused<>(word.placed())
        : changes.change(
            actor,
            By.CLINICIAN,
            id,
            (file, now) ->
                Reading.of(changes.append(id, new ElsewhereWritten(word.orThrow()), actor, now)));
  }

  /**
   * Opens the schedule of the plan's preparation.
   *
   * @param basis the number of the last entry that was shown
   * @param upTo the line of the plan's syringe, or the volume in mL, as typed
   */
  public Reading<Long> open(Account actor, CourseId id, long basis, String upTo, String reason) {
    return changes.changeSeen(
        actor, id, basis, (file, now) -> open(actor, file, upTo, reason, now));
  }

  private Reading<Long> open(
      Account actor, CourseFile file, String upTo, String reason, Instant now) {
    if (TransferLog.of(file).told().isEmpty()) {
      return Reading.refused(NOTHING_TOLD);
    }
    Question question = reader.state(file, now).question();
    Optional<Volume> most = openable(question);
    if (most.isEmpty()) {
      return Reading.refused(NOT_OPENABLE);
    }
    Barrel barrel = question.ladder().barrel();
    Reading<Volume> read = DrawnMark.read(upTo, barrel).at(UP_TO);
    if (read.found().isEmpty()) {
      return new Reading.Refused<>(read.placed());
    }
    return fault(read.orThrow(), most.get(), barrel)
        .<Reading<Long>>map(words -> Reading.refused(new Fault(UP_TO, words)))
        .orElseGet(
            () ->
                changes.appendWithReason(
                    file.id(),
                    new ElsewhereWritten(
                        new ElsewhereWord.Opened(file.plan().preparation(), read.orThrow())),
                    actor,
                    now,
                    Optional.empty(),
                    reason));
  }

  private static Optional<String> fault(Volume volume, Volume most, Barrel barrel) {
    if (!barrel.hasMarkAt(volume)) {
      return Optional.of(
          volume + " is between two lines of a " + barrel + ": write one of its printed lines.");
    }
    return volume.isMoreThan(most)
        ? Optional.of(
            volume
                + " is more than the part of the told dose that a first one may be, "
                + most
                + ": write at most that.")
        : Optional.empty();
  }

  /** The highest line at which a prescriber may open the schedule; empty if at none. */
  public Optional<Volume> openable(CourseState state) {
    return openable(state.question());
  }

  private static Optional<Volume> openable(Question question) {
    Barrel barrel = question.ladder().barrel();
    return question.history().sinceChangeTo(question.preparation()).isEmpty()
            && question.beginning() instanceof Beginning.AsTold told
        ? told.openable(question.preparation(), barrel)
            .flatMap(
                mark ->
                    mark.isMoreThan(question.ladder().ceiling())
                        ? barrel.lastMarkWithin(ExactVolume.of(question.ladder().ceiling()))
                        : Optional.of(mark))
        : Optional.empty();
  }
}
