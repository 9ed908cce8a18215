package rungwise.clinic.supply;

import java.util.Map;
import rungwise.dosing.known.Component;

/**
 * The form of a vial as typed from its label.
 *
 * @param strengths a number per mL by component, such as "30"; empty for what is not in it
 * @param made a date; may be empty
 * @param opened a date; may be empty
 * @param daysInUse a whole number; may be empty
 */
public record VialDraft(
    String lot,
    Map<Component, String> strengths,
    String made,
    String beyondUse,
    String opened,
    String daysInUse,
    String device) {

  public VialDraft {
    strengths = Map.copyOf(strengths);
  }
}
