package rungwise.clinic.room;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact.HandedOver;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.Courses;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.day.OpenErection;
import rungwise.clinic.day.OpenErection.Way;
import rungwise.clinic.day.OpenErections;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseReader;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.StandingPorts;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/** Men who left the clinic while it was firm, and to whom they are handed. */
public final class HandOver {

  private static final int MOST_TRIES = 99;

  private final StandingPorts ports;
  private final CourseChanges changes;
  private final CourseReader reader;
  private final Supplier<List<Account>> accounts;

  /**
   * The use cases.
   *
   * @param accounts everybody who works here
   */
  public HandOver(StandingPorts ports, Supplier<List<Account>> accounts) {
    this.ports = ports;
    this.changes = new CourseChanges(ports);
    this.reader = new CourseReader(ports);
    this.accounts = accounts;
  }

  /** Courses of those who left and whom nobody on call has yet, whoever was injected first. */
  public List<CourseState> left() {
    return leftNow().found();
  }

  /** Courses of men who may have left so, and whose record cannot be read. */
  List<CourseId> unreadable() {
    return leftNow().unreadable();
  }

  private Courses.Made<CourseState> leftNow() {
    Instant now = changes.now();
    return ports
        .courses()
        .each(
            ports.courses().leftWhileFirm(),
            file ->
                Stream.of(reader.state(file, now))
                    .filter(state -> erection(state).isPresent())
                    .toList());
  }

  private static Optional<OpenErection> erection(CourseState state) {
    return OpenErections.of(state).stream().filter(OpenErection::isLeft).findFirst();
  }

  /** Who may be called at night: everybody on call and every prescriber, but the one who asks. */
  public List<Account> onCall(Account actor) {
    return accounts.get().stream()
        .filter(one -> one.may(Role.ON_CALL_CLINICIAN) || one.may(Role.PRESCRIBER))
        .filter(one -> !one.id().equals(actor.id()))
        .toList();
  }

  private static String notTries(String typed) {
    return "\""
        + typed
        + "\" is not a number of tries: try to reach him at least once, and write how often, such"
        + " as 2.";
  }

  /** Hands a man to somebody on call, by name, with what was tried so far. */
  public Reading<Long> handOver(Account actor, CourseId id, HandOverDraft draft) {
    return changes.change(
        actor, By.CLINICIAN, id, (file, now) -> handOver(actor, file, now, draft));
  }

  private Reading<Long> handOver(Account actor, CourseFile file, Instant now, HandOverDraft draft) {
    Optional<EntryId> report = erection(reader.state(file, now)).flatMap(HandOver::reportOf);
    if (report.isEmpty()) {
      return Reading.refused(
          "How it ended is known by now, or he was handed over: open the board again.");
    }
    var faults = new ArrayList<Fault>();
    Optional<Account> to =
        onCall(actor).stream().filter(one -> one.id().text().equals(draft.to())).findFirst();
    if (to.isEmpty()) {
      faults.add(new Fault(VisitFields.TO, "Choose by name who calls him from now on."));
    }
    Optional<Integer> tries = tries(draft.tries());
    if (tries.isEmpty()) {
      faults.add(new Fault(VisitFields.TRIES, notTries(draft.tries())));
    }
    Reading<Instant> last = ports.time().read(draft.date(), draft.time(), draft.occurrence());
    faults.addAll(last.placed());
    if (last.found().filter(ports.present(now)::isStillToCome).isPresent()) {
      faults.add(
          new Fault(
              ClinicTime.TIME_FIELD,
              "The last try lies in the future: write when he was tried last."));
    }
    CourseChanges.textFault(draft.words(), VisitFields.WORDS).ifPresent(faults::add);
    if (draft.words().isBlank()) {
      faults.add(
          new Fault(
              VisitFields.WORDS, "Write who was tried and what came of it: it stays on record."));
    }
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    var fact =
        new HandedOver(report.get(), to.orElseThrow().id(), tries.orElseThrow(), last.orThrow());
    return changes.append(file.id(), fact, actor, now, draft.words());
  }

  private static Optional<EntryId> reportOf(OpenErection erection) {
    return erection.way() instanceof Way.Correct(EntryId report)
        ? Optional.of(report)
        : Optional.empty();
  }

  private static Optional<Integer> tries(String typed) {
    String text = typed.strip();
    return text.matches("[0-9]{1,2}")
        ? Optional.of(Integer.parseInt(text)).filter(one -> one >= 1 && one <= MOST_TRIES)
        : Optional.empty();
  }
}
