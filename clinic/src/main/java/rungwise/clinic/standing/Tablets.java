package rungwise.clinic.standing;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.CourseFact.DailyTabletDecided;
import rungwise.clinic.course.CourseFact.TabletTaken;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.dosing.history.Circumstances.LastTablet;

/** The tablets for erections of one man, as far as anybody was told. */
public record Tablets(CourseFile file) {

  /** Whether a prescriber's last decision lets him go on with a daily low dose. */
  public boolean isDailyAllowed() {
    return file.inForce(DailyTabletDecided.class).stream()
        .reduce((earlier, later) -> later)
        .filter(written -> written.fact().isAllowed())
        .isPresent();
  }

  /** Tablets that hold an injection, in the order in which they were written down. */
  public List<Written<TabletTaken>> holding() {
    boolean isDailyAllowed = isDailyAllowed();
    return file.inForce(TabletTaken.class).stream()
        .filter(taken -> !(taken.fact().tablet().isDailyLow() && isDailyAllowed))
        .toList();
  }

  /** The last one of them, with how many there are and which was written down last. */
  public Optional<LastTablet> last() {
    List<Written<TabletTaken>> holding = holding();
    return holding.stream()
        .map(taken -> taken.fact().at())
        .max(Instant::compareTo)
        .map(at -> new LastTablet(at, holding.size() + " to " + newest(holding)));
  }

  private static long newest(List<Written<TabletTaken>> holding) {
    return holding.stream().mapToLong(taken -> taken.entry().number()).max().orElseThrow();
  }
}
