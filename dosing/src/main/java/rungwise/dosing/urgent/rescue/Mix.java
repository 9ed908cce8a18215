package rungwise.dosing.urgent.rescue;

import java.util.Optional;
import rungwise.quantities.Concentration;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.Mass;
import rungwise.quantities.Volume;

/**
 * One dilution: so much of a stronger solution and so much saline make a weaker one. The drug in it
 * is exactly the drug that was put in.
 *
 * @param from the strength of what is diluted
 * @param stock how much of it, more than 0
 * @param saline how much saline, more than 0
 * @param gives the strength of both together, below the first
 */
public record Mix(Concentration from, Volume stock, Volume saline, Concentration gives) {

  public Mix {
    if (!stock.isMoreThan(Volume.ZERO)
        || !saline.isMoreThan(Volume.ZERO)
        || !from.in(stock).equals(gives.in(stock.plus(saline)))) {
      throw new IllegalArgumentException(
          "bug: " + stock + " of " + from + " and " + saline + " make no " + gives);
    }
  }

  /** What a volume of stock and a volume of saline make; empty if that is no whole strength. */
  public static Optional<Mix> adding(Concentration from, Volume stock, Volume saline) {
    Mass drug = from.in(stock);
    Volume total = stock.plus(saline);
    if (drug.picograms() == 0 || drug.picograms() % total.microlitres() != 0) {
      return Optional.empty();
    }
    return dilutes(from, stock, total, Concentration.of(drug, total));
  }

  /** The dilution of a whole volume of stock; empty if it takes no whole volume of saline. */
  public static Optional<Mix> ofStock(Concentration from, Volume stock, Concentration wanted) {
    return whole(wanted.volumeOf(from.in(stock)))
        .flatMap(total -> dilutes(from, stock, total, wanted));
  }

  /** The dilution that makes a total; empty if it takes no whole volume of stock. */
  public static Optional<Mix> toTotal(Concentration from, Concentration wanted, Volume total) {
    return whole(from.volumeOf(wanted.in(total)))
        .flatMap(stock -> dilutes(from, stock, total, wanted));
  }

  private static Optional<Volume> whole(ExactVolume exact) {
    Volume down = exact.roundDownTo(Volume.ofMicrolitres(1));
    return Optional.of(down).filter(exact::isExactly);
  }

  private static Optional<Mix> dilutes(
      Concentration from, Volume stock, Volume total, Concentration gives) {
    return stock.isMoreThan(Volume.ZERO) && total.isMoreThan(stock)
        ? Optional.of(new Mix(from, stock, total.minus(stock), gives))
        : Optional.empty();
  }

  /** Both together. */
  public Volume total() {
    return stock.plus(saline);
  }
}
