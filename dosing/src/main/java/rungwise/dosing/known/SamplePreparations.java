package rungwise.dosing.known;

import java.util.List;
import java.util.Optional;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * Published compositions that a clinic may start its own records from. None is a standard: a clinic
 * compares each with the label in its hand before it is used.
 */
public final class SamplePreparations {

  private static final Volume ONE_MILLILITRE = Volume.ofMicrolitres(1000);

  /** US label, vial: in 1 mL; 24 hours of use once dissolved is from memory. */
  private static final Form POWDER = new Form.Powder(ONE_MILLILITRE, TimeSpan.ofHours(24));

  /** US vial and syringe label: above 60 mcg not recommended. */
  private static final String ALPROSTADIL_LIMIT = "60 mcg";

  public static final Preparation ALPROSTADIL_20 =
      alone("alprostadil-20", "Alprostadil 20", "20 mcg/mL");
  public static final Preparation ALPROSTADIL_40 =
      alone("alprostadil-40", "Alprostadil 40", "40 mcg/mL");

  /** Bechara, J Urol 1997;157:2132. */
  public static final Preparation TWO_DRUG =
      mixture(
          "two-drug-30-0.5",
          "Two-drug mixture 30/0.5",
          of(Component.PAPAVERINE, "30 mg/mL"),
          of(Component.PHENTOLAMINE, "0.5 mg/mL"));

  /** The usual compounded strength; no single defining paper (from memory). */
  public static final Preparation THREE_DRUG =
      mixture(
          "three-drug-30-1-10",
          "Three-drug mixture 30/1/10",
          of(Component.PAPAVERINE, "30 mg/mL"),
          of(Component.PHENTOLAMINE, "1 mg/mL"),
          of(Component.ALPROSTADIL, "10 mcg/mL"));

  /** A stronger compounded mixture (from memory). */
  public static final Preparation THREE_DRUG_STRONGER =
      mixture(
          "three-drug-30-2-20",
          "Three-drug mixture 30/2/20",
          of(Component.PAPAVERINE, "30 mg/mL"),
          of(Component.PHENTOLAMINE, "2 mg/mL"),
          of(Component.ALPROSTADIL, "20 mcg/mL"));

  /** Bennett, J Urol 1991;146:1564, as widely cited (from memory). */
  public static final Preparation THREE_DRUG_BENNETT =
      mixture(
          "three-drug-17.65-0.59-5.88",
          "Three-drug mixture 17.65/0.59/5.88",
          of(Component.PAPAVERINE, "17.65 mg/mL"),
          of(Component.PHENTOLAMINE, "0.59 mg/mL"),
          of(Component.ALPROSTADIL, "5.88 mcg/mL"));

  /** Montorsi, J Urol 1993;149:1291. */
  public static final Preparation FOUR_DRUG =
      mixture(
          "four-drug-12.1-1.01-10.1-0.15",
          "Four-drug mixture 12.1/1.01/10.1/0.15",
          of(Component.PAPAVERINE, "12.1 mg/mL"),
          of(Component.PHENTOLAMINE, "1.01 mg/mL"),
          of(Component.ALPROSTADIL, "10.1 mcg/mL"),
          of(Component.ATROPINE, "0.15 mg/mL"));

  private SamplePreparations() {}

  public static List<Preparation> all() {
    return List.of(
        ALPROSTADIL_20,
        ALPROSTADIL_40,
        TWO_DRUG,
        THREE_DRUG,
        THREE_DRUG_STRONGER,
        THREE_DRUG_BENNETT,
        FOUR_DRUG);
  }

  /** The sample of that id. */
  public static Optional<Preparation> of(String id) {
    return all().stream().filter(one -> one.id().value().equals(id)).findFirst();
  }

  private static Preparation alone(String id, String name, String strength) {
    var alprostadil =
        new Ingredient(
            Component.ALPROSTADIL,
            Concentration.parse(strength).orThrow(),
            Optional.of(Mass.parse(ALPROSTADIL_LIMIT).orThrow()));
    return new Preparation(
        new PreparationId(id),
        name,
        POWDER,
        List.of(alprostadil),
        ONE_MILLILITRE,
        Optional.empty());
  }

  private static Preparation mixture(String id, String name, Ingredient... ingredients) {
    return new Preparation(
        new PreparationId(id),
        name,
        new Form.Solution(),
        List.of(ingredients),
        ONE_MILLILITRE,
        Optional.empty());
  }

  private static Ingredient of(Component component, String strength) {
    return new Ingredient(component, Concentration.parse(strength).orThrow(), Optional.empty());
  }
}
