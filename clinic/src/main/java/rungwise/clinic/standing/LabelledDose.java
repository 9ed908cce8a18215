package rungwise.clinic.standing;

import java.util.Optional;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.VialLabels;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.Volume;

/**
 * A dose from a vial, before it is written down: what was planned, and what the label says.
 *
 * @param kept what is written down beside the dose: the preparation of the label, where the clinic
 *     has it; else what was planned, and whoever reads the record reads the label
 */
public record LabelledDose(Preparation planned, Preparation injected, PreparationId kept) {

  /**
   * A dose from a vial.
   *
   * @param label what its label says; empty if nobody knows which it was
   */
  public static LabelledDose of(
      StandingPorts ports, CourseFile file, Optional<String> label, PreparationId planned) {
    var known =
        new Remembered<PreparationId, Preparation>(
            id -> ports.preparations().apply(id).orElseThrow());
    Preparation injected = new VialLabels(file, known).injected(label, planned);
    Preparation shown =
        ports
            .preparations()
            .apply(injected.id())
            .or(() -> ports.labelled().apply(injected.composition()))
            .orElse(injected);
    return new LabelledDose(
        known.apply(planned),
        shown,
        ports.preparations().apply(shown.id()).isPresent() ? shown.id() : planned);
  }

  /** Whether the label says what was planned. */
  public boolean isAsPlanned() {
    return planned.isSameAs(injected);
  }

  /** What whoever wrote it down must know: the label says something else; empty if it does not. */
  public Optional<String> notice(Volume drawn) {
    return isAsPlanned()
        ? Optional.empty()
        : Optional.of(
            "The label of the vial says "
                + injected.composition()
                + ", and planned was "
                + planned.composition()
                + ". The label decides: recorded as "
                + drawn
                + " of "
                + injected.composition()
                + ", which holds "
                + injected.contentOf(drawn)
                + ".");
  }
}
