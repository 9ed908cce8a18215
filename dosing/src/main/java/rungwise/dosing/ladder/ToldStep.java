package rungwise.dosing.ladder;

import java.util.Optional;
import rungwise.dosing.known.Preparation;
import rungwise.quantities.Volume;

/**
 * The step that a dose told from elsewhere adds to a schedule: what a prescriber has opened, or a
 * lower one where the first step holds too much.
 */
record ToldStep(Beginning.AsTold told, Ladder ladder) {

  Optional<Volume> mark() {
    return told.start(preparation(), ladder.barrel())
        .or(() -> isFirstTooMuch() ? allowed() : Optional.empty());
  }

  private Optional<Volume> allowed() {
    return told.mark(preparation(), ladder.barrel());
  }

  private boolean isFirstTooMuch() {
    return !told.isWithin(ladder.first(), preparation());
  }

  /** Why there is no first dose; empty if there is one. */
  Optional<String> refusal() {
    return isFirstTooMuch() && allowed().isEmpty()
        ? Optional.of(
            "He was taken over on "
                + told.words()
                + ". As much of "
                + preparation()
                + " as may be given first would be "
                + told.most(preparation()).orElseThrow()
                + ", which a "
                + ladder.barrel()
                + " cannot measure: choose a weaker strength.")
        : Optional.empty();
  }

  String note(Volume mark) {
    return "He was taken over on "
        + told.words()
        + ", as told. The first dose here is at most "
        + mark
        + " ("
        + preparation().contentOf(mark)
        + "), watched in the clinic.";
  }

  private Preparation preparation() {
    return ladder.preparation();
  }
}
