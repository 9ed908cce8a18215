package rungwise.clinic.called;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.CallWritten;
import rungwise.clinic.course.CourseFact.CallWritten.Began;
import rungwise.clinic.course.CourseFact.CallWritten.HandedTo;
import rungwise.clinic.course.CourseFact.CallWritten.Opened;
import rungwise.clinic.course.CourseFact.CallWritten.Soft;
import rungwise.clinic.course.CourseFact.CallWritten.Struck;
import rungwise.clinic.course.CourseFact.EmergencyReviewed;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.EntryId;
import rungwise.dosing.urgent.Elapsed;
import rungwise.dosing.urgent.Start;
import rungwise.dosing.urgent.Timeline;

/**
 * One call about an erection that does not go down: everything that was written in it, in the order
 * of the entries.
 *
 * @param opened the entry that opened it
 * @param injections the last injection that was on record when it was opened, and any after it, as
 *     long as nobody has said how they ended
 * @param rescue what was given and measured in it
 */
public record CallLog(
    CourseEntry opened,
    List<Written<CallWritten>> words,
    List<Start.OfInjection> injections,
    RescueRecord rescue) {

  public CallLog {
    words = List.copyOf(words);
    injections = List.copyOf(injections);
  }

  /** Every call of a course, in the order in which they were opened. */
  public static List<CallLog> of(CourseFile file) {
    List<Written<CallWritten>> all = file.everWritten(CallWritten.class);
    RescueRecord rescue = RescueRecord.of(file);
    return all.stream()
        .filter(one -> one.fact().word() instanceof Opened)
        .map(
            opened ->
                new CallLog(
                    opened.entry(),
                    in(opened.entry().id(), all),
                    injections(file, opened.entry().number()),
                    rescue.in(opened.entry().id())))
        .toList();
  }

  /** The call that is open. */
  public static Optional<CallLog> open(CourseFile file) {
    return of(file).stream().filter(CallLog::isOpen).findFirst();
  }

  /**
   * The calls that hold every dose: one that is open, and one that ended as what was or may have
   * been an emergency, or in which a rescue was given, until a prescriber has reviewed it.
   */
  public static List<CallLog> holding(CourseFile file) {
    long reviewed =
        file.inForce(EmergencyReviewed.class).stream()
            .mapToLong(written -> written.entry().number())
            .max()
            .orElse(0);
    return of(file).stream()
        .filter(call -> call.isOpen() || (call.endedAsEmergency() && call.last() > reviewed))
        .toList();
  }

  private static List<Written<CallWritten>> in(EntryId call, List<Written<CallWritten>> all) {
    return all.stream().filter(one -> callOf(one.fact().word()).equals(Optional.of(call))).toList();
  }

  /** The call in which something was written; empty of what opens one. */
  public static Optional<EntryId> callOf(CallWritten.Word word) {
    return switch (word) {
      case Opened opened -> Optional.empty();
      case Began began -> Optional.of(began.call());
      case Struck struck -> Optional.of(struck.call());
      case CallWritten.Firm firm -> Optional.of(firm.call());
      case CallWritten.Done done -> Optional.of(done.call());
      case CallWritten.HandedOn on -> Optional.of(on.call());
      case Soft soft -> Optional.of(soft.call());
      case HandedTo to -> Optional.of(to.call());
    };
  }

  /** The last injection on record, where nobody has said how it ended. */
  public static List<Start.OfInjection> injections(CourseFile file) {
    return injections(file, Long.MAX_VALUE);
  }

  /** What is reported after a call was opened takes no injection out of it. */
  private static List<Start.OfInjection> injections(CourseFile file, long opened) {
    Stream<Start.OfInjection> reported =
        file.reports().stream()
            .filter(one -> !one.fact().soft().hasKnownEnd())
            .map(one -> of(one.fact().injectedAt(), one.entry()));
    Stream<Start.OfInjection> observed =
        file.observing().stream().map(one -> of(one.fact().injectedAt(), one.entry()));
    Optional<Instant> last =
        file.reports().stream()
            .filter(one -> file.entry(file.rootOf(one.entry())).number() < opened)
            .map(one -> one.fact().injectedAt())
            .max(Comparator.naturalOrder());
    return Stream.concat(reported, observed)
        .filter(one -> last.filter(at -> at.isAfter(one.earliest())).isEmpty())
        .toList();
  }

  private static Start.OfInjection of(Instant at, CourseEntry entry) {
    return new Start.OfInjection(at, at, entry.id().text());
  }

  public boolean isOpen() {
    return end().isEmpty();
  }

  /** How it ended. */
  public Optional<Written<CallWritten>> end() {
    return words.stream()
        .filter(one -> one.fact().word() instanceof Soft || one.fact().word() instanceof HandedTo)
        .findFirst();
  }

  /**
   * Every statement of when it began, those that were struck too. Without any, the last injection
   * on record, where nobody has said how that ended.
   */
  public Timeline timeline() {
    Map<EntryId, String> struck =
        words.stream()
            .filter(one -> one.fact().word() instanceof Struck)
            .collect(
                Collectors.toMap(
                    one -> ((Struck) one.fact().word()).began(),
                    one -> one.entry().reason().orElse("not said"),
                    (first, second) -> first));
    List<Start> said =
        words.stream()
            .flatMap(one -> start(one, id -> Optional.ofNullable(struck.get(id))).stream())
            .toList();
    var starts = new ArrayList<Start>(injections);
    starts.addAll(said);
    return new Timeline(starts);
  }

  private static Optional<Start> start(
      Written<CallWritten> written, Function<EntryId, Optional<String>> struck) {
    if (!(written.fact().word() instanceof Began began)) {
      return Optional.empty();
    }
    Start said =
        began
            .at()
            .<Start>map(at -> Start.Said.at(at, began.by()))
            .orElseGet(() -> new Start.NotKnown(Optional.empty()));
    return Optional.of(
        struck
            .apply(written.entry().id())
            .<Start>map(reason -> new Start.Struck(said, reason))
            .orElse(said));
  }

  /** How long it has lasted at an instant, or did until it was soft. */
  public Elapsed elapsed(Instant now) {
    return timeline().elapsed(softAt().orElse(now));
  }

  private Optional<Instant> softAt() {
    return end()
        .filter(one -> one.fact().word() instanceof Soft)
        .map(one -> ((Soft) one.fact().word()).at());
  }

  /** When it began, by the earliest statement; empty if anybody asked could not say. */
  public Optional<Instant> began() {
    Timeline timeline = timeline();
    return timeline.starts().stream().anyMatch(Start::isOpenToThePast)
        ? Optional.empty()
        : timeline.earliestCredible();
  }

  private boolean endedAsEmergency() {
    return end().isPresent() && (rescue.lastGiven() > 0 || endedLong());
  }

  /** The number of the last entry that says that it was an emergency. */
  private long last() {
    return Math.max(end().orElseThrow().entry().number(), rescue.lastGiven());
  }

  private boolean endedLong() {
    return softAt().map(at -> everTimed().elapsed(at).isEmergency()).orElse(true);
  }

  /**
   * The same timeline with every time that a clinician struck: it ends a call as an emergency
   * still, as nobody but a prescriber lifts what was said. That nobody knew is over once somebody
   * knows.
   */
  private Timeline everTimed() {
    return new Timeline(
        timeline().starts().stream()
            .map(one -> one instanceof Start.Struck(Start.Said was, String why) ? was : one)
            .toList());
  }
}
