package rungwise.clinic.past;

import java.util.List;

/**
 * What an import would do.
 *
 * @param ready the patients who would be brought in
 * @param faults by line of the file
 * @param aside how many patients are set aside for a fault
 */
public record ImportPlan(List<PastHistory> ready, List<String> faults, int aside) {

  public ImportPlan {
    ready = List.copyOf(ready);
    faults = List.copyOf(faults);
  }

  public int injections() {
    return ready.stream().mapToInt(history -> history.injections().size()).sum();
  }

  /** Patients of whom it is not said when they were injected, with what and how. */
  public long historyOnly() {
    return ready.stream().filter(history -> !history.isDated()).count();
  }
}
