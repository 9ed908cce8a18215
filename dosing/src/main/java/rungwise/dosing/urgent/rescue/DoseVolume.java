package rungwise.dosing.urgent.rescue;

import java.util.ArrayList;
import java.util.List;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.dosing.syringe.Barrel;
import rungwise.quantities.Concentration;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.Mass;
import rungwise.quantities.Volume;

/** The volume that holds a dose of the rescue exactly, on a syringe that draws it, or why not. */
public sealed interface DoseVolume {

  /** The smallest of the published doses; below it a dose is typed twice. */
  Sourced<Mass> LEAST_DOSE =
      new Sourced<>(
          Mass.ofPicograms(100_000_000),
          Source.secondary(Citation.AUA_PRIAPISM_2021, "100 to 500 mcg every 3 to 5 min"));

  /** The largest of the published doses; above it a dose is typed twice. */
  Sourced<Mass> MOST_DOSE =
      new Sourced<>(
          Mass.ofPicograms(500_000_000),
          Source.secondary(Citation.AUA_PRIAPISM_2021, "100 to 500 mcg every 3 to 5 min"));

  /** It is drawn. */
  record Drawn(Mass dose, Concentration of, Part part) implements DoseVolume {
    public Drawn {
      if (!of.in(part.volume()).equals(dose)) {
        throw new IllegalArgumentException("bug: " + part + " of " + of + " is not " + dose);
      }
    }
  }

  /** Every reason at once. */
  record Refused(List<Refusal> why) implements DoseVolume {
    public Refused {
      why = List.copyOf(why);
    }
  }

  /** The volume of a dose in a strength that may be given. */
  static DoseVolume of(Twice<Mass> dose, Concentration of, List<Barrel> syringes) {
    var why = new ArrayList<>(refusals(dose));
    why.addAll(Mixing.undiluted(of));
    ExactVolume exact = of.volumeOf(dose.value());
    Volume down = exact.roundDownTo(Volume.ofMicrolitres(1));
    var part = Part.of(down, syringes).filter(drawn -> exact.isExactly(drawn.volume()));
    if (part.isEmpty() && dose.value().picograms() != 0) {
      why.add(new Refusal.NotDrawable(Asked.DOSE, exact));
    }
    return why.isEmpty() ? new Drawn(dose.value(), of, part.orElseThrow()) : new Refused(why);
  }

  /** What forbids to go by a dose as it was typed. */
  static List<Refusal> refusals(Twice<Mass> dose) {
    if (dose.value().picograms() == 0) {
      return List.of(new Refusal.NoDose());
    }
    return dose.refusals(Asked.DOSE, isUnusual(dose.value()));
  }

  /** Whether a dose lies outside what is published. */
  static boolean isUnusual(Mass dose) {
    return dose.isMoreThan(MOST_DOSE.value()) || LEAST_DOSE.value().isMoreThan(dose);
  }
}
