package rungwise.clinic.titration;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.beside.JoinLog;
import rungwise.clinic.coded.ChangeReason;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.PlanChosen;
import rungwise.clinic.course.CourseFact.ReportWithdrawn;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.Patient;
import rungwise.clinic.course.Plan;
import rungwise.clinic.people.Account;
import rungwise.clinic.protocols.SignedProtocol;
import rungwise.clinic.sheet.EntryWords;
import rungwise.clinic.soundness.UnreadableRecord;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseReader;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.LifeLog;
import rungwise.clinic.standing.Reach;
import rungwise.clinic.standing.StandingPorts;
import rungwise.dosing.choice.ByRule;
import rungwise.dosing.choice.Choice;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.KeptAdvice;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/**
 * The use cases of a course that runs: reports, advice, signatures and what a prescriber writes.
 * Each change reads the record and appends to it in one transaction.
 */
public final class Titration {

  /** The fields of the plan. */
  public static final String PLAN_PREPARATION = "preparation";

  public static final String PLAN_BARREL = "barrel";
  public static final String PLAN_PROTOCOL = "protocol";

  private static final String STALE =
      "The record has changed since this page was opened, so nothing was signed. Read what is new"
          + " and sign again. New: ";

  private final StandingPorts ports;
  private final CourseReader reader;
  private final CourseChanges changes;
  private final Reports reports;

  public Titration(StandingPorts ports) {
    this.ports = ports;
    this.changes = new CourseChanges(ports);
    this.reader = new CourseReader(ports);
    this.reports = new Reports(ports);
  }

  /** Whom a recall or a version of a protocol would reach. */
  public Reach reach() {
    return new Reach(ports, reader);
  }

  /**
   * A course as it is now.
   *
   * @throws UnreadableRecord if what is left of its record makes no course
   */
  public Optional<CourseState> find(CourseId id) {
    return ports.transactions().reading(() -> ports.courses().find(id).map(this::state));
  }

  private CourseState state(CourseFile file) {
    return reader.state(file, changes.now());
  }

  /**
   * Every course as it is now, the one opened last first.
   *
   * @param unreadable the courses of which too little can be read
   */
  public record Everybody(List<CourseState> courses, List<CourseId> unreadable) {
    public Everybody {
      courses = List.copyOf(courses);
      unreadable = List.copyOf(unreadable);
    }
  }

  public Everybody everybody() {
    return ports.transactions().reading(this::everybodyNow);
  }

  private Everybody everybodyNow() {
    var courses = new ArrayList<CourseState>();
    var unreadable = new ArrayList<CourseId>();
    for (CourseId id : ports.courses().all()) {
      try {
        find(id).ifPresent(courses::add);
      } catch (UnreadableRecord e) {
        unreadable.add(id);
      }
    }
    return new Everybody(courses, unreadable);
  }

  /** Every course that can be read, as it is now, the one opened last first. */
  public List<CourseState> all() {
    return everybody().courses();
  }

  /**
   * The courses that run on each protocol now, by its key, the one opened last first. A course runs
   * on the protocol of its last plan alone. One that has ended runs no more.
   */
  public Map<String, List<CourseFile>> runningOn() {
    return ports
        .courses()
        .each(
            ports.courses().all(),
            file -> LifeLog.of(file).isEnded() ? List.<CourseFile>of() : List.of(file))
        .found()
        .stream()
        .collect(
            Collectors.groupingBy(
                file -> file.plan().protocol() + " version " + file.plan().protocolVersion()));
  }

  /** Other men with a course who could be taken for this one. */
  public List<CourseFile> namesakes(CourseFile file) {
    Patient patient = file.patient();
    return Stream.concat(
            ports.courses().namedLike(patient).stream(), ports.courses().alike(patient).stream())
        .distinct()
        .filter(id -> !id.equals(file.id()))
        .flatMap(id -> ports.courses().readable(id).stream())
        .toList();
  }

  /** Records what a man reported, or corrects an earlier report. */
  public Reading<Long> report(Account actor, CourseId id, ReportDraft draft) {
    return reports.enter(actor, id, draft).reading();
  }

  /** The use cases about reports, which answer by the parts of the form. */
  public Reports reports() {
    return reports;
  }

  private static Optional<CourseEntry> reportOf(CourseFile file, EntryId id) {
    return file.reports().stream()
        .map(CourseFile.Written::entry)
        .filter(entry -> entry.id().equals(id))
        .findFirst();
  }

  /** Takes a report out of what counts, for example one entered for the wrong man. */
  public Reading<Long> withdraw(Account actor, CourseId id, EntryId report, String reason) {
    return changes.change(
        actor,
        By.CLINICIAN,
        id,
        (file, now) -> {
          if (reportOf(file, report).isEmpty()) {
            return Reading.refused("The report was corrected meanwhile: open the course again.");
          }
          Reading<Long> outcome = withdrawEntry(id, report, actor, now, reason);
          if (outcome.found().isPresent()) {
            reportOf(file, report)
                .flatMap(entry -> ((InjectionReported) entry.fact()).observation())
                .ifPresent(
                    observation -> withdrawEntry(id, observation, actor, now, reason).orThrow());
          }
          return outcome;
        });
  }

  private String newSince(CourseFile file, long basis) {
    return file.entries().stream()
        .filter(entry -> entry.number() > basis)
        .map(entry -> EntryWords.of(entry.fact(), ports.time()))
        .collect(Collectors.joining("; "));
  }

  private Reading<Long> withdrawEntry(
      CourseId id, EntryId entry, Account actor, Instant now, String reason) {
    return changes.appendWithReason(
        id, new ReportWithdrawn(), actor, now, Optional.of(entry), reason);
  }

  /** Signs a dose. The guards are asked again, on the record as it is at that moment. */
  public Reading<Long> sign(Account actor, CourseId id, SignDraft draft) {
    Optional<Volume> chosen = Volume.chosen(draft.volumeMicrolitres());
    if (chosen.isEmpty()) {
      return Reading.refused("No syringe draws such a volume: choose one of the steps.");
    }
    Volume volume = chosen.get();
    return changes.change(
        actor,
        By.PRESCRIBER,
        id,
        (file, now) -> {
          if (file.basis() != draft.basis()) {
            return Reading.refused(STALE + newSince(file, draft.basis()));
          }
          CourseState state = reader.state(file, now);
          Advice advice = state.advice();
          Optional<ChangeReason> changed = SigningCheck.changeReason(draft.changed());
          var overrides = new Overrides(draft, state, volume, ports.time());
          List<Fault> faults = SigningCheck.faults(draft, state, volume, changed, overrides);
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
                  overrides.found(),
                  changed,
                  JoinLog.basis(file, ports.courses()::find),
                  now,
                  KeptAdvice.of(advice),
                  SigningCheck.nextStep(draft, state, volume),
                  SigningCheck.accepted(draft).found().orElse(Optional.empty()));
          return changes.append(id, signed, actor, now, draft.reason());
        });
  }

  /**
   * Chooses another preparation, syringe or protocol. The dose in force ends: its mark and its
   * schedule were those of the plan before.
   *
   * @param inUse whether a version of a preparation may be planned now
   */
  public Reading<Long> choosePlan(
      Account actor, CourseId id, Plan plan, Predicate<PreparationId> inUse, String reason) {
    return changes.change(
        actor,
        By.PRESCRIBER,
        id,
        (file, now) -> {
          List<Fault> faults = planFaults(file.plan(), plan, inUse, reason);
          if (faults.isEmpty()) {
            faults.addAll(reader.ladderOf(plan, file).placed());
          }
          return faults.isEmpty()
              ? changes.append(id, new PlanChosen(plan), actor, now, reason)
              : new Reading.Refused<>(faults);
        });
  }

  private List<Fault> planFaults(
      Plan old, Plan plan, Predicate<PreparationId> inUse, String reason) {
    boolean isOther = !plan.preparation().equals(old.preparation());
    var faults = new ArrayList<Fault>();
    if (Barrels.of(plan.barrel()).isEmpty()) {
      faults.add(new Fault(PLAN_BARREL, "There is no such syringe: choose one of the list."));
    }
    if (isOther && !inUse.test(plan.preparation())) {
      faults.add(new Fault(PLAN_PREPARATION, "Choose the preparation from the clinic's list."));
    }
    ports
        .protocols()
        .find(plan.protocol(), plan.protocolVersion())
        .map(this::cannotBegin)
        .orElseGet(() -> Optional.of("Choose a protocol that the clinic has signed."))
        .map(text -> new Fault(PLAN_PROTOCOL, text))
        .ifPresent(faults::add);
    if (plan.equals(old)) {
      faults.add(Fault.ofForm("That is the plan already: nothing was changed."));
    }
    if (isOther && reason.isBlank()) {
      faults.add(
          new Fault(
              CourseChanges.REASON, "Write why the preparation is changed: it stays on record."));
    }
    CourseChanges.textFault(reason, CourseChanges.REASON).ifPresent(faults::add);
    return faults;
  }

  private Optional<String> cannotBegin(SignedProtocol signed) {
    if (signed.isWaiting()) {
      return Optional.of(
          "This protocol waits to be signed anew: choose its next version, or let the programme"
              + " lead sign one.");
    }
    Protocol protocol = signed.protocol();
    return protocol
        .more()
        .from()
        .filter(from -> !protocol.more().holdsOn(ports.today()))
        .map(from -> "This protocol holds from " + ClinicTime.words(from) + ".");
  }

  /** Asks a stored decision again. */
  public Optional<Replay> replay(CourseId id, EntryId signature) {
    return ports
        .courses()
        .find(id)
        .flatMap(
            file ->
                signed(file)
                    .filter(written -> written.entry().id().equals(signature))
                    .map(written -> replay(file, written))
                    .findFirst());
  }

  /** Asks every stored decision of a course again. */
  public List<Replay> replays(CourseFile file) {
    return signed(file).map(written -> replay(file, written)).toList();
  }

  private static Stream<Written<DoseSigned>> signed(CourseFile file) {
    return file.inForce(DoseSigned.class).stream();
  }

  private Replay replay(CourseFile file, Written<DoseSigned> written) {
    DoseSigned signed = written.fact();
    // A decision that does not say how it was chosen was chosen by rule.
    Choice choice =
        signed.advice().choice().flatMap(ports.populations()::choiceOf).orElseGet(ByRule::new);
    CourseState then = reader.asOf(file, signed.basis(), signed.askedAt(), choice);
    return new Replay(written.entry().number(), signed.advice(), then.advice());
  }
}
