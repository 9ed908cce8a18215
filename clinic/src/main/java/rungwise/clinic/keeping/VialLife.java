package rungwise.clinic.keeping;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import rungwise.clinic.befell.VialWord;
import rungwise.clinic.course.CourseFact.VialBefell;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.EntryId;
import rungwise.dosing.supply.VialCare;

/**
 * What befell one vial.
 *
 * @param all everything that was written of it, in the order of the entries
 * @param standing what of it stops, and nobody has judged since
 */
public record VialLife(List<Written<VialBefell>> all, List<Written<VialBefell>> standing) {

  /** Nothing is written of it. */
  public static final VialLife NOTHING = new VialLife(List.of(), List.of());

  public VialLife {
    all = List.copyOf(all);
    standing = List.copyOf(standing);
  }

  /**
   * What befell a vial of a course.
   *
   * @param vial the entry that wrote it down first: what is corrected stays the same vial
   */
  public static VialLife of(CourseFile file, EntryId vial) {
    List<Written<VialBefell>> all =
        file.inForce(VialBefell.class).stream()
            .filter(written -> written.fact().vial().equals(vial))
            .toList();
    var standing = new ArrayList<Written<VialBefell>>();
    for (Written<VialBefell> one : all) {
      if (one.fact().word() instanceof VialWord.Judged) {
        standing.clear();
      } else if (one.fact().word().stops()) {
        standing.add(one);
      }
    }
    return new VialLife(all, standing);
  }

  /** Whether it may be drawn from, as far as this goes. */
  public VialCare care() {
    if (standing.isEmpty()) {
      return VialCare.AS_LABELLED;
    }
    boolean gone = standing.stream().anyMatch(one -> one.fact().word() instanceof VialWord.Gone);
    return gone ? VialCare.GONE : VialCare.TO_BE_JUDGED;
  }

  /**
   * Whether what was drawn from it at an instant may have been weaker than its label. A judgement
   * that it may be used makes it no stronger.
   */
  public boolean mayBeSpoiltAt(Instant at, ZoneId zone) {
    return all.stream()
        .map(one -> one.fact().word())
        .filter(VialWord::maySpoil)
        .flatMap(word -> word.since().stream())
        .anyMatch(day -> !at.isBefore(day.atStartOfDay(zone).toInstant()));
  }
}
