package rungwise.clinic.course;

import rungwise.dosing.supply.VialDates;

/**
 * A vial that was dispensed to a man, as its label says.
 *
 * @param lot 1 to 60 characters
 * @param composition what the label says it holds, in the words of a preparation's composition
 * @param device what it is drawn up with, as written down; may be empty
 */
public record Vial(String lot, String composition, VialDates dates, String device) {

  public Vial {
    if (lot.isBlank() || composition.isBlank()) {
      throw new IllegalArgumentException("bug: a vial without a label");
    }
  }
}
