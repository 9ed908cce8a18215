package rungwise.dosing.strength;

import java.util.Arrays;
import java.util.Optional;
import rungwise.dosing.known.Component;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;

/** What was found of a drug after some days at some degrees. */
public enum Measured {
  ALPROSTADIL_WARM(Component.ALPROSTADIL, In.SOLUTION, 25, 5, 86.4),
  PAPAVERINE_WARM(Component.PAPAVERINE, In.SOLUTION, 25, 5, 99.6),
  PHENTOLAMINE_WARM(Component.PHENTOLAMINE, In.SOLUTION, 25, 5, 98.4),
  ALPROSTADIL_COLD(Component.ALPROSTADIL, In.SOLUTION, 4, 133, 88.0),
  PAPAVERINE_COLD(Component.PAPAVERINE, In.SOLUTION, 4, 133, 98.7),
  PHENTOLAMINE_COLD(Component.PHENTOLAMINE, In.SOLUTION, 4, 133, 97.2),
  ALPROSTADIL_DRY_WARM(Component.ALPROSTADIL, In.DRIED, 25, Measured.TWO_YEARS, 93.3),
  PAPAVERINE_DRY_WARM(Component.PAPAVERINE, In.DRIED, 25, Measured.TWO_YEARS, 98.4),
  PHENTOLAMINE_DRY_WARM(Component.PHENTOLAMINE, In.DRIED, 25, Measured.TWO_YEARS, 96.3),
  ALPROSTADIL_DRY_COLD(Component.ALPROSTADIL, In.DRIED, 4, Measured.TWO_YEARS, 98.7),
  PAPAVERINE_DRY_COLD(Component.PAPAVERINE, In.DRIED, 4, Measured.TWO_YEARS, 99.7),
  PHENTOLAMINE_DRY_COLD(Component.PHENTOLAMINE, In.DRIED, 4, Measured.TWO_YEARS, 98.9),
  ALPROSTADIL_IN_SALINE(Component.ALPROSTADIL, In.SALINE, 37, 32, 25);

  /** What it was in. What was found in one says nothing of another. */
  public enum In {
    /** All three drugs together, ready to be drawn. */
    SOLUTION,
    /** All three drugs together, freeze-dried. */
    DRIED,
    /** Alone in saline of pH 4.5. */
    SALINE
  }

  /** 24 months as days. */
  static final int TWO_YEARS = 730;

  private static final int WHOLE = 100;

  private final Component drug;
  private final In medium;
  private final int celsius;
  private final int days;
  private final double percent;

  Measured(Component drug, In medium, int celsius, int days, double percent) {
    this.drug = drug;
    this.medium = medium;
    this.celsius = celsius;
    this.days = days;
    this.percent = percent;
  }

  /** The finding for a drug in a medium at these degrees after these days, if there is one. */
  public static Optional<Measured> of(Component drug, In medium, int celsius, int days) {
    return Arrays.stream(values())
        .filter(one -> one.drug == drug && one.medium == medium)
        .filter(one -> one.celsius == celsius && one.days == days)
        .findFirst();
  }

  public int celsius() {
    return celsius;
  }

  public int days() {
    return days;
  }

  /** Percent of what there was at first. */
  public double percent() {
    return percent;
  }

  /** The rate by day, if the loss is of the first order. */
  public Decay decay() {
    return Decay.leaving(Decay.Order.FIRST, percent / WHOLE, days);
  }

  public Source source() {
    return medium == In.SALINE
        ? Source.read(Citation.YOUNGER_1986, "pH 4.5")
        : Source.read(Citation.STABILITY_2003, "abstract");
  }
}
