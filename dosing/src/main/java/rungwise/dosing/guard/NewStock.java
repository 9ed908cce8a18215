package rungwise.dosing.guard;

import java.util.Optional;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Question;
import rungwise.dosing.supply.Freshness;
import rungwise.quantities.Volume;

/**
 * A vial of full strength after one that may have lost some. What a man needed of the old one may
 * be too much of the new one.
 */
public final class NewStock {

  private NewStock() {}

  /**
   * The highest dose with which a new vial begins: the last one that was proven on fresh stock, or
   * the first one of this preparation. Empty where the vial is the same, or the one before was
   * fresh.
   */
  public static Optional<Volume> restartAt(Question question) {
    return question
        .vial()
        .flatMap(
            vial ->
                question
                    .history()
                    .lastOf(question.preparationId())
                    .filter(last -> !last.stock().vial().equals(vial.stock().vial()))
                    .filter(last -> last.stock().freshness() != Freshness.FRESH))
        .map(
            last ->
                question
                    .history()
                    .lastOnFreshStock(question.preparationId())
                    .map(Injection::drawn)
                    .orElse(question.entry()));
  }
}
