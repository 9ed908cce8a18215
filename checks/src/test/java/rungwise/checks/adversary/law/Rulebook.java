package rungwise.checks.adversary.law;

/**
 * The numbers of the protocols that the adversary's clinic uses, said again.
 *
 * @param name of the protocol
 * @param freshDays for how many days a solution counts as fresh
 * @param partials partial responses in a row before a step up
 * @param secondInVisit whether a second dose may follow
 * @param readyMonths for how many months what was shown for home holds; 0 without end
 */
public record Rulebook(
    String name, int freshDays, int partials, boolean secondInVisit, int readyMonths) {

  public static final Rulebook LABEL = new Rulebook("us-vial-syringe-label", 1, 1, true, 0);
  public static final Rulebook LONGER_FRESH = new Rulebook("adversary-label", 30, 1, true, 12);
  public static final Rulebook UK = new Rulebook("uk-label", 1, 1, false, 0);
  public static final Rulebook MIXTURE = mixture("cautious-mixture");
  public static final Rulebook WEAKER_MIXTURE = mixture("adversary-weaker");
  public static final Rulebook STRONGER_MIXTURE = mixture("adversary-stronger");

  /** For every protocol here. */
  public static final long SPACING = 24 * 60;

  public static final int IN_SEVEN_DAYS = 3;

  /** At least as long as 3 months between two examinations, and as 30 days of grace after them. */
  public static final long EXAMINATION = 93 * 24 * 60;

  public static final long GRACE = 31 * 24 * 60;

  /** At least as long as 12 months, after which a dose is tested again. */
  public static final long LAPSE = 367 * 24 * 60;

  private static Rulebook mixture(String name) {
    return new Rulebook(name, 30, 1, /* secondInVisit= */ false, /* readyMonths= */ 0);
  }
}
