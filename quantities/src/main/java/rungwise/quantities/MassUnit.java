package rungwise.quantities;

/** The unit in which readers are shown a mass. "mcg" is for readers; the code "ug" is not. */
public enum MassUnit {
  MICROGRAM("mcg", 6),
  MILLIGRAM("mg", 9);

  private final String word;
  private final int places;

  MassUnit(String word, int places) {
    this.word = word;
    this.places = places;
  }

  /** "mcg" or "mg". */
  public String word() {
    return word;
  }

  /** The power of ten from this unit to a picogram. */
  int places() {
    return places;
  }
}
