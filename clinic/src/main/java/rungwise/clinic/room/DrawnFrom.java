package rungwise.clinic.room;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.CourseFact.VialReceived;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.VialLabels;
import rungwise.clinic.supply.ClinicVial;
import rungwise.clinic.supply.ClinicVialShelf;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/**
 * The vial in the hand of whoever injects him. Both are empty where it has happened and nobody
 * knows, or where he has none.
 */
record DrawnFrom(Optional<Written<VialReceived>> own, Optional<ClinicVial> ofClinic) {

  private static final DrawnFrom NOBODY_KNOWS = new DrawnFrom(Optional.empty(), Optional.empty());

  /** Reads the form. Where the labels of his vials differ, it has to say which. */
  static Reading<DrawnFrom> of(StartDraft draft, CourseFile file, ClinicVialShelf shelf) {
    String typed = draft.vial();
    if (typed.isBlank()) {
      return inUse(file);
    }
    if (typed.equals(StartDraft.VIAL_NOT_KNOWN)) {
      return draft.alreadyGiven()
          ? Reading.of(NOBODY_KNOWS)
          : refused("Read the label of the vial before he is injected, and choose it.");
    }
    var chosen =
        new DrawnFrom(
            file.ownVials().stream()
                .filter(vial -> vial.entry().id().text().equals(typed))
                .findFirst(),
            shelf.find(typed));
    return chosen.equals(NOBODY_KNOWS)
        ? refused("The clinic does not keep that vial any more: choose one of the list.")
        : Reading.of(chosen);
  }

  private static Reading<DrawnFrom> inUse(CourseFile file) {
    List<String> labels = VialLabels.of(file.ownVials());
    return labels.size() > 1
        ? refused(
            "Say from which vial it is drawn: the labels of his vials differ: "
                + String.join("; ", labels)
                + ".")
        : Reading.of(new DrawnFrom(file.vial(), Optional.empty()));
  }

  private static Reading<DrawnFrom> refused(String fault) {
    return Reading.refused(new Fault(VisitFields.VIAL, fault));
  }

  /** What its label says. */
  Optional<String> label() {
    return own.map(written -> written.fact().vial())
        .or(() -> ofClinic.map(ClinicVial::vial))
        .map(vial -> vial.composition());
  }

  /** The entry of a vial of his own. */
  Optional<EntryId> ownEntry() {
    return own.map(written -> written.entry().id());
  }
}
