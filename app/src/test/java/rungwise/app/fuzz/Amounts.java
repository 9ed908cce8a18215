package rungwise.app.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.List;
import rungwise.clinic.dose.TypedComposition;
import rungwise.clinic.dose.Wanted;
import rungwise.clinic.titration.DrawnMark;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Acidity;
import rungwise.quantities.Concentration;
import rungwise.quantities.DoseTextLint;
import rungwise.quantities.GasPressure;
import rungwise.quantities.MarkNumber;
import rungwise.quantities.Mass;
import rungwise.quantities.MassUnit;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** Every amount that a person or a file may give: by each reader in turn. */
final class Amounts implements Target.Reader {

  static final List<String> SEEDS =
      List.of(
          "0.2",
          "0.2 mL",
          "0,2",
          ".5",
          "1.0",
          "0.2 cc",
          "12.5",
          "20 units",
          "20 mcg",
          "0.02 mg",
          "17.65 mg/mL",
          "20 mcg/mL",
          "1 mg in 5 mL",
          "45 min",
          "120",
          "2 h",
          "7.25",
          "38 mmHg",
          "5 kPa",
          "alprostadil=2.5mcg",
          "alprostadil=20mcg/mL,papaverine=30mg/mL,phentolamine=1mg/mL",
          "9223372036854775807",
          "\u0663");

  @Override
  public void read(byte[] input) {
    String text = new String(input, StandardCharsets.UTF_8);
    Hold.readsBack(text, Volume::parse, Amounts::printed);
    Hold.readsBack(text, Volume::parseMillilitres, Volume::millilitresText);
    Hold.readsBack(text, Mass::parse, Amounts::printed);
    Hold.sound(Mass.parseMicrograms(text));
    Hold.sound(Mass.parseMilligrams(text));
    Hold.readsBack(text, Concentration::parse, Amounts::printed);
    for (MassUnit unit : MassUnit.values()) {
      Hold.sound(Concentration.parsePerMillilitre(unit, text));
    }
    Hold.readsBack(text, MarkNumber::parse, MarkNumber::number);
    Hold.readsBack(text, TimeSpan::parseMinutes, TimeSpan::minutesText);
    Hold.readsBack(text, TimeSpan::parseMinutesFromZero, TimeSpan::minutesText);
    Hold.sound(TimeSpan.parseDecimalMinutes(text));
    Hold.sound(GasPressure.parse(text)).found().ifPresent(Amounts::printed);
    Hold.readsBack(text, Acidity::parse, Acidity::toString);
    Hold.sound(Wanted.ByContent.read(text));
    Hold.sound(TypedComposition.read(text));
    for (Barrel barrel : Barrels.all()) {
      Hold.sound(DrawnMark.read(text, barrel))
          .found()
          .ifPresent(
              volume ->
                  Hold.readsBack(
                      DrawnMark.text(volume, barrel),
                      one -> DrawnMark.read(one, barrel),
                      one -> DrawnMark.text(one, barrel)));
    }
  }

  /**
   * As it stands on a page, where it must not be misread. Its commas between thousands are left
   * out, because no reader takes them: what is typed with a comma may be meant as a point.
   */
  private static String printed(Object amount) {
    String text = amount.toString();
    Hold.that(
        DoseTextLint.faultsInDose(text).isEmpty(),
        () -> text + ": " + DoseTextLint.faultsInDose(text));
    return text.replace(",", "");
  }
}
