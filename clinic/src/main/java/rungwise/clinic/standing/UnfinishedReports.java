package rungwise.clinic.standing;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rungwise.clinic.called.CallLog;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.EmergencyReviewed;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.ReportUnfinished;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.EntryId;
import rungwise.dosing.history.Circumstances.Unfinished;

/**
 * Reports that may mean 4 hours and are not complete. One ends by a report that counts and
 * completes it, or corrects what it was about, or is of the same injection, and by a prescriber's
 * review; if that report is withdrawn, it stands again.
 */
public final class UnfinishedReports {

  private UnfinishedReports() {}

  /** Those that still stand, in the order in which they were written. */
  public static List<Written<ReportUnfinished>> of(CourseFile file) {
    List<Written<ReportUnfinished>> written = file.everWritten(ReportUnfinished.class);
    return written.isEmpty() ? written : standing(file, written);
  }

  private static List<Written<ReportUnfinished>> standing(
      CourseFile file, List<Written<ReportUnfinished>> all) {
    long reviewed =
        file.inForce(EmergencyReviewed.class).stream()
            .mapToLong(written -> written.entry().number())
            .max()
            .orElse(0);
    return all.stream()
        .filter(written -> written.entry().number() > reviewed)
        .filter(written -> !isReplaced(file, written.entry().id()))
        .filter(written -> file.reports().stream().noneMatch(report -> ends(file, written, report)))
        .toList();
  }

  /** What may mean 4 hours: reports that are not complete, and calls of which none tells. */
  static List<Unfinished> worries(CourseFile file) {
    List<Written<ReportUnfinished>> worries = of(file);
    long last = worries.stream().mapToLong(one -> one.entry().number()).max().orElse(0);
    Stream<Unfinished> calls =
        CallLog.holding(file).stream()
            .filter(call -> call.opened().number() > last)
            .map(call -> new Unfinished(call.opened().recordedAt(), call.began()));
    return Stream.concat(
            worries.stream()
                .map(one -> new Unfinished(one.entry().recordedAt(), one.fact().injectedAt())),
            calls)
        .toList();
  }

  private static boolean isReplaced(CourseFile file, EntryId id) {
    return file.everWritten(ReportUnfinished.class).stream()
        .anyMatch(written -> written.entry().corrects().equals(Optional.of(id)));
  }

  private static boolean ends(
      CourseFile file, Written<ReportUnfinished> worry, Written<InjectionReported> report) {
    if (report.entry().number() < worry.entry().number()) {
      return false;
    }
    Set<EntryId> chain = chainOf(file, report.entry());
    boolean isOfTheSame = worry.fact().injectedAt().equals(Optional.of(report.fact().injectedAt()));
    return isOfTheSame
        || chain.contains(worry.entry().id())
        || worry.fact().about().filter(chain::contains).isPresent();
  }

  private static Set<EntryId> chainOf(CourseFile file, CourseEntry entry) {
    var chain = new HashSet<EntryId>();
    Optional<EntryId> next = entry.corrects();
    while (next.isPresent()) {
      chain.add(next.get());
      next = file.entry(next.get()).corrects();
    }
    return chain;
  }
}
