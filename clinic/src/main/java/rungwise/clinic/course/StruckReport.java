package rungwise.clinic.course;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import rungwise.clinic.course.CourseFact.CorrectionConfirmed;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFile.Written;

/**
 * A report that was corrected or withdrawn, which no prescriber has confirmed to be wrong.
 *
 * @param said the report
 * @param now what stands there instead: another report, or that it was withdrawn
 */
public record StruckReport(Written<InjectionReported> said, CourseEntry now) {

  /** The report that counts instead; empty if it was withdrawn. */
  public Optional<Written<InjectionReported>> instead() {
    return now.fact() instanceof InjectionReported report
        ? Optional.of(new Written<>(now, report))
        : Optional.empty();
  }

  /** All of one course, in the order of their entries. */
  public static List<StruckReport> of(CourseFile file) {
    Map<EntryId, CourseEntry> correctedBy = new HashMap<>();
    file.entries()
        .forEach(entry -> entry.corrects().ifPresent(earlier -> correctedBy.put(earlier, entry)));
    if (correctedBy.isEmpty()) {
      return List.of();
    }
    Set<EntryId> confirmed =
        file.inForce(CorrectionConfirmed.class).stream()
            .map(written -> written.fact().correction())
            .collect(Collectors.toSet());
    return file.everWritten(InjectionReported.class).stream()
        .filter(said -> correctedBy.containsKey(said.entry().id()))
        .flatMap(said -> unconfirmed(said, correctedBy, confirmed).stream())
        .toList();
  }

  private static Optional<StruckReport> unconfirmed(
      Written<InjectionReported> said,
      Map<EntryId, CourseEntry> correctedBy,
      Set<EntryId> confirmed) {
    CourseEntry now = said.entry();
    for (CourseEntry next = correctedBy.get(now.id());
        next != null;
        next = correctedBy.get(now.id())) {
      now = next;
      if (confirmed.contains(now.id())) {
        return Optional.empty();
      }
    }
    return Optional.of(new StruckReport(said, now));
  }
}
