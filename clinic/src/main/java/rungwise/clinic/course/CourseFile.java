package rungwise.clinic.course;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseFact.CourseOpened;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.EmergencyReviewed;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.PlanChosen;
import rungwise.clinic.course.CourseFact.ReadinessRecorded;
import rungwise.clinic.course.CourseFact.ScreeningAnswered;
import rungwise.clinic.course.CourseFact.VolumeReopened;
import rungwise.dosing.history.Answer;
import rungwise.dosing.history.EmergencyReview;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.history.Reopening;

/**
 * All entries of one course, and what they say together. An entry that a later one corrects stays
 * in the file and no longer counts.
 *
 * @param entries in the order of their numbers; the first opens the course
 */
public record CourseFile(CourseId id, List<CourseEntry> entries) {

  public CourseFile {
    entries = List.copyOf(entries);
    if (entries.isEmpty() || !(entries.getFirst().fact() instanceof CourseOpened)) {
      throw new IllegalArgumentException("bug: course " + id + " was never opened");
    }
  }

  /** One fact with the entry that carries it. */
  public record Written<F extends CourseFact>(CourseEntry entry, F fact) {}

  /** The number of the last entry: what advice has read up to. */
  public long basis() {
    return entries.getLast().number();
  }

  /** The file as it was when that entry was the last. */
  public CourseFile upTo(long number) {
    return new CourseFile(id, entries.stream().filter(entry -> entry.number() <= number).toList());
  }

  /** The entries of one kind that no later entry corrects. */
  public <F extends CourseFact> List<Written<F>> inForce(Class<F> kind) {
    Set<EntryId> corrected =
        entries.stream().flatMap(entry -> entry.corrects().stream()).collect(Collectors.toSet());
    return entries.stream()
        .filter(entry -> !corrected.contains(entry.id()))
        .filter(entry -> kind.isInstance(entry.fact()))
        .map(entry -> new Written<>(entry, kind.cast(entry.fact())))
        .toList();
  }

  private <F extends CourseFact> Optional<Written<F>> lastOf(Class<F> kind) {
    return inForce(kind).stream().reduce((earlier, later) -> later);
  }

  public CourseOpened opened() {
    return lastOf(CourseOpened.class).orElseThrow().fact();
  }

  public Patient patient() {
    return opened().patient();
  }

  /** The last answer about contraindications; not known if nobody has asked. */
  public Answer contraindication() {
    return lastOf(ScreeningAnswered.class)
        .map(written -> written.fact().contraindication())
        .orElse(Answer.NOT_KNOWN);
  }

  /**
   * The plan in force.
   *
   * @throws java.util.NoSuchElementException if none was ever chosen
   */
  public Plan plan() {
    return lastOf(PlanChosen.class).orElseThrow().fact().plan();
  }

  public Set<Readiness> readiness() {
    return inForce(ReadinessRecorded.class).stream()
        .map(written -> written.fact().item())
        .collect(Collectors.toUnmodifiableSet());
  }

  /**
   * The dose in force: the last one signed since the plan was chosen. Choosing an earlier plan
   * again does not bring a dose back.
   */
  public Optional<Written<DoseSigned>> signedDose() {
    long planned = lastOf(PlanChosen.class).orElseThrow().entry().number();
    return lastOf(DoseSigned.class).filter(written -> written.entry().number() > planned);
  }

  /** The reports that count, in the order in which they were written. */
  public List<Written<InjectionReported>> reports() {
    return inForce(InjectionReported.class);
  }

  /** What the engine may look at. */
  public History history() {
    Stream<Injection> injections = reports().stream().map(CourseFile::injection);
    Stream<Reopening> reopenings =
        inForce(VolumeReopened.class).stream()
            .map(
                written ->
                    new Reopening(
                        written.entry().number(),
                        written.fact().preparation(),
                        written.fact().upTo()));
    Stream<EmergencyReview> reviews =
        inForce(EmergencyReviewed.class).stream()
            .map(written -> new EmergencyReview(written.entry().number()));
    return new History(injections.toList(), reopenings.toList(), reviews.toList());
  }

  private static Injection injection(Written<InjectionReported> written) {
    InjectionReported report = written.fact();
    return new Injection(
        written.entry().number(),
        report.injectedAt(),
        report.preparation(),
        report.drawn(),
        report.ordered(),
        report.grade(),
        report.soft(),
        report.causes());
  }
}
