package rungwise.dosing.known;

import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** How a preparation reaches the clinic. */
public sealed interface Form {

  /** A vial of solution. */
  record Solution() implements Form {}

  /**
   * A vial of powder, to be dissolved before use.
   *
   * @param diluent the volume that makes the stated strength
   * @param usableFor how long it may be used once dissolved
   */
  record Powder(Volume diluent, TimeSpan usableFor) implements Form {}

  /** A prefilled syringe. */
  record Prefilled(Volume fill) implements Form {}

  /** A cartridge for a reusable device. */
  record Cartridge(Volume fill) implements Form {}

  /** The form as a clinician reads it. */
  default String words() {
    return switch (this) {
      case Solution solution -> "solution in a vial";
      case Powder powder ->
          "powder, dissolved in " + powder.diluent() + ", to be used within " + powder.usableFor();
      case Prefilled prefilled -> "prefilled syringe of " + prefilled.fill();
      case Cartridge cartridge -> "cartridge of " + cartridge.fill();
    };
  }
}
