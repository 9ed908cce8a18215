package rungwise.checks.topics;

import java.math.BigDecimal;
import java.util.List;
import java.util.function.Function;
import rungwise.dosing.syringe.AirBubble;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.dosing.syringe.DeadSpace;
import rungwise.dosing.syringe.DrawingError;
import rungwise.dosing.syringe.Marking;
import rungwise.dosing.syringe.UnitScale;
import rungwise.dosing.syringe.UnitSpacing;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.MarkNumber;
import rungwise.quantities.Volume;

/** The printed lines of a syringe, what can be read on them, and how far off a volume may be. */
final class BarrelTopics {

  private static final Volume UNIT = UnitScale.U_100.perUnit();

  private BarrelTopics() {}

  static void addTo(TopicTable table) {
    table
        .on("A.readable", "is_drawable", BarrelTopics::isDrawable)
        .on("A.scale", "min_scale_length_mm", BarrelTopics::scaleLength)
        .on("A.scale", "allowed_graduations_units", BarrelTopics::graduations)
        .on("A.scale", "min_mm_per_unit", BarrelTopics::millimetresPerUnit)
        .on("A.scale", "units_error_for_1mm_misread", BarrelTopics::unitsPerMillimetre)
        .on("A.scale", "numbering_interval_units", BarrelTopics::numberedEvery)
        .on("A.tolerance_mL", "graduated_capacity_tolerance_mL", BarrelTopics::tolerance)
        .on("A.tolerance_pct", "graduated_capacity_tolerance_pct", BarrelTopics::tolerancePercent)
        .on("A.tolerance_check", "continuity_at_half", BarrelTopics::gapAtHalf)
        .on("A.bubble", "bubble_volume_uL", in -> Answer.number(bubble(in).microlitres()))
        .on("A.bubble", "bubble_units_U100", in -> Answer.number(units(bubble(in))))
        .on("A.bubble", "delivered_units", BarrelTopics::delivered)
        .on("A.dead_space", "dead_space_limit_mL", BarrelTopics::deadSpaceLimit)
        .on("A.dead_space", "needle_dead_space_mL", BarrelTopics::needleDeadSpace)
        .on("A.dead_space", "waste_mL_per_injection", BarrelTopics::wasteEach)
        .on("G.reading", "half_graduation_error_pct", BarrelTopics::readingError);
  }

  private static Volume units(Input input, String name) {
    return UnitScale.U_100.volumeAt(input.read(name, MarkNumber::parse));
  }

  private static Answer isDrawable(Input input) {
    Volume capacity = units(input, "capacity_units");
    Volume graduation = units(input, "graduation_units");
    ExactVolume wanted = Amounts.steps(input.decimal("units"), UNIT);
    Barrel barrel = barrel(capacity, graduation);
    return Answer.yesOrNo(barrel.markAtOrBelow(wanted).filter(wanted::isExactly).isPresent());
  }

  /** A syringe of that size and graduation; one that is not in the product's table is made. */
  private static Barrel barrel(Volume capacity, Volume graduation) {
    return unitBarrels(capacity).stream()
        .filter(one -> lines(one).graduation().equals(graduation))
        .findFirst()
        .orElseGet(
            () ->
                new Barrel(
                    "row",
                    "syringe of a row",
                    capacity,
                    new Marking.UnitLines(graduation, graduation, 1)));
  }

  private static List<Barrel> unitBarrels(Volume capacity) {
    return Barrels.all().stream()
        .filter(one -> one.capacity().equals(capacity))
        .filter(one -> one.marking() instanceof Marking.UnitLines)
        .toList();
  }

  private static Marking.UnitLines lines(Barrel barrel) {
    return (Marking.UnitLines) barrel.marking();
  }

  /** What all known syringes of the row's size have in common. */
  private static <T> List<T> known(Input input, Function<Barrel, T> property) {
    input.find("scale").ifPresent(BarrelTopics::refuseOtherScale);
    List<T> found =
        unitBarrels(units(input, "capacity_units")).stream().map(property).distinct().toList();
    if (found.isEmpty()) {
      throw new InputFault("no syringe of that size is known");
    }
    return found;
  }

  private static void refuseOtherScale(String scale) {
    if (!scale.equals(UnitScale.U_100.words())) {
      throw new InputFault("syringes of the scale " + scale + " are never ordered or drawn");
    }
  }

  private static Answer scaleLength(Input input) {
    int millimetres = only(known(input, one -> lines(one).scaleMillimetres()));
    return Answer.number(millimetres);
  }

  private static <T> T only(List<T> values) {
    if (values.size() > 1) {
      throw new InputFault("syringes of that size differ: " + values);
    }
    return values.getFirst();
  }

  private static Answer graduations(Input input) {
    List<BigDecimal> steps =
        known(input, one -> unitsOf(lines(one).graduation())).stream().sorted().toList();
    return new Answer.Numbers(steps);
  }

  private static BigDecimal unitsOf(Volume volume) {
    return BigDecimal.valueOf(UnitScale.U_100.markAt(volume).tenths()).movePointLeft(1);
  }

  private static Answer millimetresPerUnit(Input input) {
    double spacing =
        only(known(input, one -> UnitSpacing.of(one).orElseThrow().millimetresPerUnit()));
    return Answer.number(spacing);
  }

  private static Answer unitsPerMillimetre(Input input) {
    double units =
        only(known(input, one -> UnitSpacing.of(one).orElseThrow().unitsPerMillimetre()));
    return Answer.number(units);
  }

  private static Answer numberedEvery(Input input) {
    BigDecimal units = only(known(input, one -> unitsOf(lines(one).numberedEvery())));
    return Answer.number(units);
  }

  private static Answer tolerance(Input input) {
    Volume capacity = input.read("V", Volume::parseMillilitres);
    Volume volume = input.read("v", Volume::parseMillilitres);
    return Answer.number(
        Amounts.millilitresOfNanolitres(DrawingError.toleranceNanolitres(capacity, volume)));
  }

  private static Answer tolerancePercent(Input input) {
    Volume capacity = input.read("V", Volume::parseMillilitres);
    Volume volume = input.read("v", Volume::parseMillilitres);
    long nanolitres = DrawingError.toleranceNanolitres(capacity, volume);
    return Answer.number(new DrawingError(volume, 0, nanolitres).tolerancePercent());
  }

  /**
   * How far the two branches of the tolerance lie apart at half of the capacity: the lower branch,
   * carried on from the two microlitres below half, against the upper one.
   */
  private static Answer gapAtHalf(Input input) {
    Volume capacity = input.read("V", Volume::parseMillilitres);
    Volume microlitre = Volume.ofMicrolitres(1);
    Volume half = new ExactVolume(capacity.microlitres(), 2).roundDownTo(microlitre);
    long last = DrawingError.toleranceNanolitres(capacity, half.minus(microlitre));
    long lastButOne =
        DrawingError.toleranceNanolitres(capacity, half.minus(microlitre).minus(microlitre));
    long step = last - lastButOne;
    refuseOtherFormula(input, capacity, half, step);
    long gap = last + step - DrawingError.toleranceNanolitres(capacity, half);
    return Answer.number(Amounts.millilitresOfNanolitres(gap));
  }

  /** The row names the parts of the formula; they must be the product's. */
  private static void refuseOtherFormula(Input input, Volume capacity, Volume half, long step) {
    BigDecimal full = BigDecimal.valueOf(capacity.microlitres());
    long atNothing = DrawingError.toleranceNanolitres(capacity, Volume.ZERO);
    long atHalf = DrawingError.toleranceNanolitres(capacity, half);
    boolean same =
        isPart(input.decimal("a"), full, atNothing)
            && isPart(input.decimal("b"), BigDecimal.ONE, step)
            && isPart(input.decimal("c"), BigDecimal.valueOf(half.microlitres()), atHalf);
    if (!same) {
      throw new InputFault("the product's tolerance has other parts than a, b and c");
    }
  }

  private static boolean isPart(BigDecimal part, BigDecimal ofMicrolitres, long nanolitres) {
    BigDecimal millilitres = part.multiply(ofMicrolitres).movePointLeft(1 + 2);
    return millilitres.compareTo(Amounts.millilitresOfNanolitres(nanolitres)) == 0;
  }

  private static Answer readingError(Input input) {
    Volume volume = units(input, "units");
    Barrel barrel = barrel(volume, units(input, "graduation"));
    return Answer.number(DrawingError.of(volume, barrel).orElseThrow().readingPercent());
  }

  private static AirBubble bubble(Input input) {
    String name = input.has("diameter_mm") ? "diameter_mm" : "bubble_diameter_mm";
    return new AirBubble(input.decimal(name).doubleValue());
  }

  private static double units(AirBubble bubble) {
    return bubble.units(UnitScale.U_100);
  }

  private static Answer delivered(Input input) {
    return Answer.number(input.decimal("drawn_units").doubleValue() - units(bubble(input)));
  }

  private static Answer deadSpaceLimit(Input input) {
    if (!input.text("standard").equals("ISO 7886-1:2018")) {
      throw new InputFault("no limit of another standard is known");
    }
    return DeadSpace.limit(input.read("nominal_mL", Volume::parseMillilitres))
        .map(limit -> Answer.number(Amounts.millilitres(limit.value())))
        .orElseThrow(() -> new InputFault("no limit for that size was read"));
  }

  private static Answer needleDeadSpace(Input input) {
    return DeadSpace.ofNeedle(input.decimal("gauge").intValueExact())
        .map(space -> Answer.number(Amounts.millilitres(space.value())))
        .orElseThrow(() -> new InputFault("no needle of that gauge was measured"));
  }

  private static Answer wasteEach(Input input) {
    return Answer.number(
        DeadSpace.millilitresEach(
            input.read("annual_mL", Volume::parseMillilitres),
            input.decimal("injections_per_day").intValueExact()));
  }
}
