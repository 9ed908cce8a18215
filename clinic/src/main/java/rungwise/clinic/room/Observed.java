package rungwise.clinic.room;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.clock.Present;
import rungwise.clinic.course.CourseFact.ObservationNoted;
import rungwise.clinic.course.CourseFact.ObservationStarted;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Observing;
import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.known.Preparation;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * A man under observation.
 *
 * @param since how long ago he was injected
 * @param isTimeKnown whether the clock is believed that says so; else he is to be looked at now
 * @param nextCheck when he is to be looked at next
 * @param last what was seen last, if anything was
 * @param isSound whether his record is as it was written
 * @param started what was written when he was injected
 * @param notes all that was seen, in the order of time
 */
public record Observed(
    CourseId course,
    EntryId observation,
    String fullName,
    String recordNumber,
    Preparation preparation,
    Volume drawn,
    Instant injectedAt,
    TimeSpan since,
    boolean isTimeKnown,
    Instant nextCheck,
    boolean isCheckDue,
    Optional<ObservationNoted> last,
    boolean isSound,
    ObservationStarted started,
    List<ObservationNoted> notes) {

  public Observed {
    notes = List.copyOf(notes);
  }

  static Observed of(
      CourseFile file,
      CourseFile.Written<ObservationStarted> written,
      Preparation preparation,
      Present present) {
    ObservationStarted started = written.fact();
    List<ObservationNoted> notes =
        file.notesOf(written.entry().id()).stream().map(CourseFile.Written::fact).toList();
    Optional<ObservationNoted> last = notes.stream().reduce((earlier, later) -> later);
    Instant seen =
        Stream.concat(Stream.of(started.injectedAt()), last.stream().map(ObservationNoted::at))
            .max(Comparator.naturalOrder())
            .orElseThrow();
    Instant next = Observing.CHECK_EVERY.value().after(seen);
    return new Observed(
        file.id(),
        written.entry().id(),
        file.patient().fullName(),
        file.patient().recordNumber(),
        preparation,
        started.drawn(),
        started.injectedAt(),
        sinceThen(started.injectedAt(), present.now()),
        present.isKnown(),
        next,
        !present.isKnown() || !next.isAfter(present.now()),
        last,
        file.isSound(),
        started,
        notes);
  }

  /** Nothing by a clock that is behind: then it is not known. */
  private static TimeSpan sinceThen(Instant injected, Instant now) {
    return now.isBefore(injected) ? TimeSpan.ofMinutes(0) : TimeSpan.between(injected, now);
  }

  /** When it will have lasted for 4 hours. */
  public Instant emergencyAt() {
    return DurationLimits.EMERGENCY.value().after(injectedAt);
  }

  /** It has lasted for 4 hours: treat it now. */
  public boolean isEmergency() {
    return !since.isLessThan(DurationLimits.EMERGENCY.value());
  }

  /** It has lasted for 2 hours. */
  public boolean isLong() {
    return !since.isLessThan(DurationLimits.CLOSES_VOLUME.value());
  }

  /** The firmest that was written down, if anything was. */
  public Optional<Grade> firmest() {
    return notes.stream()
        .flatMap(note -> note.grade().stream())
        .max(Comparator.comparingInt(Grade::number));
  }
}
