package rungwise.dosing.known;

/** A tablet for erections: a PDE5 inhibitor. */
public enum Tablet {
  SILDENAFIL("sildenafil"),
  TADALAFIL("tadalafil"),
  TADALAFIL_DAILY("tadalafil, a daily low dose"),
  VARDENAFIL("vardenafil"),
  AVANAFIL("avanafil"),
  OTHER("another tablet for erections, or not known which");

  private final String words;

  Tablet(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** Whether a prescriber may let him go on with it. */
  public boolean isDailyLow() {
    return this == TADALAFIL_DAILY;
  }
}
