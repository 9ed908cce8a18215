package rungwise.clinic.titration;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.ObservationStarted;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.NewEntry;
import rungwise.dosing.history.Place;

/** An injection in the clinic that was watched: its observation, and the report that ends it. */
final class SeenInjection {

  private SeenInjection() {}

  /** Writes both, and gives back the number of the report. */
  static long append(CoursePorts stored, CourseId id, InjectionReported told, Instant now) {
    write(
        stored,
        id,
        new ObservationStarted(
            told.injectedAt(),
            told.preparation(),
            told.barrel(),
            told.drawn(),
            told.ordered(),
            Optional.empty(),
            Optional.empty(),
            told.details().vial()),
        now);
    var observation = stored.courses().find(id).orElseThrow().entries().getLast().id();
    return write(
        stored,
        id,
        new InjectionReported(
            told.injectedAt(),
            told.preparation(),
            told.barrel(),
            told.drawn(),
            told.ordered(),
            told.grade(),
            told.soft(),
            told.causes(),
            Place.CLINIC,
            Optional.of(observation),
            told.details()),
        now);
  }

  private static long write(CoursePorts stored, CourseId id, CourseFact fact, Instant now) {
    NewEntry entry = NewEntry.of(id, fact, Staff.EDUCATOR.id(), now.truncatedTo(ChronoUnit.MILLIS));
    return stored.transactions().inTransaction(() -> stored.courses().append(entry));
  }
}
