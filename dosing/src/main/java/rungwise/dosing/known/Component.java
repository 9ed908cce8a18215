package rungwise.dosing.known;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Optional;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.MassUnit;

/** A drug that a vial may hold. Every strength is a strength of the salt that is named here. */
public enum Component {
  PAPAVERINE(
      "papaverine",
      "papaverine hydrochloride",
      MassUnit.MILLIGRAM,
      Optional.of(
          new Sourced<>(
              new SaltBasis(new BigDecimal("339.385"), new BigDecimal("375.85")),
              Source.read(Citation.PAPAVERINE_DRUG_RECORD, "")))),
  PHENTOLAMINE(
      "phentolamine",
      "phentolamine mesylate",
      MassUnit.MILLIGRAM,
      Optional.of(
          new Sourced<>(
              new SaltBasis(new BigDecimal("281.35"), new BigDecimal("377.46")),
              new Source.Assumption("molar masses from memory, to be checked")))),
  ALPROSTADIL("alprostadil", "alprostadil", MassUnit.MICROGRAM, Optional.empty()),
  ATROPINE("atropine", "atropine sulfate", MassUnit.MILLIGRAM, Optional.empty());

  private final String token;
  private final String fullName;
  private final MassUnit unit;
  private final Optional<Sourced<SaltBasis>> saltBasis;

  Component(String token, String fullName, MassUnit unit, Optional<Sourced<SaltBasis>> saltBasis) {
    this.token = token;
    this.fullName = fullName;
    this.unit = unit;
    this.saltBasis = saltBasis;
  }

  /** Its short name, in files and where the salt has been stated: "papaverine". */
  public String token() {
    return token;
  }

  /** Its name with the salt: "papaverine hydrochloride". */
  public String fullName() {
    return fullName;
  }

  /** The unit in which its masses and strengths are written. */
  public MassUnit unit() {
    return unit;
  }

  /** How much of the salt is base, where that is known. */
  public Optional<Sourced<SaltBasis>> saltBasis() {
    return saltBasis;
  }

  /** The component of a short or a full name. */
  public static Optional<Component> of(String name) {
    return Arrays.stream(values())
        .filter(component -> component.token.equals(name) || component.fullName.equals(name))
        .findFirst();
  }
}
