package rungwise.clinic.call;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.called.CallLog;
import rungwise.clinic.coded.HandedOnFor;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.CallWritten;
import rungwise.clinic.course.CourseFact.ReportUnfinished;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.StandingPorts;
import rungwise.clinic.standing.UnfinishedReports;
import rungwise.clinic.titration.EndAnswer;
import rungwise.clinic.titration.ReportDraft;
import rungwise.clinic.titration.ReportPart;
import rungwise.clinic.titration.Reports;
import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.urgent.CallStep;
import rungwise.dosing.urgent.Speaker;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/**
 * Calls about an erection that does not go down. What is said of the erection reaches the engine as
 * a report that is not complete; the call itself is a log that holds every dose while it is open.
 */
public final class Calls {

  private static final String NO_CALL =
      "No call is open for him: write first when it began, or that nobody knows.";
  private static final int LONGEST_NAME = 200;
  private static final Duration EMERGENCY =
      Duration.ofMillis(DurationLimits.EMERGENCY.value().milliseconds());

  private final StandingPorts ports;
  private final CourseChanges changes;
  private final Reports reports;
  private final Supplier<List<Account>> accounts;

  /**
   * The use cases.
   *
   * @param accounts everybody who works here
   */
  public Calls(StandingPorts ports, Supplier<List<Account>> accounts) {
    this.ports = ports;
    this.changes = new CourseChanges(ports);
    this.reports = new Reports(ports);
    this.accounts = accounts;
  }

  /** Who may have the call from now on: everybody on call and every prescriber, but who asks. */
  public List<Account> others(Account actor) {
    return accounts.get().stream()
        .filter(one -> one.may(Role.ON_CALL_CLINICIAN) || one.may(Role.PRESCRIBER))
        .filter(one -> !one.id().equals(actor.id()))
        .toList();
  }

  /** Writes one thing down; the first that says how long it lasts opens the call. */
  public Reading<Long> write(Account actor, CourseId id, CallDraft draft) {
    if (draft.what().isEmpty()) {
      return Reading.refused(new Fault(CallDraft.WHAT, "Choose what is to be written down."));
    }
    return changes.change(
        actor,
        By.CLINICIAN,
        id,
        (file, now) -> new Writing(actor, id, draft, now).write(draft.what().get()));
  }

  /** One thing that is written down, within one transaction. */
  private final class Writing {

    private final Account actor;
    private final CourseId id;
    private final CallDraft draft;
    private final Instant now;

    Writing(Account actor, CourseId id, CallDraft draft, Instant now) {
      this.actor = actor;
      this.id = id;
      this.draft = draft;
      this.now = now;
    }

    Reading<Long> write(CallDraft.What what) {
      return switch (what) {
        case BEGAN -> began();
        case NOT_KNOWN -> danger(new CallWritten.Began(openOrBegin(), Optional.empty(), speaker()));
        case FIRM -> happened().map(at -> firm(at));
        case DONE -> inCall(this::done);
        case STRIKE -> inCall(this::strike);
        case HAND_ON -> inCall(this::handOn);
        case SOFT -> inCall(this::soft);
        case HANDED_TO -> inCall(this::handedTo);
      };
    }

    private Reading<Long> began() {
      return switch (draft.time().began(ports.time(), now)) {
        case Reading.Read<Instant> read ->
            danger(new CallWritten.Began(openOrBegin(), Optional.of(read.value()), speaker()));
        case Reading.Refused<Instant> refused -> new Reading.Refused<>(refused.placed());
      };
    }

    private long firm(Instant at) {
      return danger(new CallWritten.Firm(openOrBegin(), at, speaker())).orThrow();
    }

    private CourseFile file() {
      return ports.courses().find(id).orElseThrow();
    }

    private Speaker speaker() {
      return Arrays.stream(Speaker.values())
          .filter(one -> one.name().equals(draft.speaker()))
          .findFirst()
          .orElse(Speaker.HE);
    }

    /** Without a clock time it is now. */
    private Reading<Instant> happened() {
      return draft.time().clock().isBlank()
          ? Reading.of(now)
          : draft.time().happened(ports.time(), ports.present(now));
    }

    private EntryId openOrBegin() {
      return CallLog.open(file())
          .map(call -> call.opened().id())
          .orElseGet(
              () -> {
                append(new CallWritten.Opened());
                return CallLog.open(file()).orElseThrow().opened().id();
              });
    }

    private long append(CallWritten.Word word) {
      return changes.append(id, new CallWritten(word), actor, now);
    }

    private Reading<Long> inCall(Function<CallLog, Reading<Long>> work) {
      return CallLog.open(file()).map(work).orElseGet(() -> Reading.refused(NO_CALL));
    }

    /** Written in the call, and told to the engine by a report that is not complete. */
    private Reading<Long> danger(CallWritten.Word word) {
      long number = append(word);
      tell(CallLog.open(file()).orElseThrow());
      return Reading.of(number);
    }

    private void tell(CallLog call) {
      ReportDraft still = ReportDraft.EMPTY.with(ReportPart.SOFT, EndAnswer.STILL.token());
      report(call, call.began().map(at -> injected(still, at)).orElse(still));
    }

    private ReportDraft injected(ReportDraft report, Instant at) {
      return report
          .with(ReportPart.DAY, "other")
          .with(ReportPart.DATE, ports.time().dateText(at))
          .with(ReportPart.TIME, ports.time().timeText(at))
          .with(ReportPart.OCCURRENCE, ports.time().occurrence(at).name());
    }

    /** In place of what was told in the same call before. */
    private void report(CallLog call, ReportDraft report) {
      Optional<EntryId> before =
          UnfinishedReports.of(file()).stream()
              .map(Written<ReportUnfinished>::entry)
              .filter(entry -> entry.number() > call.opened().number())
              .reduce((earlier, later) -> later)
              .map(CourseEntry::id);
      reports.enter(actor, id, before.map(report::completing).orElse(report));
    }

    private Reading<Long> done(CallLog call) {
      Optional<CallStep> step =
          Arrays.stream(CallStep.values())
              .filter(one -> one.name().equals(draft.picked()))
              .findFirst();
      if (step.isEmpty()) {
        return Reading.refused(new Fault(CallDraft.PICKED, "Choose which step was done."));
      }
      return happened()
          .map(at -> append(new CallWritten.Done(call.opened().id(), step.get(), at, speaker())));
    }

    private Reading<Long> strike(CallLog call) {
      Optional<EntryId> began =
          call.words().stream()
              .filter(one -> one.fact().word() instanceof CallWritten.Began)
              .map(one -> one.entry().id())
              .filter(one -> one.text().equals(draft.picked()))
              .findFirst();
      if (began.isEmpty()) {
        return Reading.refused(
            new Fault(CallDraft.PICKED, "Choose which start is struck: it stays to be read."));
      }
      var struck = new CallWritten(new CallWritten.Struck(call.opened().id(), began.get()));
      Reading<Long> written =
          changes.appendWithReason(id, struck, actor, now, Optional.empty(), draft.words());
      written.found().ifPresent(number -> tell(CallLog.open(file()).orElseThrow()));
      return written;
    }

    private Reading<Long> handOn(CallLog call) {
      var faults = new ArrayList<Fault>();
      Optional<Account> to =
          others(actor).stream().filter(one -> one.id().text().equals(draft.picked())).findFirst();
      if (to.isEmpty()) {
        faults.add(new Fault(CallDraft.PICKED, "Choose by name who has the call from now on."));
      }
      Optional<HandedOnFor> why =
          Arrays.stream(HandedOnFor.values())
              .filter(one -> one.name().equals(draft.why()))
              .findFirst();
      if (why.isEmpty()) {
        faults.add(new Fault(CallDraft.WHY, "Choose why the call is handed on."));
      }
      CourseChanges.textFault(draft.words(), CallDraft.WORDS).ifPresent(faults::add);
      return faults.isEmpty()
          ? changes.append(
              id,
              new CallWritten(
                  new CallWritten.HandedOn(
                      call.opened().id(), to.orElseThrow().id(), why.orElseThrow())),
              actor,
              now,
              draft.words())
          : new Reading.Refused<>(faults);
    }

    private Reading<Long> soft(CallLog call) {
      return switch (happened()) {
        case Reading.Refused<Instant> refused -> new Reading.Refused<>(refused.placed());
        case Reading.Read<Instant> read ->
            softFault(call, read.value())
                .<Reading<Long>>map(
                    fault -> Reading.refused(new Fault(ClinicTime.TIME_FIELD, fault)))
                .orElseGet(() -> Reading.of(soft(call, read.value())));
      };
    }

    private long soft(CallLog call, Instant at) {
      long number = append(new CallWritten.Soft(call.opened().id(), at, speaker()));
      call.began()
          .map(began -> Duration.between(began, at))
          .filter(lasted -> lasted.compareTo(EMERGENCY) >= 0)
          .ifPresent(lasted -> ended(call, lasted.toMinutes()));
      return number;
    }

    private void ended(CallLog call, long minutes) {
      ReportDraft end =
          ReportDraft.EMPTY
              .with(ReportPart.SOFT, EndAnswer.EXACTLY.token())
              .with(ReportPart.EXACT_MINUTES, Long.toString(minutes));
      report(call, injected(end, call.began().orElseThrow()));
    }

    private Optional<String> softFault(CallLog call, Instant at) {
      boolean isBefore = call.began().filter(began -> !began.isBefore(at)).isPresent();
      if (isBefore) {
        return Optional.of(
            ports.time().words(at)
                + " is not after it began: write when it was fully soft, or choose today.");
      }
      return call.words().stream()
          .filter(
              one -> one.fact().word() instanceof CallWritten.Firm firm && !firm.at().isBefore(at))
          .findFirst()
          .map(
              one ->
                  "It was said to be firm still after "
                      + ports.time().words(at)
                      + ": ask again when it was fully soft.");
    }

    private Reading<Long> handedTo(CallLog call) {
      Reading<Instant> at = happened();
      var faults = new ArrayList<Fault>(at.placed());
      name(CallDraft.PLACE, draft.place(), "Write where he is, such as the name of the hospital.")
          .ifPresent(faults::add);
      name(CallDraft.WHOM, draft.whom(), "Write who has taken him over, by name or post.")
          .ifPresent(faults::add);
      return faults.isEmpty()
          ? Reading.of(
              append(
                  new CallWritten.HandedTo(
                      call.opened().id(),
                      draft.place().strip(),
                      draft.whom().strip(),
                      at.orThrow())))
          : new Reading.Refused<>(faults);
    }

    private Optional<Fault> name(String field, String typed, String missing) {
      if (typed.isBlank()) {
        return Optional.of(new Fault(field, missing));
      }
      return typed.strip().length() > LONGEST_NAME
          ? Optional.of(
              new Fault(
                  field,
                  "Write at most "
                      + LONGEST_NAME
                      + " characters: this has "
                      + typed.strip().length()
                      + "."))
          : Optional.empty();
    }
  }
}
