package rungwise.dosing.known;

import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.quantities.TimeSpan;

/**
 * A published way to name long erections. The words differ between schemes, so they are shown only
 * with the scheme's name, and only minutes are ever stored.
 */
public enum DurationScheme {
  US_LABEL_TRIALS(
      "US label trials",
      Source.read(Citation.US_SYRINGE_LABEL, "5.1: prolonged 4 to 6 h, priapism over 6 h")),
  EAU("EAU", Source.read(Citation.EAU_PRIAPISM_2015, "up to 4 h prolonged, over 4 h priapism"));

  /** What a scheme calls a duration. */
  public enum Name {
    NO_NAME("no name in this scheme"),
    NOT_PROLONGED("not prolonged"),
    PROLONGED_ERECTION("prolonged erection"),
    PRIAPISM("priapism");

    private final String words;

    Name(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  private static final TimeSpan FOUR_HOURS = TimeSpan.ofHours(4);
  private static final TimeSpan SIX_HOURS = TimeSpan.ofHours(6);

  private final String words;
  private final Source source;

  DurationScheme(String words, Source source) {
    this.words = words;
    this.source = source;
  }

  public String words() {
    return words;
  }

  public Source source() {
    return source;
  }

  /**
   * The scheme's word for a duration. "Up to 4 h prolonged" does not say from when on, so that text
   * has no word for 4 h and less.
   */
  public Name nameOf(TimeSpan duration) {
    return switch (this) {
      case US_LABEL_TRIALS ->
          duration.isMoreThan(SIX_HOURS)
              ? Name.PRIAPISM
              : duration.isLessThan(FOUR_HOURS) ? Name.NOT_PROLONGED : Name.PROLONGED_ERECTION;
      case EAU -> duration.isMoreThan(FOUR_HOURS) ? Name.PRIAPISM : Name.NO_NAME;
    };
  }
}
