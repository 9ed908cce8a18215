package rungwise.clinic.sheet;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.called.CallLog;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.CourseFact.CallWritten;
import rungwise.clinic.course.CourseFact.CallWritten.Began;
import rungwise.clinic.course.CourseFact.CallWritten.Struck;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.RescueWritten;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.EmergencyPlan;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.reaching.ReachWords;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.history.Injection;
import rungwise.dosing.known.Dose;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.syringe.Barrels;
import rungwise.dosing.urgent.Elapsed;
import rungwise.dosing.urgent.Start;
import rungwise.dosing.urgent.Timeline;

/** Calls in words. */
public final class CallViews {

  /** What whoever treats a long erection must know before, the gravest first. */
  static final List<Condition> WARNINGS =
      List.of(
          Condition.SICKLE_CELL,
          Condition.MYELOMA_OR_LEUKAEMIA,
          Condition.MAO_INHIBITOR,
          Condition.UNCONTROLLED_PRESSURE,
          Condition.STROKE_OR_ARTERIAL_DISEASE,
          Condition.CORONARY_DISEASE,
          Condition.NITRATE_OR_PRESSURE_MEDICINE,
          Condition.ANTICOAGULANT);

  private final ClinicTime time;
  private final Function<AccountId, String> names;

  /**
   * Words in the clinic's zone.
   *
   * @param names the full name of an account
   */
  public CallViews(ClinicTime time, Function<AccountId, String> names) {
    this.time = time;
    this.names = names;
  }

  /** The last call of a course, or what a call would begin with. */
  public CallView of(CourseState state, CourseView.Man man) {
    Optional<CallLog> last =
        CallLog.of(state.file()).stream().reduce((earlier, later) -> later).filter(this::isShown);
    boolean isOpen = last.filter(CallLog::isOpen).isPresent();
    Timeline timeline =
        last.map(CallLog::timeline)
            .orElseGet(() -> new Timeline(List.copyOf(CallLog.injections(state.file()))));
    Optional<Elapsed> elapsed =
        timeline.starts().isEmpty() && !isOpen
            ? Optional.empty()
            : Optional.of(
                state
                    .knownNow()
                    .map(timeline::elapsed)
                    .orElseGet(() -> new Elapsed.Unknown(Optional.empty())));
    Optional<Written<InjectionReported>> injected = injected(state);
    return new CallView(
        state.file().id(),
        man,
        new ReachWords(time, names).of(state),
        warnings(state),
        state.question().screening().answerTo(Condition.HYPERSENSITIVITY),
        dose(state, injected),
        doseIs(state, injected),
        state.file().emergencyPlan().map(CallViews::lines).orElse(List.of()),
        state.file().emergencyPlan().map(EmergencyPlan::afterHoursNumber),
        isOpen,
        !isOpen && !CallLog.holding(state.file()).isEmpty(),
        isOpenToThePast(timeline) ? Optional.empty() : timeline.earliestCredible(),
        elapsed,
        log(state),
        last.filter(CallLog::isOpen).map(call -> struckable(call, state.now())).orElse(List.of()));
  }

  /** One that is over and done with is read in the record. */
  private boolean isShown(CallLog call) {
    return call.isOpen();
  }

  private static boolean isOpenToThePast(Timeline timeline) {
    return timeline.starts().stream().anyMatch(Start::isOpenToThePast);
  }

  private static List<CallView.Warning> warnings(CourseState state) {
    var warnings = new ArrayList<CallView.Warning>();
    for (Condition condition : WARNINGS) {
      Answer answer = state.question().screening().answerTo(condition);
      if (answer != Answer.NO) {
        boolean isKnown = answer == Answer.YES;
        warnings.add(
            new CallView.Warning(
                isKnown,
                (isKnown ? "" : "Not known: ")
                    + condition.words()
                    + (condition == Condition.MAO_INHIBITOR
                        ? ". Phenylephrine may raise his blood pressure dangerously"
                        : "")));
      }
    }
    warnings.sort(Comparator.comparing(one -> !one.isKnown()));
    return warnings;
  }

  private static Optional<Written<InjectionReported>> injected(CourseState state) {
    return state.file().reports().stream()
        .max(Comparator.comparing(one -> one.fact().injectedAt()));
  }

  private static Optional<Dose> dose(
      CourseState state, Optional<Written<InjectionReported>> injected) {
    return injected
        .flatMap(one -> dose(state, one))
        .or(
            () ->
                state
                    .file()
                    .signedDose()
                    .map(signed -> state.question().ladder().dose(signed.fact().volume())));
  }

  private static Optional<Dose> dose(CourseState state, Written<InjectionReported> report) {
    return state.question().history().injections().stream()
        .filter(one -> one.entry() == report.entry().number())
        .map(Injection::preparation)
        .findFirst()
        .map(
            preparation ->
                new Dose(
                    report.fact().drawn(),
                    preparation,
                    Barrels.of(report.fact().barrel()).orElseThrow()));
  }

  private String doseIs(CourseState state, Optional<Written<InjectionReported>> injected) {
    return injected
        .map(
            one ->
                "Injected "
                    + time.words(one.fact().injectedAt())
                    + ", the last on record: "
                    + one.fact().soft().words())
        .orElse(
            state.file().signedDose().isPresent()
                ? "Signed for him; no injection is on record"
                : "No injection and no signed dose is on record: ask him what he injected");
  }

  private static List<String> lines(EmergencyPlan plan) {
    return List.of(
        "Hospital: " + plan.hospital() + ".", "How he gets there: " + plan.transport() + ".");
  }

  private List<CallView.Line> log(CourseState state) {
    return CallLog.of(state.file()).stream()
        .reduce((earlier, later) -> later)
        .filter(call -> isRecent(call, state.now()))
        .map(call -> log(state.file(), call, state.now()))
        .orElse(List.of());
  }

  /** Whoever takes him over asks for it still after the call was closed. */
  private static boolean isRecent(CallLog call, Instant now) {
    return call.end()
        .filter(end -> !end.entry().recordedAt().plus(Duration.ofDays(1)).isAfter(now))
        .isEmpty();
  }

  /** In the order in which it was written, what was given and measured among it. */
  private List<CallView.Line> log(CourseFile file, CallLog call, Instant now) {
    EntryId opened = call.opened().id();
    return file.entries().stream()
        .filter(entry -> entry.id().equals(opened) || isOf(opened, entry.fact()))
        .map(entry -> line(entry, isTakenBack(file, call, entry), now))
        .toList();
  }

  private static boolean isOf(EntryId call, CourseFact fact) {
    return switch (fact) {
      case CallWritten written -> CallLog.callOf(written.word()).equals(Optional.of(call));
      case RescueWritten written -> written.call().equals(call);
      default -> false;
    };
  }

  /** Whether a later word says that it was wrong: a hospital must not read it as true. */
  private static boolean isTakenBack(CourseFile file, CallLog call, CourseEntry entry) {
    boolean isCorrected =
        file.entries().stream().anyMatch(other -> other.corrects().equals(Optional.of(entry.id())));
    return isCorrected
        || call.words().stream()
            .anyMatch(
                one ->
                    one.fact().word() instanceof Struck struck
                        && struck.began().equals(entry.id()));
  }

  private CallView.Line line(CourseEntry entry, boolean isTakenBack, Instant now) {
    return new CallView.Line(
        (isTakenBack ? "Struck, it does not count: " : "")
            + EntryWords.of(entry.fact(), time)
            + entry.reason().map(words -> ": " + words).orElse(""),
        time.clock(entry.recordedAt(), now) + ", " + names.apply(entry.recordedBy()));
  }

  private List<CallView.Said> struckable(CallLog call, Instant now) {
    Set<EntryId> struck =
        call.words().stream()
            .filter(one -> one.fact().word() instanceof Struck)
            .map(one -> ((Struck) one.fact().word()).began())
            .collect(Collectors.toSet());
    return call.words().stream()
        .filter(one -> one.fact().word() instanceof Began)
        .filter(one -> !struck.contains(one.entry().id()))
        .map(
            one ->
                new CallView.Said(
                    one.entry().id().text(),
                    ((Began) one.fact().word())
                        .at()
                        .map(at -> time.day(at, now))
                        .orElse("nobody can say")))
        .toList();
  }
}
