package rungwise.dosing.source;

/** Where a clinical number comes from. There is no fourth kind. */
public sealed interface Source {

  /**
   * A text that others can open.
   *
   * @param place section, table or page
   */
  record Published(Citation citation, String place, Seen seen) implements Source {
    @Override
    public String words() {
      String where = place.isEmpty() ? "" : ", " + place;
      return citation.reference() + where + " (" + seen.words() + ")";
    }
  }

  /** What the trade does, without a published source. */
  record CommonPractice(String what) implements Source {
    @Override
    public String words() {
      return "common practice, no source: " + what;
    }
  }

  /** What we chose, and why. */
  record Assumption(String why) implements Source {
    @Override
    public String words() {
      return "assumption: " + why;
    }
  }

  /** The source as a reader sees it. */
  String words();

  static Source read(Citation citation, String place) {
    return new Published(citation, place, Seen.READ);
  }

  static Source secondary(Citation citation, String place) {
    return new Published(citation, place, Seen.READ_IN_SECONDARY_COPY);
  }

  static Source remembered(Citation citation, String place) {
    return new Published(citation, place, Seen.FROM_MEMORY);
  }
}
