package rungwise.web.formulary;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.formulary.ClinicPreparation;
import rungwise.clinic.people.Account;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * One version of a preparation, whole.
 *
 * @param isInUse whether it may be planned now
 * @param replacesPath address of the version that it took the place of
 */
public record PreparationPage(
    String path,
    String dosePath,
    boolean isInUse,
    PreparationLine one,
    String inUse,
    Optional<String> replacesPath,
    Faults faults,
    boolean mayChange,
    Field reason) {

  private static final String FOLDER = "/preparations/";

  static PreparationPage of(ClinicPreparation kept, boolean isInUse, Account actor) {
    return of(kept, isInUse, actor, "", List.of());
  }

  static PreparationPage of(
      ClinicPreparation kept, boolean isInUse, Account actor, String reason, List<String> found) {
    Faults faults = FaultPlaces.place(found);
    return new PreparationPage(
        FOLDER + kept.id(),
        "/dose?preparation=" + kept.id(),
        isInUse,
        PreparationLine.of(kept.preparation()),
        kept.inUse().words(),
        kept.replaces().map(old -> FOLDER + old),
        faults,
        isInUse && PreparationsPage.mayChange(actor),
        Field.of(Field.Kind.TEXT, "reason", "Reason").withValue(reason).withFaults(faults));
  }
}
