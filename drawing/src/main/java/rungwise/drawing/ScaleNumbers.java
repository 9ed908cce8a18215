package rungwise.drawing;

import rungwise.quantities.MarkNumber;
import rungwise.quantities.Volume;

/** What the printed numbers of a syringe count. */
public enum ScaleNumbers {
  /** Hundredths of a millilitre, as on a U-100 insulin syringe: 0.2 mL is printed 20. */
  U_100_UNITS {
    @Override
    public String at(Volume line) {
      return line.equals(Volume.ZERO) ? "0" : new MarkNumber(line.microlitres()).number();
    }

    @Override
    boolean isPrintableEvery(Volume step) {
      return step.isMultipleOf(ONE_UNIT);
    }
  },

  /** Millilitres: 0.2 mL is printed 0.2. */
  MILLILITRES {
    @Override
    public String at(Volume line) {
      return line.millilitresText();
    }

    @Override
    boolean isPrintableEvery(Volume step) {
      return step.isMoreThan(Volume.ZERO);
    }
  };

  private static final Volume ONE_UNIT = Volume.ofMicrolitres(10);

  /** The number of a line, as it is printed: "20" or "0.2". A U-100 unit is ten microlitres. */
  public abstract String at(Volume line);

  /** Whether lines that far apart can be numbered: an insulin syringe prints whole units. */
  abstract boolean isPrintableEvery(Volume step);
}
