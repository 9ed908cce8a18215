package rungwise.clinic.titration;

import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Marking;
import rungwise.dosing.syringe.UnitScale;
import rungwise.quantities.MarkNumber;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/** The line to which a stopper was really drawn, as typed: a number of the barrel, or a volume. */
public final class DrawnMark {

  private DrawnMark() {}

  /** The volume at that line, or why there is none on this barrel. */
  public static Reading<Volume> read(String text, Barrel barrel) {
    Reading<Volume> volume =
        switch (barrel.marking()) {
          case Marking.UnitLines lines -> MarkNumber.parse(text).map(UnitScale.U_100::volumeAt);
          case Marking.MillilitreLines lines -> Volume.parseMillilitres(text);
          case Marking.NoLines none -> Volume.parseMillilitres(text);
        };
    if (volume.found().filter(Volume.ZERO::equals).isPresent()) {
      return Reading.refused("Nothing was drawn at 0: ask again, or do not record an injection.");
    }
    boolean tooMuch = volume.found().filter(one -> one.isMoreThan(barrel.capacity())).isPresent();
    return tooMuch
        ? Reading.refused("A " + barrel + " does not reach to " + text + ": ask again.")
        : volume;
  }

  /** How a form shows the line of a volume. */
  public static String text(Volume volume, Barrel barrel) {
    return barrel.marking() instanceof Marking.UnitLines
        ? UnitScale.U_100.markAt(volume).number()
        : volume.millilitresText();
  }
}
