package rungwise.checks.topics;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Optional;
import rungwise.dosing.syringe.DrawingError;
import rungwise.dosing.syringe.UnitScale;
import rungwise.quantities.Deviation;
import rungwise.quantities.MarkNumber;
import rungwise.quantities.Volume;

/** Marks and volumes, on the right scale and on a wrong one. */
final class MarkTopics {

  private static final Volume UNIT = UnitScale.U_100.perUnit();

  private MarkTopics() {}

  static void addTo(TopicTable table) {
    table
        .on("A.convert", "units_to_mL", MarkTopics::volumeOfUnits)
        .on("A.convert", "mL_to_units", MarkTopics::unitsOfVolume)
        .on("A.mismatch", "units_to_mL", MarkTopics::volumeOfUnits)
        .on("A.mismatch", "units_at_volume", MarkTopics::unitsOfVolume)
        .on("A.mismatch", "volume_ratio_same_mark", MarkTopics::ratioAtSameMark)
        .on("A.mismatch", "overdose_factor", MarkTopics::overdoseFactor)
        .on("A.round_error_pct", "relative_change_pct", MarkTopics::relativeChange)
        .on("A.round_down_to_mark", "round_down_to_graduation", MarkTopics::roundDown)
        .on("A.accuracy", "mean_error_pct", MarkTopics::meanError)
        .on("A.accuracy", "warn_small_volume", MarkTopics::isTooSmall)
        .on("syringe units", MarkTopics::syringeUnits);
  }

  private static Optional<UnitScale> scaleOf(String words) {
    return Arrays.stream(UnitScale.values())
        .filter(scale -> scale.words().equals(words) || scale.words().equals(dashed(words)))
        .findFirst();
  }

  /** "U100" is written without its dash in one of the files. */
  private static String dashed(String words) {
    return words.replaceFirst("^U([0-9])", "U-$1");
  }

  private static Answer volumeOfUnits(Input input) {
    UnitScale scale = input.one("scale", MarkTopics::scaleOf);
    MarkNumber mark = input.read("units", MarkNumber::parse);
    return Answer.number(Amounts.millilitres(scale.volumeAt(mark)));
  }

  private static Answer syringeUnits(Input input) {
    UnitScale scale = input.one("syringe", MarkTopics::scaleOf);
    MarkNumber mark = input.read("units", MarkNumber::parse);
    return Answer.number(Amounts.millilitres(scale.volumeAt(mark)));
  }

  private static Answer unitsOfVolume(Input input) {
    UnitScale scale = input.one("scale", MarkTopics::scaleOf);
    MarkNumber mark = scale.markAt(input.read("mL", Volume::parseMillilitres));
    return Answer.number(unitsOf(mark));
  }

  private static BigDecimal unitsOf(MarkNumber mark) {
    return BigDecimal.valueOf(mark.tenths()).movePointLeft(1);
  }

  private static Answer ratioAtSameMark(Input input) {
    UnitScale actual = input.one("actual_scale", MarkTopics::scaleOf);
    return Answer.number(actual.volumeAtSameMark(input.one("intended_scale", MarkTopics::scaleOf)));
  }

  private static Answer overdoseFactor(Input input) {
    Volume unit = input.one("scale", MarkTopics::scaleOf).perUnit();
    return Answer.number(deviation(input, "intended_units", "drawn_units", unit).factor());
  }

  private static Answer relativeChange(Input input) {
    return Answer.number(deviation(input, "from_units", "to_units", UNIT).percent());
  }

  private static Answer meanError(Input input) {
    return Answer.number(deviation(input, "target_units", "mean_delivered", UNIT).percent());
  }

  private static Deviation deviation(Input input, String meant, String drawn, Volume unit) {
    return new Deviation(
        Amounts.steps(input.decimal(meant), unit), Amounts.steps(input.decimal(drawn), unit));
  }

  private static Answer roundDown(Input input) {
    Volume graduation =
        Amounts.steps(input.decimal("graduation_units"), UNIT).roundDownTo(Volume.ofMicrolitres(1));
    Volume rounded = Amounts.steps(input.decimal("units"), UNIT).roundDownTo(graduation);
    return Answer.number(unitsOf(UnitScale.U_100.markAt(rounded)));
  }

  private static Answer isTooSmall(Input input) {
    Volume volume = UnitScale.U_100.volumeAt(input.read("units", MarkNumber::parse));
    return Answer.yesOrNo(volume.isLessThan(DrawingError.BLOCK_BELOW.value()));
  }
}
