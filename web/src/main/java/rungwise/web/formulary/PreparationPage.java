package rungwise.web.formulary;

import java.util.Optional;
import rungwise.clinic.formulary.ClinicPreparation;
import rungwise.clinic.people.Account;

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
    boolean mayChange) {

  private static final String FOLDER = "/preparations/";

  static PreparationPage of(ClinicPreparation kept, boolean isInUse, Account actor) {
    return new PreparationPage(
        FOLDER + kept.id(),
        "/dose?preparation=" + kept.id(),
        isInUse,
        PreparationLine.of(kept.preparation()),
        kept.inUse().words(),
        kept.replaces().map(old -> FOLDER + old),
        isInUse && PreparationsPage.mayChange(actor));
  }
}
