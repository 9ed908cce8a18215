package rungwise.clinic.standing;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.function.BiFunction;
import rungwise.clinic.OutsideText;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.NewEntry;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/**
 * How a course is changed: the record is read and appended to in one transaction, by somebody who
 * may. What every use case about a course shares stands here.
 */
public final class CourseChanges {

  /** The field of the reason for a change. */
  public static final String REASON = "reason";

  public static final String REASON_MISSING = "Write the reason: it stays on record.";

  public static final String INJECTED_THEN_ALREADY =
      "An injection at this very time is already on record: nothing was added. Correct that report"
          + " if it is wrong.";

  /** What is said to who would sign on a record that is not as it was written. */
  public static final String NOT_SOUND =
      "The record is not as it was written, so nothing can be signed on it. Tell your administrator"
          + " now: a sound record has to be put back first.";

  /** What is said to who would sign while it is not known what time it is. */
  public static final String CLOCK_NOT_KNOWN =
      "It is not known what time it is, so nothing can be signed: the top of the page says why, and"
          + " what to do.";

  private static final String STALE =
      "The record has changed since this page was opened, so nothing was written. Read what is new"
          + " and send it again.";

  private static final String NO_COURSE = "There is no such course: open the list again.";

  private final StandingPorts ports;

  public CourseChanges(StandingPorts ports) {
    this.ports = ports;
  }

  /** Who may make a change. */
  public enum By {
    PRESCRIBER("Only a prescriber can do that."),
    CLINICIAN("Only a prescriber, a nurse educator or an on-call clinician can do that.");

    private final String refusal;

    By(String refusal) {
      this.refusal = refusal;
    }

    /** What is said to somebody who may not. */
    public String refusal() {
      return refusal;
    }

    /** What only a prescriber does rests on the whole record and on time; a report does not. */
    private boolean signs() {
      return this == PRESCRIBER;
    }

    public boolean includes(Account actor) {
      boolean isPrescriber = actor.may(Role.PRESCRIBER);
      return switch (this) {
        case PRESCRIBER -> isPrescriber;
        case CLINICIAN ->
            isPrescriber || actor.may(Role.NURSE_EDUCATOR) || actor.may(Role.ON_CALL_CLINICIAN);
      };
    }
  }

  /** The instant as it can be stored, so that what is asked now can be asked again. */
  public Instant now() {
    return ports.clock().instant().truncatedTo(ChronoUnit.MILLIS);
  }

  /** Does a piece of work on the record as it is now, in one transaction. */
  public <T> Reading<T> change(
      Account actor, By by, CourseId id, BiFunction<CourseFile, Instant, Reading<T>> work) {
    if (!by.includes(actor)) {
      return Reading.refused(by.refusal);
    }
    return ports
        .transactions()
        .inTransaction(
            () ->
                ports
                    .courses()
                    .find(id)
                    .map(
                        file ->
                            doubt(by, file)
                                .map(Reading::<T>refused)
                                .orElseGet(() -> work.apply(file, now())))
                    .orElseGet(() -> Reading.refused(NO_COURSE)));
  }

  /**
   * The same by a prescriber, of what only somebody may do who has seen all that stands there.
   *
   * @param basis the number of the last entry that was shown
   */
  public <T> Reading<T> changeSeen(
      Account actor, CourseId id, long basis, BiFunction<CourseFile, Instant, Reading<T>> work) {
    return change(
        actor,
        By.PRESCRIBER,
        id,
        (file, now) -> file.basis() == basis ? work.apply(file, now) : Reading.refused(STALE));
  }

  private Optional<String> doubt(By by, CourseFile file) {
    if (!by.signs()) {
      return Optional.empty();
    }
    if (!file.isSound()) {
      return Optional.of(NOT_SOUND);
    }
    return isTimeKnown() ? Optional.empty() : Optional.of(CLOCK_NOT_KNOWN);
  }

  /** Whether what counts until a date may be written down: only what stops may be, if not. */
  public boolean isTimeKnown() {
    return ports.clockCheck().belief().isKnown();
  }

  /** Appends a fact and gives back its number. */
  public long append(CourseId id, CourseFact fact, Account actor, Instant now) {
    return ports.courses().append(NewEntry.of(id, fact, actor.id(), now));
  }

  /** Appends a fact with the writer's words, where there are any, or refuses what is too long. */
  public Reading<Long> append(
      CourseId id, CourseFact fact, Account actor, Instant now, String words) {
    return words.isBlank()
        ? Reading.of(append(id, fact, actor, now))
        : appendWithReason(id, fact, actor, now, Optional.empty(), words);
  }

  /** Appends a fact for which a reason must be written, or refuses if none is. */
  public Reading<Long> appendWithReason(
      CourseId id,
      CourseFact fact,
      Account actor,
      Instant now,
      Optional<EntryId> corrects,
      String reason) {
    Optional<String> fault = textFault(reason);
    if (reason.isBlank() || fault.isPresent()) {
      return Reading.refused(new Fault(REASON, fault.orElse(REASON_MISSING)));
    }
    NewEntry entry = NewEntry.of(id, fact, actor.id(), now).because(reason.strip());
    return Reading.of(ports.courses().append(corrects.map(entry::correcting).orElse(entry)));
  }

  /** The same at the field in which it is written. */
  public static Optional<Fault> textFault(String text, String field) {
    return textFault(text).map(words -> new Fault(field, words));
  }

  /** Why a text cannot be kept; empty if it can. */
  public static Optional<String> textFault(String text) {
    return text.length() > NewEntry.LONGEST_WORDS
        ? Optional.of(
            "Write at most "
                + NewEntry.LONGEST_WORDS
                + " characters: this has "
                + text.length()
                + ".")
        : OutsideText.hiddenIn("What you wrote", OutsideText.withoutTabs(text));
  }
}
