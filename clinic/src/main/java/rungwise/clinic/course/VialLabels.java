package rungwise.clinic.course;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.ObservationStarted;
import rungwise.clinic.course.CourseFact.VialReceived;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;

/**
 * What was injected. The label of the vial decides, as its last addendum says, whatever was planned
 * or written down with the injection.
 *
 * @param preparations every version of every preparation that was ever planned or injected
 */
public record VialLabels(CourseFile file, Function<PreparationId, Preparation> preparations) {

  /** What a report's dose was drawn from. */
  public Preparation injected(InjectionReported report) {
    return injected(labelOf(file, report.details().vial()), report.preparation());
  }

  /** What is injected into a man under observation. */
  public Preparation injected(ObservationStarted started) {
    return injected(labelOf(file, started.vial()), started.preparation());
  }

  /**
   * What a dose was drawn from.
   *
   * @param label what the label of the vial says; empty if nobody knows which it was
   * @param written the preparation that stands beside the dose, or that was planned for it
   */
  public Preparation injected(Optional<String> label, PreparationId written) {
    Preparation planned = preparations.apply(written);
    return label
        .filter(says -> !says.equals(planned.composition()))
        .flatMap(this::of)
        .orElse(planned);
  }

  /**
   * What a report's dose may have been drawn from besides, where it does not say from which vial:
   * whatever else stood on a label of his vials when it was told first.
   */
  public List<Preparation> mayHaveBeen(Written<InjectionReported> report) {
    if (report.fact().details().vial().isPresent()) {
      return List.of();
    }
    String planned = preparations.apply(report.fact().preparation()).composition();
    long told = file.beganAt(report.entry());
    return labels(file.vials().stream().filter(vial -> file.beganAt(vial.entry()) < told))
        .filter(label -> !label.equals(planned))
        .flatMap(label -> of(label).stream())
        .toList();
  }

  /** What the labels of vials say, each once. */
  public static List<String> of(List<Written<VialReceived>> vials) {
    return labels(vials.stream()).toList();
  }

  private static Stream<String> labels(Stream<Written<VialReceived>> vials) {
    return vials.map(vial -> vial.fact().vial().composition()).distinct();
  }

  /** What the label of a vial says, as its last addendum has it. */
  public static Optional<String> labelOf(CourseFile file, Optional<EntryId> vial) {
    return vial.flatMap(file::vialOf).map(written -> written.fact().vial().composition());
  }

  /**
   * The preparation that a label says: of those that he was ever planned the last one, else what
   * the words of the label hold.
   */
  private Optional<Preparation> of(String label) {
    return planned(label).or(() -> Preparation.ofLabel(label));
  }

  /** The preparation that a label says, of those that he was ever planned, the last one first. */
  public Optional<Preparation> planned(String label) {
    return file.plans().reversed().stream()
        .map(Plan::preparation)
        .distinct()
        .map(preparations)
        .filter(preparation -> preparation.composition().equals(label))
        .findFirst();
  }
}
