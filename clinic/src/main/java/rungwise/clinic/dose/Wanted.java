package rungwise.clinic.dose;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.dose.TypedComposition.NamedAmount;
import rungwise.dosing.guard.DoseGuards;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Dose;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.dosing.syringe.Marking;
import rungwise.dosing.syringe.UnitScale;
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

  /**
   * The dose on a syringe, or why it cannot be drawn there.
   *
   * @param barrel has printed lines
   * @param notices what was understood differently from what was typed
   */
  default DoseReply of(Preparation preparation, Barrel barrel, List<String> notices) {
    return switch (this) {
      case ByVolume by -> atLine(by.volume(), preparation, barrel, notices);
      case ByMark by -> atMark(by.mark(), preparation, barrel, notices);
      case ByContent by -> holding(by, preparation, barrel, notices);
    };
  }

  private static DoseReply atLine(
      Volume volume, Preparation preparation, Barrel barrel, List<String> notices) {
    if (!barrel.hasMarkAt(volume)) {
      return noLine(volume.toString(), ExactVolume.of(volume), preparation, barrel);
    }
    return DoseAnswer.of(new Dose(volume, preparation, barrel), Optional.empty(), notices);
  }

  private static DoseReply atMark(
      MarkNumber mark, Preparation preparation, Barrel barrel, List<String> notices) {
    return switch (barrel.marking()) {
      case Marking.UnitLines lines -> {
        Volume volume = UnitScale.U_100.volumeAt(mark);
        yield barrel.hasMarkAt(volume)
            ? atLine(volume, preparation, barrel, notices)
            : noLine("The " + mark, ExactVolume.of(volume), preparation, barrel);
      }
      case Marking.MillilitreLines lines ->
          new DoseReply.Unfit(
              "A " + barrel + " has no unit marks: give the volume in mL, or another syringe.");
      case Marking.NoLines none -> throw new IllegalStateException("bug: no line on " + barrel);
    };
  }

  private static DoseReply holding(
      ByContent wanted, Preparation preparation, Barrel barrel, List<String> notices) {
    Optional<Ingredient> ingredient = preparation.ingredient(wanted.component());
    if (ingredient.isEmpty()) {
      return new DoseReply.Unfit(
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
      return noLine(given, exact, preparation, barrel);
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

  /** Which lines there are, what the one below holds, and which syringe has a line there. */
  private static DoseReply noLine(
      String given, ExactVolume exact, Preparation preparation, Barrel barrel) {
    String step = barrel.marking().graduationVolume().orElseThrow().toString();
    String sentence =
        given
            + " stands on no line of a "
            + barrel
            + ": its lines are "
            + step
            + " apart and end at "
            + barrel.capacity()
            + ".";
    Optional<Dose> below =
        barrel
            .markAtOrBelow(exact)
            .map(line -> new Dose(line, preparation, barrel))
            .filter(
                dose -> DoseGuards.askWithoutCourse(dose).stream().noneMatch(Verdict::isHardStop));
    List<Barrel> others =
        Barrels.all().stream()
            .filter(one -> one.markAtOrBelow(exact).filter(exact::isExactly).isPresent())
            .toList();
    return new DoseReply.NoLine(sentence, below, others);
  }
}
