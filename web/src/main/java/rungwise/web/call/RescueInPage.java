package rungwise.web.call;

import rungwise.dosing.urgent.rescue.DoseVolume;
import rungwise.dosing.urgent.rescue.RescueLimits;
import rungwise.quantities.MassUnit;

/**
 * The running log of a rescue of a man whose record is not open: what its script counts with. It is
 * kept in the page and is sent nowhere.
 *
 * @param script the address of the script
 */
public record RescueInPage(String script) {

  /** How many minutes lie at least between two doses. */
  public String floor() {
    return RescueLimits.FLOOR.value().minutesText();
  }

  /** How many micrograms may be given in an hour: the sample, as no clinic is known here. */
  public String limit() {
    return RescueLimits.SAMPLE.value().inAnHour().numberText(MassUnit.MICROGRAM).replace(",", "");
  }

  /** The smallest of the published doses, in micrograms. */
  public String least() {
    return DoseVolume.LEAST_DOSE.value().numberText(MassUnit.MICROGRAM);
  }

  /** The largest of them. */
  public String most() {
    return DoseVolume.MOST_DOSE.value().numberText(MassUnit.MICROGRAM);
  }
}
