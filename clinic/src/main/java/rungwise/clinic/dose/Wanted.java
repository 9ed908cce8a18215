package rungwise.clinic.dose;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.clinic.dose.TypedComposition.NamedAmount;
import rungwise.dosing.known.Barrel;
import rungwise.dosing.known.Barrels;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Dose;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Marking;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.UnitScale;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.MarkNumber;
import rungwise.quantities.Mass;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/** How the dose was asked for. */
public sealed interface Wanted {

  /** A volume, which must stand on a line of the syringe. */
  record ByVolume(Volume volume) implements Wanted {}

  /** The number of a unit line. */
  record ByMark(MarkNumber mark) implements Wanted {}

  /** The mass of one component, which becomes a volume by rounding down to a line. */
  record ByContent(Component component, Mass mass) implements Wanted {

    private static final String EXAMPLE = "alprostadil=2.5mcg";

    /** A component with a mass, such as "alprostadil=2.5mcg". */
    public static Reading<Wanted> read(String text) {
      Optional<NamedAmount> named = NamedAmount.of(text);
      if (named.isEmpty()) {
        return Reading.refused(
            "\"" + text + "\" is not a component with a mass: write it such as " + EXAMPLE);
      }
      return named
          .get()
          .component()
          .map(
              known ->
                  Mass.parse(named.get().amount()).<Wanted>map(mass -> new ByContent(known, mass)))
          .orElseGet(() -> Reading.refused(TypedComposition.unknown(named.get().name())));
    }

    @Override
    public String toString() {
      return mass.in(component.unit()) + " of " + component.fullName();
    }
  }

  /** The dose on a syringe, or why it cannot be drawn there. */
  default Reading<DoseAnswer> of(Preparation preparation, Barrel barrel, List<String> notices) {
    return switch (this) {
      case ByVolume by -> atLine(by.volume(), preparation, barrel, notices);
      case ByMark by -> atMark(by.mark(), preparation, barrel, notices);
      case ByContent by -> holding(by, preparation, barrel, notices);
    };
  }

  private static Reading<DoseAnswer> atLine(
      Volume volume, Preparation preparation, Barrel barrel, List<String> notices) {
    if (!barrel.hasMarkAt(volume)) {
      return Reading.refused(noLine(volume.toString(), ExactVolume.of(volume), barrel));
    }
    return DoseAnswer.of(new Dose(volume, preparation, barrel), Optional.empty(), notices);
  }

  private static Reading<DoseAnswer> atMark(
      MarkNumber mark, Preparation preparation, Barrel barrel, List<String> notices) {
    return switch (barrel.marking()) {
      case Marking.UnitLines lines -> {
        Volume volume = UnitScale.U_100.volumeAt(mark);
        yield barrel.hasMarkAt(volume)
            ? atLine(volume, preparation, barrel, notices)
            : Reading.refused(noLine("The " + mark, ExactVolume.of(volume), barrel));
      }
      case Marking.MillilitreLines lines ->
          Reading.refused(
              "A " + barrel + " has no unit marks: give the volume in mL, or another syringe.");
      case Marking.NoLines none -> throw new IllegalStateException("bug: no line on " + barrel);
    };
  }

  private static Reading<DoseAnswer> holding(
      ByContent wanted, Preparation preparation, Barrel barrel, List<String> notices) {
    Optional<Ingredient> ingredient = preparation.ingredient(wanted.component());
    if (ingredient.isEmpty()) {
      return Reading.refused(
          "There is no "
              + wanted.component().fullName()
              + " in "
              + preparation
              + ": ask for a component that it holds.");
    }
    ExactVolume exact = ingredient.get().strength().volumeOf(wanted.mass());
    Optional<Volume> line = barrel.markAtOrBelow(exact);
    if (line.isEmpty()) {
      String given = wanted + ", which is " + exact + ",";
      return Reading.refused(noLine(given, exact, barrel));
    }
    if (exact.isExactly(line.get())) {
      return DoseAnswer.of(new Dose(line.get(), preparation, barrel), Optional.of(exact), notices);
    }
    String rounded =
        wanted
            + " would be "
            + exact
            + ", between two lines: rounded down to "
            + line.get()
            + ", which holds "
            + ingredient.get().contentWords(line.get())
            + ".";
    return DoseAnswer.of(
        new Dose(line.get(), preparation, barrel),
        Optional.of(exact),
        Stream.concat(notices.stream(), Stream.of(rounded)).toList());
  }

  /** What was asked for, which lines there are, and which syringe has the line or the room. */
  private static String noLine(String given, ExactVolume exact, Barrel barrel) {
    String step = barrel.marking().graduationVolume().orElseThrow().toString();
    String below =
        barrel
            .markAtOrBelow(exact)
            .map(line -> " The line below is " + new LineWords(line, barrel) + ".")
            .orElse("");
    String others =
        Barrels.all().stream()
            .filter(one -> one.markAtOrBelow(exact).filter(exact::isExactly).isPresent())
            .map(one -> one.token() + " (" + one + ")")
            .collect(Collectors.joining(", "));
    return given
        + " stands on no line of a "
        + barrel
        + ": its lines are "
        + step
        + " apart and end at "
        + barrel.capacity()
        + "."
        + below
        + (others.isEmpty()
            ? " No syringe known here has a line there: ask for another dose or preparation."
            : " A line there is on: " + others + ".");
  }

  /** "0.06 mL (6-unit mark on a 0.5 mL U-100 syringe)". */
  record LineWords(Volume line, Barrel barrel) {
    @Override
    public String toString() {
      return line + " (" + barrel.markWords(line) + ")";
    }
  }
}
