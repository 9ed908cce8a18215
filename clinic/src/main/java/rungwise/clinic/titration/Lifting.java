package rungwise.clinic.titration;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.course.CourseFact.CorrectionConfirmed;
import rungwise.clinic.course.CourseFact.EmergencyReviewed;
import rungwise.clinic.course.CourseFact.FlagsSeen;
import rungwise.clinic.course.CourseFact.PastReviewed;
import rungwise.clinic.course.CourseFact.VolumeReopened;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.StruckReport;
import rungwise.clinic.past.PastReading;
import rungwise.clinic.people.Account;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseReader;
import rungwise.clinic.standing.StandingPorts;
import rungwise.dosing.history.Before;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.Struck;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/**
 * What only a prescriber lifts, each with a written reason: stops, closed volumes, and what a
 * corrected report goes on closing.
 */
public final class Lifting {

  private static final String NOTHING_TO_REVIEW =
      "No emergency waits for a review: open the course again.";

  private static final String NO_FLAGS =
      "No flagged report waits to be seen: open the course again.";

  private static final String FLAGS_CHANGED =
      "The record has changed since this page was opened, so nothing was marked as seen. Look at"
          + " what is flagged now, and mark it again.";

  private static final String NO_END =
      "How it ended is not on record: enter the report with its end, or write down when he was seen"
          + " or told to be soft.";

  private final StandingPorts ports;
  private final CourseReader reader;
  private final CourseChanges changes;

  public Lifting(StandingPorts ports) {
    this.ports = ports;
    this.reader = new CourseReader(ports);
    this.changes = new CourseChanges(ports);
  }

  /** Writes down that a prescriber has reviewed every emergency on record. */
  public Reading<Long> reviewEmergency(Account actor, CourseId id, String reason) {
    return reviewEmergency(actor, id, Optional.empty(), reason);
  }

  /**
   * Writes down that a prescriber has reviewed every emergency on record.
   *
   * @param softWhenSeen when he was seen or told to be soft, if the end cannot be known; needed
   *     where a report does not say how it ended
   */
  public Reading<Long> reviewEmergency(
      Account actor, CourseId id, Optional<Instant> softWhenSeen, String reason) {
    return changes.change(
        actor,
        By.PRESCRIBER,
        id,
        (file, now) ->
            reviewFault(reader.state(file, now).question(), softWhenSeen)
                .<Reading<Long>>map(Reading::refused)
                .orElseGet(
                    () ->
                        changes.appendWithReason(
                            id,
                            new EmergencyReviewed(softWhenSeen),
                            actor,
                            now,
                            Optional.empty(),
                            reason)));
  }

  /**
   * The same, with the time at which he was seen or told to be soft as it was typed.
   *
   * @param date empty, with the time, where a report says how it ended
   */
  public Reading<Long> reviewEmergency(
      Account actor, CourseId id, String date, String time, String reason) {
    if (date.isBlank() && time.isBlank()) {
      return reviewEmergency(actor, id, reason);
    }
    // Of an hour that comes twice the later one is meant: he was soft by then at any rate.
    Occurrence which =
        ports.time().comesTwice(date, time) ? Occurrence.SECOND : Occurrence.NOT_SAID;
    Reading<Instant> soft = ports.time().read(date, time, which);
    return soft.found().isEmpty()
        ? new Reading.Refused<>(soft.placed())
        : reviewEmergency(actor, id, soft.found(), reason);
  }

  private Optional<String> reviewFault(Question question, Optional<Instant> softWhenSeen) {
    History history = question.history();
    List<Injection> open = history.openEmergencies();
    List<Before.NobodyKnows> before = history.before().openEmergencies(history.reviews());
    boolean isUnfinished = !question.circumstances().unfinished().isEmpty();
    if (open.isEmpty() && before.isEmpty() && !isUnfinished) {
      return Optional.of(NOTHING_TO_REVIEW);
    }
    List<Injection> endless = history.openWithoutEnd();
    if (softWhenSeen.isEmpty()) {
      boolean hasEnds = before.stream().allMatch(one -> one.soft().hasKnownEnd());
      return endless.isEmpty() && hasEnds && !isUnfinished ? Optional.empty() : Optional.of(NO_END);
    }
    return endFault(
        endless.stream().filter(one -> !history.isUndated(one)).toList(),
        softWhenSeen.get(),
        question.now());
  }

  private Optional<String> endFault(List<Injection> endless, Instant soft, Instant now) {
    if (soft.isAfter(now)) {
      return Optional.of(
          ports.time().words(soft) + " is still to come: write when he was seen to be soft.");
    }
    return endless.stream()
        .filter(one -> one.wasFirmAt(soft))
        .findFirst()
        .map(
            one ->
                ports.time().words(soft)
                    + " is not after he was last seen firm (injected "
                    + ports.time().words(one.at())
                    + ", "
                    + one.soft().words()
                    + "): write when he was seen to be soft.");
  }

  /**
   * Writes down that a prescriber has seen every flagged report.
   *
   * @param basis the number of the last entry that was shown
   * @param words what the prescriber makes of them; may be empty
   */
  public Reading<Long> seeFlags(Account actor, CourseId id, long basis, String words) {
    return changes.change(
        actor,
        By.PRESCRIBER,
        id,
        (file, now) -> {
          if (file.basis() != basis) {
            return Reading.refused(FLAGS_CHANGED);
          }
          return reader.state(file, now).flagsToSee().isEmpty()
              ? Reading.refused(NO_FLAGS)
              : changes.append(id, new FlagsSeen(), actor, now, words);
        });
  }

  private History history(CourseFile file, Instant now) {
    return reader.state(file, now).question().history();
  }

  /**
   * Writes down that what a report said was wrong, and that its correction or withdrawal is right.
   *
   * @param correction the entry that stands there instead
   */
  public Reading<Long> confirmCorrection(
      Account actor, CourseId id, EntryId correction, String reason) {
    return changes.change(
        actor,
        By.PRESCRIBER,
        id,
        (file, now) -> {
          List<Struck> waiting =
              history(file, now).struck().stream().filter(Struck::isToConfirm).toList();
          boolean waits =
              StruckReport.of(file).stream()
                  .filter(one -> one.now().id().equals(correction))
                  .map(one -> one.said().entry().number())
                  .anyMatch(
                      number ->
                          waiting.stream().anyMatch(struck -> struck.said().entry() == number));
          boolean isUndone =
              reader.state(file, now).undoneToConfirm().stream()
                  .anyMatch(one -> one.entry().equals(correction));
          return waits || isUndone
              ? changes.appendWithReason(
                  id, new CorrectionConfirmed(correction), actor, now, Optional.empty(), reason)
              : Reading.refused(
                  "Nothing waits for this to be confirmed: the report was corrected meanwhile, or"
                      + " somebody has confirmed it. Open the course again.");
        });
  }

  /**
   * Writes down of what the long erections from before this record were, or that nobody can tell.
   *
   * @param reference the preparation of which the history's strengths are parts
   * @param isKnown whether the clinic has, or had, a preparation of that id
   */
  public Reading<Long> reviewPast(
      Account actor,
      CourseId id,
      Optional<PreparationId> reference,
      Predicate<PreparationId> isKnown,
      String reason) {
    return changes.change(
        actor,
        By.PRESCRIBER,
        id,
        (file, now) -> {
          if (!PastReading.hasLongUndated(file, ports.past())) {
            return Reading.refused(
                "No long erection from before waits for a review: nothing was changed.");
          }
          if (reference.filter(one -> !isKnown.test(one)).isPresent()) {
            return Reading.refused("Choose the preparation from the clinic's list.");
          }
          return changes.appendWithReason(
              id, new PastReviewed(reference), actor, now, Optional.empty(), reason);
        });
  }

  /** Opens volumes up to one again that a long erection had closed. */
  public Reading<Long> reopen(Account actor, CourseId id, long upToMicrolitres, String reason) {
    Optional<Volume> chosen = Volume.chosen(upToMicrolitres);
    if (chosen.isEmpty()) {
      return Reading.refused("No syringe draws such a volume: nothing was changed.");
    }
    Volume upTo = chosen.get();
    return changes.change(
        actor,
        By.PRESCRIBER,
        id,
        (file, now) -> {
          Question question = reader.state(file, now).question();
          if (question.history().closing(question.preparation(), upTo).isEmpty()) {
            return Reading.refused(upTo + " is not closed: nothing was changed.");
          }
          var fact = new VolumeReopened(file.plan().preparation(), upTo);
          return changes.appendWithReason(id, fact, actor, now, Optional.empty(), reason);
        });
  }
}
