package rungwise.clinic.titration;

import java.util.List;
import java.util.Optional;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Form;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.Concentration;
import rungwise.quantities.Volume;

/** A preparation that no sample is: weaker than all of them. */
final class WeakPreparation {

  private WeakPreparation() {}

  static Preparation alprostadil5() {
    return new Preparation(
        new PreparationId("alprostadil-5"),
        "Alprostadil 5",
        new Form.Solution(),
        List.of(
            new Ingredient(
                Component.ALPROSTADIL,
                Concentration.parse("5 mcg/mL").orThrow(),
                Optional.empty())),
        Volume.ofMicrolitres(1000),
        Optional.empty());
  }
}
