package rungwise.clinic.standing;

import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFile;
import rungwise.dosing.Dosing;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Question;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.protocol.Protocol;

/** Whom a recall or a version of a protocol would reach, asked before it is signed. */
public final class Reach {

  private final StandingPorts ports;
  private final CourseReader reader;

  public Reach(StandingPorts ports, CourseReader reader) {
    this.ports = ports;
    this.reader = reader;
  }

  /**
   * A man with a dose in force.
   *
   * @param isSuspended whether that dose would be suspended
   */
  public record Reached(CourseFile course, boolean isSuspended) {}

  /** Everybody whose dose in force is of one of these versions of a preparation, by name. */
  public List<Reached> ofRecall(Set<PreparationId> versions) {
    return withDose()
        .filter(file -> versions.contains(file.plan().preparation()))
        .map(file -> new Reached(file, /* isSuspended= */ true))
        .toList();
  }

  /**
   * Everybody whose dose is in force under an earlier version, and whom this one holds, by name.
   */
  public List<Reached> ofVersion(Protocol version) {
    return withDose()
        .filter(file -> file.plan().protocol().equals(version.name()))
        .filter(file -> file.plan().protocolVersion() < version.version())
        .flatMap(file -> reached(file, version).stream())
        .toList();
  }

  private Stream<CourseFile> withDose() {
    return ports
        .courses()
        .each(
            ports.courses().all(),
            file -> file.signedDose().isPresent() ? List.of(file) : List.<CourseFile>of())
        .found()
        .stream()
        .sorted(Comparator.comparing(file -> file.patient().fullName()));
  }

  private List<Reached> reached(CourseFile file, Protocol version) {
    Question now = reader.state(file, ports.clock().instant()).question();
    Question then = now.with(now.circumstances().withNewer(List.of(version)));
    DoseSigned dose = file.signedDose().orElseThrow().fact();
    boolean isSuspended =
        Dosing.raisedBy(then, dose.volume(), dose.place()).stream()
            .anyMatch(verdict -> verdict.rule() == GuardRule.NEWER_VERSION_FORBIDS);
    boolean waitsLonger =
        !then.spacing().equals(now.spacing()) || !then.inSevenDays().equals(now.inSevenDays());
    return isSuspended || waitsLonger ? List.of(new Reached(file, isSuspended)) : List.of();
  }
}
