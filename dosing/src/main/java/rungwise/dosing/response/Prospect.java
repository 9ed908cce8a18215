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

  /**
   * How probable a report is that lies at least as far to its side as this one, firmer or less
   * firm, longer or shorter: the smallest of these.
   */
  public double chanceOfAsExtreme(History history, Injection injection) {
    return requirement.chanceOfAsExtreme(ResponseModel.trial(history, injection, strength));
  }
}
