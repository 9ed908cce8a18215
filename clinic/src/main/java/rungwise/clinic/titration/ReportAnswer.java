package rungwise.clinic.titration;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.EntryId;
import rungwise.quantities.Reading;

/**
 * What came of a report.
 *
 * @param entry its number in the record; empty if something must be asked back
 * @param notices what its writer is told besides
 * @param faults what must be asked back
 * @param unfinished the entry by which what was said stands as an open worry: it says, or could
 *     mean, 4 hours or still firm, and is not complete
 */
public record ReportAnswer(
    Optional<Long> entry,
    List<String> notices,
    List<PartFault> faults,
    Optional<EntryId> unfinished) {

  public ReportAnswer {
    notices = List.copyOf(notices);
    faults = List.copyOf(faults);
  }

  static ReportAnswer refused(List<PartFault> faults) {
    return new ReportAnswer(Optional.empty(), List.of(), faults, Optional.empty());
  }

  static ReportAnswer kept(long number) {
    return new ReportAnswer(Optional.of(number), List.of(), List.of(), Optional.empty());
  }

  /** The same without the parts of the form. */
  public Reading<Long> reading() {
    return entry
        .<Reading<Long>>map(number -> new Reading.Read<>(number, notices))
        .orElseGet(() -> new Reading.Refused<>(faults.stream().map(PartFault::placed).toList()));
  }
}
