package rungwise.clinic.room;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact.ObservationNoted;
import rungwise.clinic.course.CourseFact.ObservationStarted;
import rungwise.clinic.course.CourseFact.VialReceived;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.Courses;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.Moment;
import rungwise.clinic.course.NewEntry;
import rungwise.clinic.course.Vial;
import rungwise.clinic.course.VialLabels;
import rungwise.clinic.day.MayInject;
import rungwise.clinic.people.Account;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseReader;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.LabelledDose;
import rungwise.clinic.standing.StandingPorts;
import rungwise.clinic.supply.ClinicVial;
import rungwise.clinic.supply.ClinicVialShelf;
import rungwise.dosing.decision.Clearance;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/** The use cases of an injection in the clinic, from the needle until he is soft again. */
public final class Room {

  private static final String GONE =
      "This observation was ended or changed meanwhile: open the board again.";

  private final StandingPorts ports;
  private final CourseChanges changes;
  private final CourseReader reader;
  private final RoomDays days;
  private final ClinicVialShelf shelf;
  private final HandOver handOver;

  /**
   * The use cases.
   *
   * @param accounts everybody who works here
   */
  public Room(
      StandingPorts ports, RoomDays days, ClinicVialShelf shelf, Supplier<List<Account>> accounts) {
    this.handOver = new HandOver(ports, accounts);
    this.ports = ports;
    this.changes = new CourseChanges(ports);
    this.reader = new CourseReader(ports);
    this.days = days;
    this.shelf = shelf;
  }

  /**
   * Writes down that he was injected. The safety checks are asked as of that time; where they
   * forbid it, nothing is written unless it has happened already.
   */
  public Reading<Long> start(Account actor, CourseId id, StartDraft draft) {
    return changes.change(
        actor,
        By.CLINICIAN,
        id,
        (file, now) -> {
          Reading<DrawnFrom> from = DrawnFrom.of(draft, file, shelf);
          if (from.found().isEmpty()) {
            return new Reading.Refused<>(from.placed());
          }
          DrawnFrom vial = from.orThrow();
          LabelledDose dose = LabelledDose.of(ports, file, vial.label(), file.plan().preparation());
          Reading<ObservationStarted> reading =
              new VisitReading(ports.time(), ports.present(now))
                  .start(draft, file, vial.ownEntry(), dose);
          if (reading.found().isEmpty()) {
            return new Reading.Refused<>(reading.placed());
          }
          ObservationStarted fact = reading.orThrow();
          if (file.hasInjectionAt(fact.injectedAt())) {
            return Reading.refused(
                new Fault(ClinicTime.TIME_FIELD, CourseChanges.INJECTED_THEN_ALREADY));
          }
          List<String> blocks = blocks(drawing(file, fact.injectedAt(), vial), fact);
          if (!blocks.isEmpty() && !draft.alreadyGiven()) {
            return new Reading.Refused<>(
                blocks.stream().map(block -> new Fault(VisitFields.GIVEN, block)).toList());
          }
          var notices = new ArrayList<>(reading.notices());
          blocks.forEach(block -> notices.add("Recorded although: " + block));
          ObservationStarted kept =
              vial.ofClinic()
                  .map(one -> fact.from(drawn(file, fact, one, actor, now)))
                  .orElse(fact);
          return new Reading.Read<>(changes.append(id, kept, actor, now), notices);
        });
  }

  private CourseState drawing(CourseFile file, Instant at, DrawnFrom vial) {
    return vial.ofClinic()
        .map(one -> reader.drawing(file, at, one.id(), one.vial()))
        .orElseGet(() -> reader.drawing(file, at, vial.own()));
  }

  /** Writes into the course what the vial's label says, and that the vial is open. */
  private EntryId drawn(
      CourseFile file, ObservationStarted fact, ClinicVial vial, Account actor, Instant now) {
    Vial opened = reader.openedBy(file, vial.vial(), fact.injectedAt());
    if (!opened.equals(vial.vial())) {
      shelf.amend(new ClinicVial(vial.id(), opened), actor.id(), now, "a dose was drawn from it");
    }
    var received = new VialReceived(opened, Optional.of(vial.id()));
    var known = file.vialOfClinic(vial.id());
    if (known.filter(written -> written.fact().equals(received)).isPresent()) {
      return known.get().entry().id();
    }
    NewEntry entry = NewEntry.of(file.id(), received, actor.id(), now);
    ports
        .courses()
        .append(known.map(written -> entry.correcting(written.entry().id())).orElse(entry));
    return ports.courses().find(file.id()).orElseThrow().entries().getLast().id();
  }

  /** The vials that the clinic keeps for injections here. */
  public List<ClinicVial> vials() {
    return shelf.kept();
  }

  private static List<String> blocks(CourseState state, ObservationStarted fact) {
    var blocks = new ArrayList<String>();
    Clearance clearance = state.mayInject();
    clearance.blocks().stream()
        .map(verdict -> "Not now: " + verdict.rule().wording())
        .forEach(blocks::add);
    unsigned(MayInject.of(state, state.advice(), clearance)).ifPresent(blocks::add);
    state
        .file()
        .signedDose()
        .filter(signed -> !signed.fact().volume().equals(fact.drawn()))
        .ifPresent(
            signed ->
                blocks.add(
                    "Not now: "
                        + fact.drawn()
                        + " is not the signed dose of "
                        + signed.fact().volume()
                        + "."));
    return blocks;
  }

  /** What no safety check says: another dose than the signed one is advised, or none. */
  private static Optional<String> unsigned(MayInject answer) {
    return switch (answer) {
      case MayInject.LowerWaits waits ->
          Optional.of(
              "Not now: the lower dose of "
                  + waits.lower()
                  + " is advised and waits for a signature.");
      case MayInject.Undecided undecided ->
          Optional.of("Not now: no dose is advised, and a prescriber has not decided yet.");
      case MayInject.Yes yes -> Optional.empty();
      case MayInject.NotBefore later -> Optional.empty();
      case MayInject.NotYet later -> Optional.empty();
      case MayInject.NotSigned notSigned -> Optional.empty();
      case MayInject.Stopped stopped -> Optional.empty();
    };
  }

  /** Writes down what was seen at a time of an observation. */
  public Reading<Long> note(Account actor, CourseId id, EntryId observation, NoteDraft draft) {
    return changes.change(
        actor,
        By.CLINICIAN,
        id,
        (file, now) -> {
          var open = open(file, observation);
          if (open.isEmpty()) {
            return Reading.refused(GONE);
          }
          Reading<ObservationNoted> reading =
              new VisitReading(ports.time(), ports.present(now))
                  .note(draft, observation, open.get().fact().injectedAt());
          return reading.found().isEmpty()
              ? new Reading.Refused<>(reading.placed())
              : Reading.of(changes.append(id, reading.orThrow(), actor, now));
        });
  }

  /** Ends an observation: he is soft again, or has left before. The report is written with it. */
  public Reading<Long> end(Account actor, CourseId id, EntryId observation, EndDraft draft) {
    return changes.change(
        actor,
        By.CLINICIAN,
        id,
        (file, now) -> {
          var open = open(file, observation);
          if (open.isEmpty()) {
            return Reading.refused(GONE);
          }
          Reading<VisitReading.Ended> reading =
              new VisitReading(ports.time(), ports.present(now)).end(draft, open.get(), file);
          var faults = new ArrayList<>(reading.placed());
          CourseChanges.textFault(draft.note(), VisitFields.NOTE).ifPresent(faults::add);
          if (!faults.isEmpty()) {
            return new Reading.Refused<>(faults);
          }
          VisitReading.Ended ended = reading.orThrow();
          changes.append(
              id,
              new ObservationNoted(
                  observation,
                  ended.isSoft() ? Moment.FULLY_SOFT : Moment.CHECKED,
                  ended.at(),
                  Optional.of(ended.report().grade()),
                  ended.after()),
              actor,
              now);
          long number = changes.append(id, ended.report(), actor, now, draft.note()).orThrow();
          return new Reading.Read<>(number, reading.notices());
        });
  }

  private static Optional<CourseFile.Written<ObservationStarted>> open(
      CourseFile file, EntryId observation) {
    return file.observing().stream()
        .filter(written -> written.entry().id().equals(observation))
        .findFirst();
  }

  /** Everybody under observation now, the one injected first on top. */
  public List<Observed> board() {
    return boardNow().found().stream().sorted(Comparator.comparing(Observed::injectedAt)).toList();
  }

  private Courses.Made<Observed> boardNow() {
    return ports.courses().each(ports.courses().underObservation(), this::observed);
  }

  /**
   * How many men's records cannot be read of whom it is not known whether they are under
   * observation, or left while it was firm.
   */
  public int notKnown() {
    return (int)
        Stream.concat(boardNow().unreadable().stream(), handOver.unreadable().stream())
            .distinct()
            .count();
  }

  /** The injections of one man that are under observation now, the first one on top. */
  public List<Observed> observed(CourseFile file) {
    Instant now = changes.now();
    return file.observing().stream()
        .map(
            written ->
                Observed.of(
                    file, written, labels(file).injected(written.fact()), ports.present(now)))
        .sorted(Comparator.comparing(Observed::injectedAt))
        .toList();
  }

  private VialLabels labels(CourseFile file) {
    return new VialLabels(file, id -> ports.preparations().apply(id).orElseThrow());
  }

  /** Ends the day of the room, unless somebody is still under observation. */
  public Reading<LocalDate> closeDay(Account actor) {
    if (!By.CLINICIAN.includes(actor)) {
      return Reading.refused(By.CLINICIAN.refusal());
    }
    return ports
        .transactions()
        .inTransaction(
            () -> {
              List<Observed> board = board();
              if (!board.isEmpty()) {
                String names = String.join(", ", board.stream().map(Observed::fullName).toList());
                return Reading.refused(
                    "The day cannot be closed: under observation still: " + names + ".");
              }
              List<CourseState> left = handOver.left();
              if (!left.isEmpty()) {
                return Reading.refused(
                    "The day cannot be closed: left while it was firm, and nobody knows how it"
                        + " ended: "
                        + names(left)
                        + ". Write down how it ended, or hand him by name to whoever is on call.");
              }
              if (notKnown() > 0) {
                return Reading.refused(
                    "The day cannot be closed: a record that cannot be read is of a man who may be"
                        + " under observation still. Look after him by what he says, and have a"
                        + " sound record put back.");
              }
              LocalDate today = LocalDate.ofInstant(changes.now(), ports.time().zone());
              if (days.lastClosed().filter(today::equals).isPresent()) {
                return Reading.refused("The day is closed already.");
              }
              days.close(today, actor.id(), changes.now());
              return Reading.of(today);
            });
  }

  private static String names(List<CourseState> left) {
    return String.join(
        ", ", left.stream().map(state -> state.file().patient().fullName()).toList());
  }

  /** The day that was closed last, if one was. */
  public Optional<LocalDate> lastClosed() {
    return days.lastClosed();
  }

  /** The instant that the room has now. */
  public Instant now() {
    return changes.now();
  }

  /** Those who left while it was firm. */
  public HandOver handOver() {
    return handOver;
  }

  /** The wall clock of the room. */
  public ClinicTime time() {
    return ports.time();
  }
}
