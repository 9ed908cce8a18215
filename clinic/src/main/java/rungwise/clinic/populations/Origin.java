package rungwise.clinic.populations;

/** What a population rests on, as every screen says it beside its numbers. */
public enum Origin {
  PUBLISHED_SUMMARIES(
      "Calibrated to published summaries, not to this clinic.",
      "No record of any person is behind it. Where it misses published figures stands in the model"
          + " card; for men with diabetes it expects too much of a dose."),
  ASSUMPTION(
      "An assumption: no published table says what a volume of a mixture does.",
      "Every number in it is assumed, and wide. Nothing has been measured."),
  FITTED_HERE(
      "Fitted to the reports of this clinic's own men.",
      "What speaks against it, and how well it predicts reports, was shown before it was signed."),
  BROUGHT_IN(
      "Brought in from a file: how well it fits the men of this clinic was not checked here.",
      "Read how it was made, and from whose injections, before it is signed.");

  private final String caveat;
  private final String more;

  Origin(String caveat, String more) {
    this.caveat = caveat;
    this.more = more;
  }

  /** One sentence that stands wherever a number of it stands. */
  public String caveat() {
    return caveat;
  }

  /** What whoever signs it reads too. */
  public String more() {
    return more;
  }
}
