package rungwise.dosing.screening;

import java.util.Arrays;
import java.util.Comparator;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Seen;
import rungwise.dosing.source.Source;

/** Two published tables class heart failure differently; the screening goes by the stricter. */
public enum HeartFailure {
  NATURE_REVIEWS_2016(CardiacRisk.INTERMEDIATE, CardiacRisk.HIGH, CardiacRisk.SOURCE),
  EAU_2013(
      CardiacRisk.LOW,
      CardiacRisk.INTERMEDIATE,
      new Source.Published(Citation.CARDIAC_RISK_EAU_2013, "", Seen.READ_IN_SECONDARY_COPY));

  private static final int MOST = 4;
  private static final int THIRD = 3;

  private final CardiacRisk second;
  private final CardiacRisk third;
  private final Source source;

  HeartFailure(CardiacRisk second, CardiacRisk third, Source source) {
    this.second = second;
    this.third = third;
    this.source = source;
  }

  public Source source() {
    return source;
  }

  /**
   * The cardiac class of an NYHA class.
   *
   * @throws IllegalArgumentException if it is not 1 to 4
   */
  public CardiacRisk riskOf(int nyha) {
    if (nyha < 1 || nyha > MOST) {
      throw new IllegalArgumentException("bug: NYHA class " + nyha);
    }
    return switch (nyha) {
      case 1 -> CardiacRisk.LOW;
      case 2 -> second;
      case THIRD -> third;
      default -> CardiacRisk.HIGH;
    };
  }

  /** The stricter class of the two tables. */
  public static CardiacRisk stricter(int nyha) {
    return Arrays.stream(values())
        .map(table -> table.riskOf(nyha))
        .max(Comparator.naturalOrder())
        .orElseThrow();
  }
}
