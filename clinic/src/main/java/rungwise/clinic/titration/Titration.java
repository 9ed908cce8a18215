package rungwise.clinic.titration;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import rungwise.clinic.course.ChangeReason;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.EmergencyReviewed;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.PlanChosen;
import rungwise.clinic.course.CourseFact.ReadinessRecorded;
import rungwise.clinic.course.CourseFact.ReportWithdrawn;
import rungwise.clinic.course.CourseFact.ScreeningAnswered;
import rungwise.clinic.course.CourseFact.VolumeReopened;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.NewEntry;
import rungwise.clinic.course.Plan;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.dosing.Dosing;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.history.Answer;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.known.Barrels;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/**
 * The use cases of a course that runs: reports, advice, signatures and what a prescriber writes.
 * Each change reads the record and appends to it in one transaction.
 */
public final class Titration {

  private static final String NO_COURSE = "There is no such course: open the list again.";
  private static final String PRESCRIBER_ONLY = "Only a prescriber can do that.";
  private static final String CLINICAL_ONLY =
      "Only a prescriber, a nurse educator or an on-call clinician can do that.";
  private static final String STALE =
      "The record has changed since this page was opened, so nothing was signed. Read what is new"
          + " and sign again.";

  private final TitrationPorts ports;
  private final CourseReader reader;

  public Titration(TitrationPorts ports) {
    this.ports = ports;
    this.reader = new CourseReader(ports);
  }

  /** A course as it is now. */
  public Optional<CourseState> find(CourseId id) {
    return ports.courses().find(id).map(file -> reader.state(file, now()));
  }

  /** The instant as it can be stored, so that what is asked now can be asked again. */
  private Instant now() {
    return ports.clock().instant().truncatedTo(ChronoUnit.MILLIS);
  }

  /** Every course as it is now, the one opened last first. */
  public List<CourseState> all() {
    return ports.courses().all().stream().flatMap(id -> find(id).stream()).toList();
  }

  /** Records what a man reported, or corrects an earlier report. */
  public Reading<Long> report(Account actor, CourseId id, ReportDraft draft) {
    if (!isClinical(actor)) {
      return Reading.refused(CLINICAL_ONLY);
    }
    return change(
        id,
        (file, now) -> {
          var reading = ReportReading.of(draft, file, ports.time(), now);
          if (reading instanceof Reading.Refused<InjectionReported> refused) {
            return new Reading.Refused<>(refused.faults());
          }
          InjectionReported report = reading.found().orElseThrow();
          Optional<String> fault = unfitFor(file, report, draft.corrects());
          if (fault.isPresent()) {
            return Reading.refused(fault.get());
          }
          NewEntry entry = NewEntry.of(id, report, actor.id(), now);
          NewEntry placed = draft.corrects().map(entry::correcting).orElse(entry);
          NewEntry said =
              draft.corrects().isPresent() ? placed.because(draft.reason().strip()) : placed;
          return new Reading.Read<>(ports.courses().append(said), reading.notices());
        });
  }

  private static Optional<String> unfitFor(
      CourseFile file, InjectionReported report, Optional<EntryId> corrects) {
    if (corrects.isPresent() && reportOf(file, corrects.get()).isEmpty()) {
      return Optional.of("The report was corrected meanwhile: open the course again.");
    }
    boolean twice =
        file.reports().stream()
            .filter(written -> !corrects.equals(Optional.of(written.entry().id())))
            .anyMatch(written -> written.fact().injectedAt().equals(report.injectedAt()));
    return twice
        ? Optional.of(
            "An injection at this very time is already on record: nothing was added. Correct that"
                + " report if it is wrong.")
        : Optional.empty();
  }

  private static Optional<CourseEntry> reportOf(CourseFile file, EntryId id) {
    return file.reports().stream()
        .map(CourseFile.Written::entry)
        .filter(entry -> entry.id().equals(id))
        .findFirst();
  }

  /** Takes a report out of what counts, for example one entered for the wrong man. */
  public Reading<Long> withdraw(Account actor, CourseId id, EntryId report, String reason) {
    if (!isClinical(actor)) {
      return Reading.refused(CLINICAL_ONLY);
    }
    return change(
        id,
        (file, now) -> {
          if (reportOf(file, report).isEmpty()) {
            return Reading.refused("The report was corrected meanwhile: open the course again.");
          }
          return append(id, new ReportWithdrawn(), actor, now, Optional.of(report), reason);
        });
  }

  /** Signs a dose. The guards are asked again, on the record as it is at that moment. */
  public Reading<Long> sign(Account actor, CourseId id, SignDraft draft) {
    if (!actor.may(Role.PRESCRIBER)) {
      return Reading.refused(PRESCRIBER_ONLY);
    }
    if (draft.volumeMicrolitres() < 0) {
      return Reading.refused("No volume is below zero: choose one of the steps.");
    }
    return change(
        id,
        (file, now) -> {
          if (file.basis() != draft.basis()) {
            return Reading.refused(STALE);
          }
          CourseState state = reader.state(file, now);
          Advice advice = state.advice();
          Volume volume = Volume.ofMicrolitres(draft.volumeMicrolitres());
          Optional<ChangeReason> changed = SigningCheck.changeReason(draft.changed());
          List<String> faults = SigningCheck.faults(draft, advice, volume, changed);
          if (!faults.isEmpty()) {
            return new Reading.Refused<>(faults);
          }
          var signed =
              new DoseSigned(
                  file.plan(),
                  volume,
                  draft.place(),
                  state.question().ladder().rungs(),
                  state.question().ladder().ceiling(),
                  draft.overridden(),
                  changed,
                  file.basis(),
                  now,
                  advice.record());
          NewEntry entry = NewEntry.of(id, signed, actor.id(), now);
          String reason = draft.reason().strip();
          return Reading.of(
              ports.courses().append(reason.isEmpty() ? entry : entry.because(reason)));
        });
  }

  /** Writes down that a prescriber has reviewed every emergency on record. */
  public Reading<Long> reviewEmergency(Account actor, CourseId id, String reason) {
    return byPrescriber(actor, id, reason, new EmergencyReviewed());
  }

  /** Opens volumes up to one again that a long erection had closed. */
  public Reading<Long> reopen(Account actor, CourseId id, long upToMicrolitres, String reason) {
    if (!actor.may(Role.PRESCRIBER)) {
      return Reading.refused(PRESCRIBER_ONLY);
    }
    if (upToMicrolitres < 0) {
      return Reading.refused("A volume below zero is not closed: nothing was changed.");
    }
    return change(
        id,
        (file, now) -> {
          Volume upTo = Volume.ofMicrolitres(upToMicrolitres);
          if (file.history().closing(file.plan().preparation(), upTo).isEmpty()) {
            return Reading.refused(upTo + " is not closed: nothing was changed.");
          }
          var fact = new VolumeReopened(file.plan().preparation(), upTo);
          return append(id, fact, actor, now, Optional.empty(), reason);
        });
  }

  /** Writes down the answer to the question about contraindications. */
  public Reading<Long> answerScreening(Account actor, CourseId id, Answer contraindication) {
    if (!isClinical(actor)) {
      return Reading.refused(CLINICAL_ONLY);
    }
    return change(
        id,
        (file, now) ->
            Reading.of(
                ports
                    .courses()
                    .append(
                        NewEntry.of(
                            id, new ScreeningAnswered(contraindication), actor.id(), now))));
  }

  /** Writes down that something home use needs has been done. */
  public Reading<Long> recordReadiness(Account actor, CourseId id, Readiness item) {
    if (!isClinical(actor)) {
      return Reading.refused(CLINICAL_ONLY);
    }
    return change(
        id,
        (file, now) ->
            file.readiness().contains(item)
                ? Reading.refused("That is already on record: nothing was added.")
                : Reading.of(
                    ports
                        .courses()
                        .append(NewEntry.of(id, new ReadinessRecorded(item), actor.id(), now))));
  }

  /** Chooses another syringe; the dose in force ends, because its mark was another one's. */
  public Reading<Long> chooseBarrel(Account actor, CourseId id, String token) {
    if (!actor.may(Role.PRESCRIBER)) {
      return Reading.refused(PRESCRIBER_ONLY);
    }
    if (Barrels.of(token).isEmpty()) {
      return Reading.refused("There is no such syringe: choose one of the list.");
    }
    return change(
        id,
        (file, now) -> {
          Plan old = file.plan();
          Plan plan = new Plan(old.preparation(), token, old.protocol(), old.protocolVersion());
          var ladder = reader.ladderOf(plan, file.opened().group());
          if (plan.equals(old)) {
            return Reading.refused("That is the syringe already: nothing was changed.");
          }
          return ladder.found().isEmpty()
              ? new Reading.Refused<>(ladder.faults())
              : Reading.of(
                  ports.courses().append(NewEntry.of(id, new PlanChosen(plan), actor.id(), now)));
        });
  }

  /** Asks a stored decision again. */
  public Optional<Replay> replay(CourseId id, EntryId signature) {
    return ports
        .courses()
        .find(id)
        .flatMap(
            file ->
                file.inForce(DoseSigned.class).stream()
                    .filter(written -> written.entry().id().equals(signature))
                    .map(CourseFile.Written::fact)
                    .map(signed -> replay(file, signed))
                    .findFirst());
  }

  private Replay replay(CourseFile file, DoseSigned signed) {
    CourseState then = reader.state(file.upTo(signed.basis()), signed.askedAt());
    return new Replay(signed.advice(), Dosing.advise(then.question()).record());
  }

  private Reading<Long> byPrescriber(Account actor, CourseId id, String reason, CourseFact fact) {
    if (!actor.may(Role.PRESCRIBER)) {
      return Reading.refused(PRESCRIBER_ONLY);
    }
    return change(id, (file, now) -> append(id, fact, actor, now, Optional.empty(), reason));
  }

  private Reading<Long> append(
      CourseId id,
      CourseFact fact,
      Account actor,
      Instant now,
      Optional<EntryId> corrects,
      String reason) {
    if (reason.isBlank()) {
      return Reading.refused(SigningCheck.REASON_MISSING);
    }
    NewEntry entry = NewEntry.of(id, fact, actor.id(), now).because(reason.strip());
    return Reading.of(ports.courses().append(corrects.map(entry::correcting).orElse(entry)));
  }

  private Reading<Long> change(CourseId id, BiFunction<CourseFile, Instant, Reading<Long>> work) {
    return ports
        .transactions()
        .inTransaction(
            () ->
                ports
                    .courses()
                    .find(id)
                    .map(file -> work.apply(file, now()))
                    .orElseGet(() -> Reading.refused(NO_COURSE)));
  }

  private static boolean isClinical(Account actor) {
    return actor.may(Role.PRESCRIBER)
        || actor.may(Role.NURSE_EDUCATOR)
        || actor.may(Role.ON_CALL_CLINICIAN);
  }
}
