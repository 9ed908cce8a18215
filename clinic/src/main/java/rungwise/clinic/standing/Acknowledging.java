package rungwise.clinic.standing;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.CourseOpened;
import rungwise.clinic.course.CourseFact.FaultAcknowledged;
import rungwise.clinic.course.CourseFact.PlanChosen;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.Courses;
import rungwise.clinic.course.NewEntry;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.clinic.soundness.Acknowledgement.Side;
import rungwise.clinic.soundness.Flaw;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/**
 * The way out of a changed entry where no sound record can be put back: two people acknowledge it,
 * a prescriber and who answers for the record. It holds for exactly what was found; any other fault
 * stops again. Nothing that was written before proves anything from then on ({@code
 * CourseEntry.counting}), and a changed entry may have said anything: it counts as an injection of
 * nobody knows what, with an end that nobody knows.
 */
public final class Acknowledging {

  private static final String NO_COURSE = "There is no such course: open the list again.";
  private static final String NOT_ALLOWED =
      "Only a prescriber, the programme lead or an administrator can acknowledge a fault.";
  private static final String CHANGED_MEANWHILE =
      "What is wrong with this record has changed since the page was opened, so nothing was"
          + " acknowledged. Look at what it says now.";
  private static final String ONLY_RESTORE =
      "This fault cannot be acknowledged: who he is, what he is treated with, or whether all of his"
          + " entries are there, is not known. Only a sound record that is put back mends it.";
  private static final String TWICE =
      "You have acknowledged this already. The other word must be another person's.";

  private final StandingPorts ports;

  public Acknowledging(StandingPorts ports) {
    this.ports = ports;
  }

  /** The courses of which something is not as it was written, and that can be read. */
  public List<CourseFile> faulty() {
    return everyCourse().found();
  }

  /** Courses of which so little can be read that not even their record number is known. */
  public List<CourseId> unreadable() {
    return everyCourse().unreadable();
  }

  private Courses.Made<CourseFile> everyCourse() {
    return ports
        .courses()
        .each(
            ports.courses().all(),
            file ->
                file.flaws().stream().anyMatch(Flaw::isOfCourse)
                    ? List.of(file)
                    : List.<CourseFile>of());
  }

  /** What a page showed of the faults of a course, in one line, to be compared when it is sent. */
  public static String shown(CourseFile file) {
    return file.flaws().stream()
        .map(flaw -> flaw.what() + " " + flaw.entry() + " " + flaw.read())
        .collect(Collectors.joining(", "));
  }

  /** Whether two people's word can take the place of a sound record. */
  public static boolean canBeAcknowledged(CourseFile file) {
    return file.flaws().stream()
        .allMatch(
            flaw ->
                flaw.what() == Flaw.What.CHANGED
                    && !flaw.read().isEmpty()
                    && file.entries().stream()
                        .filter(entry -> entry.number() == flaw.entry())
                        .allMatch(Acknowledging::mayBeUnproven));
  }

  /** Who he is, and with what he is treated, is never taken from a changed entry. */
  private static boolean mayBeUnproven(CourseEntry entry) {
    return switch (entry.fact()) {
      case CourseOpened opened -> false;
      case PlanChosen chosen -> false;
      case FaultAcknowledged acknowledged -> false;
      default -> true;
    };
  }

  /** Who has acknowledged all that is wrong with a course now. */
  public static List<CourseEntry> given(CourseFile file) {
    return file.entries().stream()
        .filter(
            entry ->
                entry.fact() instanceof FaultAcknowledged word
                    && file.flaws().stream().anyMatch(flaw -> isOf(word, flaw)))
        .toList();
  }

  private static boolean isOf(FaultAcknowledged word, Flaw flaw) {
    return word.faulty() == flaw.entry() && word.read().equals(flaw.read());
  }

  /**
   * Writes down that somebody acknowledges everything that is wrong with a course.
   *
   * @param shown what his page showed, as {@link #shown} says
   * @return whether the other one has done so too, so that the course goes on
   */
  public Reading<Boolean> acknowledge(Account actor, CourseId id, String shown, String reason) {
    List<Side> sides = Arrays.stream(Side.values()).filter(side -> mayBe(actor, side)).toList();
    if (sides.isEmpty()) {
      return Reading.refused(NOT_ALLOWED);
    }
    return ports
        .transactions()
        .inTransaction(
            () ->
                ports
                    .courses()
                    .find(id)
                    .map(file -> acknowledge(actor, file, sides, shown, reason))
                    .orElseGet(() -> Reading.refused(NO_COURSE)));
  }

  private static boolean mayBe(Account actor, Side side) {
    return switch (side) {
      case PRESCRIBER -> actor.may(Role.PRESCRIBER);
      case KEEPER -> actor.may(Role.ADMINISTRATOR) || actor.may(Role.PROGRAMME_LEAD);
    };
  }

  private Reading<Boolean> acknowledge(
      Account actor, CourseFile file, List<Side> sides, String shown, String reason) {
    Optional<Fault> fault = fault(actor, file, shown, reason);
    if (fault.isPresent()) {
      return Reading.refused(fault.get());
    }
    List<Side> taken = given(file).stream().flatMap(entry -> sideOf(entry)).distinct().toList();
    Optional<Side> free = sides.stream().filter(side -> !taken.contains(side)).findFirst();
    if (free.isEmpty()) {
      return Reading.refused(
          taken.contains(Side.PRESCRIBER)
              ? "A prescriber has acknowledged it already: now the administrator or the programme"
                  + " lead must."
              : "Who answers for the record has acknowledged it already: now a prescriber must.");
    }
    for (Flaw flaw : file.flaws()) {
      var word = new FaultAcknowledged(flaw.entry(), flaw.read(), free.get());
      ports
          .courses()
          .append(
              NewEntry.of(file.id(), word, actor.id(), ports.clock().instant())
                  .because(reason.strip()));
    }
    return Reading.of(ports.courses().find(file.id()).filter(CourseFile::isSound).isPresent());
  }

  private static Optional<Fault> fault(
      Account actor, CourseFile file, String shown, String reason) {
    if (!shown(file).equals(shown) || file.isSound()) {
      return Optional.of(Fault.ofForm(CHANGED_MEANWHILE));
    }
    if (!canBeAcknowledged(file)) {
      return Optional.of(Fault.ofForm(ONLY_RESTORE));
    }
    if (given(file).stream().anyMatch(entry -> entry.recordedBy().equals(actor.id()))) {
      return Optional.of(Fault.ofForm(TWICE));
    }
    return reason.isBlank()
        ? Optional.of(new Fault(CourseChanges.REASON, CourseChanges.REASON_MISSING))
        : CourseChanges.textFault(reason, CourseChanges.REASON);
  }

  private static Stream<Side> sideOf(CourseEntry entry) {
    return entry.fact() instanceof FaultAcknowledged word ? Stream.of(word.side()) : Stream.of();
  }
}
