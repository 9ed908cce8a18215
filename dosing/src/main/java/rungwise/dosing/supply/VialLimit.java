package rungwise.dosing.supply;

import rungwise.quantities.TimeSpan;

/** Something that ends the use of a vial. */
public sealed interface VialLimit {

  /** The date on its label. */
  record LabelDate() implements VialLimit {}

  /**
   * So many days of use from its opening, with the last one.
   *
   * @param days 1 or more
   */
  record DaysOpen(int days) implements VialLimit {}

  /** So long of use from the moment at which its powder was dissolved. */
  record Dissolved(TimeSpan usableFor) implements VialLimit {}

  /** It is made for one injection, so it is not kept once it is open. */
  record SingleUse(TimeSpan open) implements VialLimit {}

  /** The limit as a clinician reads it. */
  default String words() {
    return switch (this) {
      case LabelDate label -> "the date on the label";
      case DaysOpen open ->
          open.days() == 1 ? "1 day after opening" : open.days() + " days after opening";
      case Dissolved dissolved -> dissolved.usableFor() + " after it was dissolved";
      case SingleUse once -> "single use: not kept once it is open";
    };
  }
}
