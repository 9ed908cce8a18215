package rungwise.clinic.titration;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.quantities.Reading;

/** All that is wrong with a report, and what its writer is told besides. */
final class PartFaults {

  private final List<PartFault> faults = new ArrayList<>();
  private final List<String> notices = new ArrayList<>();

  void add(ReportPart part, String text) {
    faults.add(new PartFault(part, text));
  }

  void notice(String text) {
    notices.add(text);
  }

  /** What was read for a part; its faults belong to that part. */
  <T> Optional<T> take(ReportPart part, Reading<T> reading) {
    reading.faults().forEach(fault -> add(part, fault));
    notices.addAll(reading.notices());
    return reading.found();
  }

  boolean isEmpty() {
    return faults.isEmpty();
  }

  List<PartFault> faults() {
    return List.copyOf(faults);
  }

  List<String> notices() {
    return List.copyOf(notices);
  }
}
