package rungwise.clinic.standing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.ReadinessRecorded;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.EntryId;

/**
 * What a prescriber is to look at, with what a later entry took away before a prescriber saw it: no
 * correction, withdrawal or late entry of a day before makes a flag vanish unseen.
 */
final class KeptFlags {

  private final Function<CourseFile, List<ReportFlag>> flags;
  private final ClinicTime time;

  /**
   * Reads flags.
   *
   * @param flags what follows from a record as it stands
   */
  KeptFlags(Function<CourseFile, List<ReportFlag>> flags, ClinicTime time) {
    this.flags = flags;
    this.time = time;
  }

  /** One flag of one injection, whatever corrected its report since. */
  private record Key(EntryId injection, ReportFlag.Kind kind) {}

  /** All of them: first those that follow from what counts. */
  List<ReportFlag> of(CourseFile file) {
    List<ReportFlag> now = flags.apply(file);
    var struck = new LinkedHashMap<Key, ReportFlag>();
    for (CourseEntry entry : file.entries()) {
      if (mayTakeAway(entry)) {
        before(file.upTo(entry.number() - 1)).stream()
            .filter(flag -> !flag.isSeen())
            .forEach(flag -> struck.put(key(file, flag), struckBy(entry, flag, file)));
      }
    }
    now.forEach(flag -> struck.remove(key(file, flag)));
    List<ReportFlag> all = new ArrayList<>(now);
    all.addAll(struck.values());
    return List.copyOf(all);
  }

  private List<ReportFlag> before(CourseFile earlier) {
    return earlier.reports().isEmpty() ? List.of() : flags.apply(earlier);
  }

  /** Whether an entry may take away what followed before it. */
  private boolean mayTakeAway(CourseEntry entry) {
    return entry.corrects().isPresent()
        || (entry.fact() instanceof ReadinessRecorded recorded
            && recorded.day().isBefore(time.dayOf(entry.recordedAt())));
  }

  private static Key key(CourseFile file, ReportFlag flag) {
    return new Key(file.rootOf(flag.report().entry()), flag.kind());
  }

  private static ReportFlag struckBy(CourseEntry entry, ReportFlag flag, CourseFile file) {
    return new ReportFlag(
        flag.report(),
        flag.kind(),
        flag.facts(),
        entry.number(),
        ReportFlags.lastSeen(file) > entry.number(),
        Optional.of(entry));
  }
}
