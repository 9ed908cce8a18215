package rungwise.dosing.response;

import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.quantities.Volume;

/**
 * What volumes of one preparation may do for one man.
 *
 * @param strength of the preparation, as the requirement counts it
 */
public record Prospect(Requirement requirement, double strength) {

  /** What a volume at the label's strength may do. */
  public Forecast forecast(Volume volume) {
    return requirement.forecast(new Given(volume, 1, strength).logDose());
  }

  /** Between what that lies for nine in ten such men. */
  public ForecastRange range(Volume volume) {
    return requirement.range(new Given(volume, 1, strength).logDose());
  }

  /** The minutes that half of the usable responses to a volume pass. */
  public double medianMinutesIfUseful(Volume volume) {
    return requirement.medianMinutesIfUseful(new Given(volume, 1, strength).logDose());
  }

  /**
   * How probable a report is that lies at least as far to its side as this one, firmer or less
   * firm, longer or shorter: the smallest of these.
   */
  public double chanceOfAsExtreme(History history, Injection injection) {
    return requirement.chanceOfAsExtreme(ResponseModel.trial(history, injection, strength));
  }
}
