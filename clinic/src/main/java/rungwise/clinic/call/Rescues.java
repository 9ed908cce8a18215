package rungwise.clinic.call;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import rungwise.clinic.callbook.CallBook;
import rungwise.clinic.callbook.CallProtocol;
import rungwise.clinic.called.CallLog;
import rungwise.clinic.called.RescueRecord;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.CallWritten;
import rungwise.clinic.course.CourseFact.RescueWritten;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.measured.Vitals;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.clinic.rescue.RescueWord;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseReader;
import rungwise.clinic.standing.StandingPorts;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.urgent.Speaker;
import rungwise.dosing.urgent.rescue.LogVerdict;
import rungwise.dosing.urgent.rescue.RescueLimits;
import rungwise.dosing.urgent.rescue.Twice;
import rungwise.dosing.urgent.rescue.Typed;
import rungwise.quantities.Fault;
import rungwise.quantities.Mass;
import rungwise.quantities.Reading;

/**
 * The log of a rescue. What was given is written whatever it was; what is asked for is refused or
 * held by what was given before.
 */
public final class Rescues {

  /** How long after a call what is given belongs to it still. */
  private static final Duration AFTERWARDS = Duration.ofDays(1);

  private static final String NO_TIME =
      "It is not known what time it is, so no interval can be counted here: count it by another"
          + " clock. What is given is written down all the same.";

  private final StandingPorts ports;
  private final CourseChanges changes;
  private final CourseReader reader;
  private final Supplier<Optional<CallBook.Signed>> signed;

  /**
   * The use cases.
   *
   * @param signed the protocol for calls that the clinic signed last
   */
  public Rescues(StandingPorts ports, Supplier<Optional<CallBook.Signed>> signed) {
    this.ports = ports;
    this.changes = new CourseChanges(ports);
    this.reader = new CourseReader(ports);
    this.signed = signed;
  }

  /** What the clinic has signed, or the sample. */
  public RescueLimits limits() {
    return protocol().limits();
  }

  /** Whether the clinic has signed none. */
  public boolean isSample() {
    return signed.get().isEmpty();
  }

  /** What is done in a call: what was signed last, or the sample. */
  public CallProtocol protocol() {
    return signed.get().map(CallBook.Signed::protocol).orElse(CallProtocol.SAMPLE);
  }

  /** Writes one thing down. */
  public Reading<Long> write(Account actor, CourseId id, RescueDraft draft) {
    if (draft.what().isEmpty()) {
      return Reading.refused(new Fault(RescueDraft.WHAT, "Choose what is to be written down."));
    }
    return changes.change(
        actor,
        By.CLINICIAN,
        id,
        (file, now) -> new Writing(actor, file, draft, now).write(draft.what().get()));
  }

  /** Why a dose is held that was asked for; empty if it is refused, or may be prepared. */
  public Optional<LogVerdict.Hold> held(CourseFile file, RescueDraft draft) {
    var fields = new RescueFields(draft::text);
    return fields
        .twice(RescueFields.DOSE, Typed::dose)
        .map(dose -> verdict(file, draft, dose, changes.now()))
        .filter(LogVerdict.Hold.class::isInstance)
        .map(LogVerdict.Hold.class::cast);
  }

  /** The reasons of a hold as a form carries them: whoever goes on has read just these. */
  public static String token(LogVerdict.Hold hold) {
    return hold.reasons().stream()
        .map(reason -> reason.kind().name())
        .collect(Collectors.joining(","));
  }

  private LogVerdict verdict(CourseFile file, RescueDraft draft, Twice<Mass> dose, Instant now) {
    Optional<String> second =
        Optional.of(draft.text(RescueDraft.SECOND)).filter(name -> !name.isEmpty());
    return RescueRecord.of(file).log(inhibitor(file, now), second).next(dose, now, limits());
  }

  private Answer inhibitor(CourseFile file, Instant now) {
    return reader.state(file, now).question().screening().answerTo(Condition.MAO_INHIBITOR);
  }

  /** One thing that is written down, within one transaction. */
  private final class Writing {

    private final Account actor;
    private final CourseFile file;
    private final RescueDraft draft;
    private final Instant now;
    private final RescueFields fields;
    private final RescueReading reading;

    Writing(Account actor, CourseFile file, RescueDraft draft, Instant now) {
      this.actor = actor;
      this.file = file;
      this.draft = draft;
      this.now = now;
      this.fields = new RescueFields(draft::text);
      this.reading = new RescueReading(ports, draft, now, fields);
    }

    Reading<Long> write(RescueDraft.What what) {
      return switch (what) {
        case GIVEN -> given();
        case MEASURED -> measured();
        case GAS -> gas();
        case PREPARE -> prepare();
        case TICK -> tick();
        case STRIKE -> strike();
      };
    }

    private Reading<Long> refused() {
      return new Reading.Refused<>(fields.faults());
    }

    private Reading<Long> given() {
      List<RescueWord.Given> doses = reading.given(actor.fullName());
      if (doses.isEmpty()) {
        return refused();
      }
      long number = 0;
      for (RescueWord.Given dose : doses) {
        number = append(dose);
      }
      return Reading.of(number);
    }

    private Reading<Long> measured() {
      Optional<Instant> at = reading.at();
      Optional<Vitals> vitals = reading.vitals();
      if (vitals.isEmpty() && fields.faults().isEmpty()) {
        fields.add(
            new Fault(
                RescueDraft.SYSTOLIC,
                "Nothing was typed: write blood pressure and pulse, such as 128, 76 and 72."));
      }
      return fields.faults().isEmpty()
          ? Reading.of(append(new RescueWord.Measured(at.orElseThrow(), vitals.orElseThrow())))
          : refused();
    }

    private Reading<Long> gas() {
      Optional<Instant> at = reading.at();
      return fields
          .gas()
          .filter(gas -> fields.faults().isEmpty())
          .map(
              gas ->
                  Reading.of(
                      append(
                          new RescueWord.GasTaken(
                              at.orElseThrow(),
                              gas.oxygen().value(),
                              gas.carbonDioxide().value(),
                              gas.ph().value()))))
          .orElseGet(this::refused);
    }

    private Reading<Long> prepare() {
      if (!ports.present(now).isKnown()) {
        return Reading.refused(NO_TIME);
      }
      Optional<Twice<Mass>> dose = fields.twice(RescueFields.DOSE, Typed::dose);
      Optional<String> second = reading.name(RescueDraft.SECOND, "The second person");
      reading.other(actor.fullName(), second);
      if (dose.isEmpty() || !fields.faults().isEmpty()) {
        return refused();
      }
      return switch (verdict(file, draft, dose.get(), now)) {
        case LogVerdict.Refused refused -> {
          fields.add(refused.why());
          yield refused();
        }
        case LogVerdict.Allowed allowed ->
            Reading.of(append(prepared(dose.get().value(), second, List.of())));
        case LogVerdict.Hold hold -> overridden(hold, dose.get().value(), second);
      };
    }

    private RescueWord prepared(
        Mass dose, Optional<String> second, List<LogVerdict.Kind> overridden) {
      return new RescueWord.Prepared(now, dose, second, overridden);
    }

    private Reading<Long> overridden(LogVerdict.Hold hold, Mass dose, Optional<String> second) {
      boolean isTreating = actor.may(Role.PRESCRIBER) || actor.may(Role.ON_CALL_CLINICIAN);
      boolean isRead = draft.text(RescueDraft.READ).equals(token(hold));
      if (!isTreating) {
        return Reading.refused(
            new Fault(
                RescueDraft.WORDS,
                "This dose is held: only a prescriber or an on-call clinician goes on."));
      }
      if (!isRead || draft.text(RescueDraft.WORDS).isEmpty()) {
        return Reading.refused(
            new Fault(
                RescueDraft.WORDS,
                "This dose is held: read why, mend what can be mended, or write why you go on."));
      }
      List<LogVerdict.Kind> kinds = hold.reasons().stream().map(LogVerdict.Reason::kind).toList();
      return changes.appendWithReason(
          file.id(),
          new RescueWritten(call(), prepared(dose, second, kinds)),
          actor,
          now,
          Optional.empty(),
          draft.text(RescueDraft.WORDS));
    }

    /** By its words, so that a step that was signed anew meanwhile is not ticked for another. */
    private Reading<Long> tick() {
      Optional<Instant> at = reading.at();
      Optional<CallBook.Signed> protocol = signed.get();
      List<CallProtocol.Step> steps = protocol.map(one -> one.protocol().steps()).orElse(List.of());
      Optional<CallProtocol.Step> step =
          steps.stream()
              .filter(one -> one.words().equals(draft.text(RescueDraft.STEP)))
              .findFirst();
      if (step.isEmpty()) {
        fields.add(
            new Fault(
                RescueDraft.STEP,
                "This step is not in the clinic's protocol any more: open the page again and"
                    + " choose one that is."));
      }
      CourseChanges.textFault(draft.text(RescueDraft.WORDS), RescueDraft.WORDS)
          .ifPresent(fields::add);
      if (!fields.faults().isEmpty()) {
        return refused();
      }
      Speaker by =
          Arrays.stream(Speaker.values())
              .filter(one -> one.name().equals(draft.text(RescueDraft.SPEAKER)))
              .findFirst()
              .orElse(Speaker.CLINICIAN);
      var word =
          new RescueWord.Ticked(
              protocol.orElseThrow().version(),
              steps.indexOf(step.orElseThrow()) + 1,
              step.orElseThrow().words(),
              at.orElseThrow(),
              by);
      return changes.append(
          file.id(), new RescueWritten(call(), word), actor, now, draft.text(RescueDraft.WORDS));
    }

    private Reading<Long> strike() {
      return RescueRecord.of(file).counting().stream()
          .filter(one -> one.entry().id().text().equals(draft.text(RescueDraft.ENTRY)))
          .findFirst()
          .map(
              one ->
                  changes.appendWithReason(
                      file.id(),
                      new RescueWritten(one.fact().call(), new RescueWord.Struck()),
                      actor,
                      now,
                      Optional.of(one.entry().id()),
                      draft.text(RescueDraft.WORDS)))
          .orElseGet(
              () ->
                  Reading.refused(
                      new Fault(
                          RescueDraft.ENTRY,
                          "Choose which entry is struck: it stays to be read.")));
    }

    private long append(RescueWord word) {
      return changes.append(file.id(), new RescueWritten(call(), word), actor, now);
    }

    /** The call that is open, or ended lately; else a call opens, which can only hold. */
    private EntryId call() {
      CourseFile current = ports.courses().find(file.id()).orElseThrow();
      return CallLog.open(current)
          .or(() -> last(current))
          .map(CallLog::opened)
          .map(CourseEntry::id)
          .orElseGet(
              () -> {
                changes.append(file.id(), new CallWritten(new CallWritten.Opened()), actor, now);
                return CallLog.open(ports.courses().find(file.id()).orElseThrow())
                    .orElseThrow()
                    .opened()
                    .id();
              });
    }

    private Optional<CallLog> last(CourseFile current) {
      return CallLog.of(current).stream()
          .reduce((earlier, later) -> later)
          .filter(
              call -> call.end().orElseThrow().entry().recordedAt().plus(AFTERWARDS).isAfter(now));
    }
  }
}
