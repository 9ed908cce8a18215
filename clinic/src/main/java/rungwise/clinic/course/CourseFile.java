package rungwise.clinic.course;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rungwise.clinic.course.CourseFact.BaselineRecorded;
import rungwise.clinic.course.CourseFact.CourseOpened;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.ExaminationRecorded;
import rungwise.clinic.course.CourseFact.HandedOver;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.ObservationNoted;
import rungwise.clinic.course.CourseFact.ObservationStarted;
import rungwise.clinic.course.CourseFact.PlanChosen;
import rungwise.clinic.course.CourseFact.ReadinessRecorded;
import rungwise.clinic.course.CourseFact.Screened;
import rungwise.clinic.course.CourseFact.SheetMade;
import rungwise.clinic.course.CourseFact.VialReceived;
import rungwise.clinic.soundness.Acknowledgement;
import rungwise.clinic.soundness.Flaw;
import rungwise.clinic.words.SheetCode;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.screening.Screening;

/**
 * All entries of one course, and what they say together. An entry that a later one corrects stays
 * in the file and no longer counts.
 */
public final class CourseFile {

  private final CourseId id;
  private final List<CourseEntry> entries;
  private final Map<EntryId, CourseEntry> byId;
  private final List<Flaw> flaws;
  private final long acknowledged;
  private final List<CourseEntry> inForce;

  /** What is in force, by its kind: a course is read once and asked about often. */
  private final Map<Class<? extends CourseFact>, List<Written<?>>> facts;

  private final Answers answers;

  /** Every vial, once somebody has asked for them. */
  private @Nullable List<Written<VialReceived>> vials;

  /**
   * A course.
   *
   * @param entries in the order of their numbers; the first opens the course
   * @param flaws what of them, or of what they rest on, is not as it was written; empty if nothing
   */
  public CourseFile(CourseId id, List<CourseEntry> entries, List<Flaw> flaws) {
    this.id = id;
    List<Acknowledgement> known = CourseEntry.acknowledgements(entries);
    this.flaws = flaws.stream().filter(one -> !Acknowledgement.isComplete(known, one)).toList();
    this.acknowledged = Acknowledgement.lastOf(known);
    this.entries = List.copyOf(entries);
    if (entries.isEmpty() || !(entries.getFirst().fact() instanceof CourseOpened)) {
      throw new IllegalArgumentException("bug: course " + id + " was never opened");
    }
    byId = new HashMap<>();
    entries.forEach(entry -> byId.putIfAbsent(entry.id(), entry));
    inForce = CourseEntry.counting(entries, acknowledged);
    facts = new HashMap<>();
    for (CourseEntry entry : inForce) {
      facts
          .computeIfAbsent(entry.fact().getClass(), kind -> new ArrayList<>())
          .add(new Written<>(entry, entry.fact()));
    }
    answers = new Answers(inForce);
  }

  public CourseId id() {
    return id;
  }

  /** All entries, in the order of their numbers. */
  public List<CourseEntry> entries() {
    return entries;
  }

  /** A course of which everything is as it was written. */
  public CourseFile(CourseId id, List<CourseEntry> entries) {
    this(id, entries, List.of());
  }

  /** What of it is not as it was written; empty if nothing. */
  public List<Flaw> flaws() {
    return flaws;
  }

  /**
   * The entry by which two people acknowledged the last fault; what is before it proves nothing.
   */
  public Optional<CourseEntry> acknowledged() {
    return entries.stream().filter(entry -> entry.number() == acknowledged).findFirst();
  }

  /** Whether everything in it is as it was written, or was acknowledged. */
  public boolean isSound() {
    return flaws.isEmpty();
  }

  /** One fact with the entry that carries it. */
  public record Written<F extends CourseFact>(CourseEntry entry, F fact) {}

  /** The number of the last entry: what advice has read up to. */
  public long basis() {
    return entries.getLast().number();
  }

  /** The file as it was when that entry was the last. */
  public CourseFile upTo(long number) {
    return new CourseFile(
        id, entries.stream().filter(entry -> entry.number() <= number).toList(), flaws);
  }

  /** The entries of one kind that no later entry corrects. */
  @SuppressWarnings("unchecked") // Each kind is a record, so its key holds nothing else.
  public <F extends CourseFact> List<Written<F>> inForce(Class<F> kind) {
    return Collections.unmodifiableList(
        (List<Written<F>>) (List<?>) facts.getOrDefault(kind, List.of()));
  }

  /** The entries of one kind, those too that a later one corrects. */
  public <F extends CourseFact> List<Written<F>> everWritten(Class<F> kind) {
    var found = new ArrayList<Written<F>>();
    for (CourseEntry entry : entries) {
      if (kind.isInstance(entry.fact())) {
        found.add(new Written<>(entry, kind.cast(entry.fact())));
      }
    }
    return Collections.unmodifiableList(found);
  }

  private <F extends CourseFact> Optional<Written<F>> lastOf(Class<F> kind) {
    return last(inForce(kind));
  }

  private static <T> Optional<T> last(List<T> some) {
    return some.isEmpty() ? Optional.empty() : Optional.of(some.getLast());
  }

  public CourseOpened opened() {
    return lastOf(CourseOpened.class).orElseThrow().fact();
  }

  /** Who he was said to be in the course of time, the one that counts last. */
  public List<Written<CourseOpened>> identities() {
    List<Written<CourseOpened>> now = inForce(CourseOpened.class);
    return now.getLast().entry().corrects().isEmpty() ? now : everWritten(CourseOpened.class);
  }

  public Patient patient() {
    return opened().patient();
  }

  /** The last screening; empty if nobody has asked. */
  public Optional<Written<Screened>> screened() {
    return lastOf(Screened.class);
  }

  /** What he answered in the course of time, and what of it counts. */
  public Answers answers() {
    return answers;
  }

  /** What of his answers and examinations counts. */
  public Screening screening() {
    return answers().counting();
  }

  /** The last examination. */
  public Optional<Written<ExaminationRecorded>> examined() {
    return lastOf(ExaminationRecorded.class);
  }

  public Optional<Baseline> baseline() {
    return lastOf(BaselineRecorded.class).map(written -> written.fact().baseline());
  }

  /**
   * Every vial, as its last addendum says, in the order in which they were dispensed; those of the
   * clinic's too, from which a dose for him was drawn.
   */
  public List<Written<VialReceived>> vials() {
    List<Written<VialReceived>> known = vials;
    if (known == null) {
      known =
          inForce(VialReceived.class).stream()
              .sorted(Comparator.comparingLong(written -> beganAt(written.entry())))
              .toList();
      vials = known;
    }
    return known;
  }

  /** Every vial that was dispensed to him, in that order; none of the clinic's own. */
  public List<Written<VialReceived>> ownVials() {
    return vials().stream().filter(written -> written.fact().ofClinic().isEmpty()).toList();
  }

  /** The vial in use: the one dispensed to him last. */
  public Optional<Written<VialReceived>> vial() {
    return last(ownVials());
  }

  /** The vial of the clinic's as a dose for him was last drawn from it. */
  public Optional<Written<VialReceived>> vialOfClinic(EntryId vial) {
    return vials().stream()
        .filter(written -> written.fact().ofClinic().equals(Optional.of(vial)))
        .reduce((earlier, later) -> later);
  }

  /** The vial of an entry, as its last addendum says. */
  public Optional<Written<VialReceived>> vialOf(EntryId vial) {
    EntryId root = rootOf(entry(vial));
    return vials().stream()
        .filter(written -> rootOf(written.entry()).equals(root))
        .reduce((earlier, later) -> later);
  }

  /** The number of the entry that a chain of addenda began with. */
  public long beganAt(CourseEntry entry) {
    return entry(rootOf(entry)).number();
  }

  /** The entry that a chain of addenda began with: what is corrected stays the same thing. */
  public EntryId rootOf(CourseEntry entry) {
    CourseEntry root = entry;
    Optional<EntryId> earlier = root.corrects();
    while (earlier.isPresent()) {
      root = entry(earlier.get());
      earlier = root.corrects();
    }
    return root.id();
  }

  /**
   * The entry of an id.
   *
   * @throws java.util.NoSuchElementException if it is not in this course
   */
  public CourseEntry entry(EntryId entry) {
    return Optional.ofNullable(byId.get(entry)).orElseThrow();
  }

  /** Whether an injection at that very instant is on record or under observation. */
  public boolean hasInjectionAt(Instant at) {
    return Stream.concat(
            reports().stream().map(written -> written.fact().injectedAt()),
            observing().stream().map(written -> written.fact().injectedAt()))
        .anyMatch(at::equals);
  }

  /** Observations of which no report says how they ended, in the order of their entries. */
  public List<Written<ObservationStarted>> observing() {
    Set<EntryId> ended =
        reports().stream()
            .flatMap(written -> written.fact().observation().stream())
            .collect(Collectors.toSet());
    return inForce(ObservationStarted.class).stream()
        .filter(written -> !ended.contains(written.entry().id()))
        .toList();
  }

  /** What was seen during an observation, in the order of time. */
  public List<Written<ObservationNoted>> notesOf(EntryId observation) {
    return inForce(ObservationNoted.class).stream()
        .filter(written -> written.fact().observation().equals(observation))
        .sorted(Comparator.comparing(written -> written.fact().at()))
        .toList();
  }

  /**
   * The plan in force.
   *
   * @throws java.util.NoSuchElementException if none was ever chosen
   */
  public Plan plan() {
    return lastOf(PlanChosen.class).orElseThrow().fact().plan();
  }

  /** The plan that was in force at an instant; the first one for an instant before it. */
  public Plan planAt(Instant at) {
    List<Written<PlanChosen>> all = inForce(PlanChosen.class);
    Written<PlanChosen> then = all.getFirst();
    for (Written<PlanChosen> one : all) {
      then = one.entry().minute().isAfter(at) ? then : one;
    }
    return then.fact().plan();
  }

  /** Every plan that was ever chosen, in the order of their entries. */
  public List<Plan> plans() {
    return inForce(PlanChosen.class).stream().map(written -> written.fact().plan()).toList();
  }

  /** The emergency plan that was agreed last. */
  public Optional<EmergencyPlan> emergencyPlan() {
    return inForce(ReadinessRecorded.class).stream()
        .flatMap(written -> written.fact().plan().stream())
        .reduce((earlier, later) -> later);
  }

  /** The sheet of a code that was made for him, whether it is current or not. */
  public Optional<Written<SheetMade>> sheet(SheetCode code) {
    return everWritten(SheetMade.class).stream()
        .filter(written -> written.fact().sheet().code().equals(code))
        .findFirst();
  }

  /** What had been shown, taught or agreed by a day, whether it has run out since or not. */
  public Set<Readiness> recordedBefore(LocalDate day) {
    return inForce(ReadinessRecorded.class).stream()
        .map(Written::fact)
        .filter(fact -> !fact.day().isAfter(day))
        .map(ReadinessRecorded::item)
        .collect(Collectors.toUnmodifiableSet());
  }

  /** What had counted for home use, and has run out by a day under what a protocol asks for. */
  public Set<Readiness> expired(Protocol.Home asked, LocalDate day) {
    Set<Readiness> counting = readiness(asked, day);
    return inForce(ReadinessRecorded.class).stream()
        .map(Written::fact)
        .filter(fact -> fact.expired(asked, day).isPresent() && fact.unanswered(asked).isEmpty())
        .map(ReadinessRecorded::item)
        .filter(item -> !counting.contains(item))
        .collect(Collectors.toUnmodifiableSet());
  }

  /** What counts for home use on a day, under what a protocol asks for. */
  public Set<Readiness> readiness(Protocol.Home asked, LocalDate day) {
    return inForce(ReadinessRecorded.class).stream()
        .map(Written::fact)
        .filter(fact -> fact.lacks(asked, day).isEmpty())
        .map(ReadinessRecorded::item)
        .collect(Collectors.toUnmodifiableSet());
  }

  /**
   * The dose in force: the last one signed since the plan was chosen, since an emergency was
   * reviewed, since the course ended, and since his group was corrected. Choosing an earlier plan
   * again, or opening the course again, does not bring a dose back.
   */
  public Optional<Written<DoseSigned>> signedDose() {
    return OrderInForce.of(this, entry -> true);
  }

  /** The dose that was in force at an instant. */
  public Optional<Written<DoseSigned>> signedDoseAt(Instant at) {
    return OrderInForce.of(this, entry -> !entry.minute().isAfter(at));
  }

  /** Who was handed over last for the injection of a report, whatever corrected it since. */
  public Optional<Written<HandedOver>> handedOver(EntryId report) {
    EntryId root = rootOf(entry(report));
    return inForce(HandedOver.class).stream()
        .filter(written -> rootOf(entry(written.fact().erection())).equals(root))
        .reduce((earlier, later) -> later);
  }

  /** The reports that count, in the order in which they were written. */
  public List<Written<InjectionReported>> reports() {
    return inForce(InjectionReported.class);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof CourseFile file && id.equals(file.id) && entries.equals(file.entries);
  }

  @Override
  public int hashCode() {
    return Objects.hash(id, entries);
  }

  @Override
  public String toString() {
    return "course " + id + ", " + entries.size() + " entries";
  }
}
