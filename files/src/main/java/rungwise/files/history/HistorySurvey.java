package rungwise.files.history;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rungwise.clinic.past.PastHistory;
import rungwise.clinic.past.PastInjection;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.Fault;

/**
 * A history file of which some lines may be wrong.
 *
 * @param lines those of the patients of whom every line is right; none if it is not known of whom a
 *     wrong line is
 * @param placed what is wrong, by line, each at its column
 * @param aside how many patients have a line that is wrong
 */
public record HistorySurvey(List<HistoryLine> lines, List<Fault> placed, int aside) {

  public HistorySurvey {
    lines = List.copyOf(lines);
    placed = List.copyOf(placed);
  }

  /** What is wrong, in words. */
  public List<String> faults() {
    return placed.stream().map(Fault::text).toList();
  }

  /** What the file says of each patient, in the order of the file. */
  public List<PastHistory> histories() {
    Map<String, List<HistoryLine>> patients = new LinkedHashMap<>();
    for (HistoryLine line : lines) {
      patients.computeIfAbsent(line.patient(), name -> new ArrayList<>()).add(line);
    }
    return patients.values().stream()
        .map(
            own ->
                new PastHistory(
                    own.getFirst().patient(),
                    own.getFirst().group(),
                    own.stream().map(HistorySurvey::injection).toList()))
        .toList();
  }

  private static PastInjection injection(HistoryLine line) {
    return new PastInjection(
        line.line(),
        line.injection(),
        line.volume(),
        line.potency(),
        line.strength(),
        line.grade(),
        line.softAfter(),
        line.setting(),
        line.setting().isPresent() ? Optional.empty() : line.preparation().map(PreparationId::new));
  }
}
