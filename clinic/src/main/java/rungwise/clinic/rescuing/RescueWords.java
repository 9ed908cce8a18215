package rungwise.clinic.rescuing;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.rescue.RescueWord;
import rungwise.dosing.urgent.rescue.Asked;
import rungwise.dosing.urgent.rescue.GasReading;
import rungwise.dosing.urgent.rescue.LogVerdict;
import rungwise.dosing.urgent.rescue.LogVerdict.Reason;
import rungwise.dosing.urgent.rescue.RescueLimits;
import rungwise.dosing.urgent.rescue.RescueLog.Answer;
import rungwise.dosing.urgent.rescue.RescueLog.Flag;
import rungwise.dosing.urgent.rescue.RescueLog.Side;
import rungwise.dosing.urgent.rescue.StrengthWords;
import rungwise.quantities.Mass;
import rungwise.quantities.MassUnit;

/** What was written in a rescue, in words. */
public final class RescueWords {

  private static final List<String> HOW_MANY = List.of("none", "one", "two");

  private RescueWords() {}

  /** One word of the log. */
  public static String of(RescueWord word, ClinicTime time) {
    return switch (word) {
      case RescueWord.Given given ->
          "Phenylephrine given at "
              + time.words(given.at())
              + ": "
              + amount(given)
              + ", "
              + side(given.side())
              + given.before().map(vitals -> ", before it " + vitals.words()).orElse("")
              + ", given by "
              + given.givenBy()
              + ", "
              + checked(given.checkedBy());
      case RescueWord.Measured measured ->
          "Blood pressure at " + time.words(measured.at()) + ": " + measured.vitals().words();
      case RescueWord.GasTaken gas ->
          "Blood gas of " + time.words(gas.at()) + ": " + values(gas) + ". " + says(gas.reading());
      case RescueWord.Prepared prepared ->
          "Phenylephrine "
              + mcg(prepared.dose())
              + " prepared at "
              + time.words(prepared.at())
              + ", not given by this entry, "
              + checked(prepared.secondPerson())
              + overridden(prepared.overridden());
      case RescueWord.Ticked ticked ->
          "Done at "
              + time.words(ticked.at())
              + ", said by "
              + ticked.by().words()
              + ": "
              + ticked.words();
      case RescueWord.Struck struck -> "An entry of the rescue is struck; it stays to be read";
    };
  }

  private static String checked(Optional<String> by) {
    return by.map(name -> "checked by " + name).orElse("checked by nobody");
  }

  private static String overridden(List<LogVerdict.Kind> reasons) {
    return reasons.isEmpty()
        ? ""
        : ". It was held, and the treating clinician went on: "
            + reasons.stream().map(RescueWords::of).collect(Collectors.joining("; "));
  }

  /** Volume first, then content. */
  static String amount(RescueWord.Given given) {
    String volume = given.volume().map(one -> one + " of ").orElse("volume not known, ");
    String strength = given.strength().map(StrengthWords::of).orElse("strength not known");
    return volume
        + strength
        + ", "
        + given.dose().map(RescueWords::mcg).orElse("how much is not known");
  }

  /** A dose, always in micrograms, so that two are compared by their numbers. */
  public static String mcg(Mass dose) {
    return dose.in(MassUnit.MICROGRAM);
  }

  public static String side(Side side) {
    return switch (side) {
      case LEFT -> "his left";
      case RIGHT -> "his right";
      case NOT_KNOWN -> "side not known";
    };
  }

  private static String values(RescueWord.GasTaken gas) {
    return "pO2 " + gas.oxygen() + ", pCO2 " + gas.carbonDioxide() + ", pH " + gas.ph();
  }

  /** What a blood gas says, and what that means. */
  public static String says(GasReading reading) {
    return switch (reading) {
      case GasReading.Ischaemic all -> "Ischaemic: all three criteria are met";
      case GasReading.NonIschaemic all ->
          "Non-ischaemic by this sample, which is unusual after an injection: was it from the"
              + " corpus cavernosum? The treating physician decides";
      case GasReading.Indeterminate some ->
          "Indeterminate: treat as ischaemic until excluded; "
              + HOW_MANY.get(some.ischaemic().size())
              + " of three criteria met"
              + named(some.ischaemic())
              + (some.isInconsistent()
                  ? "; it does not fit together: take another sample, and do not wait for it"
                  : "");
      case GasReading.Refused refused -> "Not read: treat as ischaemic until excluded";
    };
  }

  private static String named(List<Asked> criteria) {
    return criteria.isEmpty()
        ? ""
        : " (" + criteria.stream().map(Asked::words).collect(Collectors.joining(" and ")) + ")";
  }

  /** What is to be looked at in a dose that was given. */
  static String of(Flag flag, RescueLimits limits) {
    return switch (flag) {
      case Flag.TooSoon soon ->
          "Less than "
              + RescueLimits.FLOOR.value()
              + " after the dose before"
              + (soon.given().side() == soon.before().side() ? "" : ", into another side");
      case Flag.Together together ->
          "With the doses just before it "
              + mcg(together.sum())
              + " at once: two halves are one dose, whichever sides";
      case Flag.TooMuch much ->
          mcg(much.inTheHour()) + " in the hour up to it, above " + mcg(limits.inAnHour());
      case Flag.Unusual unusual -> "Smaller or larger than any published dose";
      case Flag.TooStrong strong ->
          "The syringe held "
              + StrengthWords.of(strong.of())
              + ", more than is ever given: was the second dilution left out? Blood pressure now";
      case Flag.AmountNotKnown unknown -> "How much is not known, so that no sum is known";
    };
  }

  /** Why a dose is held, with the facts. */
  public static String of(Reason reason, ClinicTime time) {
    return switch (reason) {
      case Reason.OverLimit over ->
          "With it " + mcg(over.inTheHour()) + " in an hour, above " + mcg(over.limit()) + ".";
      case Reason.AmountNotKnown unknown ->
          "How much was given at " + time.timeText(unknown.at()) + " is not known.";
      case Reason.SoonerThanSigned sooner ->
          "The clinic signed to wait until " + time.timeText(sooner.notBefore()) + ".";
      case Reason.PressureNotWritten pressure ->
          pressure
              .lastDose()
              .map(
                  last ->
                      "No blood pressure is written since the dose of "
                          + time.timeText(last)
                          + ": measure it now.")
              .orElse("No blood pressure is written in the last hour: measure it now.");
      case Reason.MaoInhibitor inhibitor ->
          (inhibitor.answer() == Answer.YES
                  ? "He takes an MAO inhibitor."
                  : "Nobody knows whether he takes an MAO inhibitor.")
              + " Phenylephrine may raise his blood pressure dangerously.";
      case Reason.NoSecondPerson nobody -> "No second person has read label and dilution.";
    };
  }

  private static String of(LogVerdict.Kind kind) {
    return switch (kind) {
      case OVER_LIMIT -> "above the limit of an hour";
      case AMOUNT_NOT_KNOWN -> "an earlier amount not known";
      case SOONER_THAN_SIGNED -> "sooner than signed";
      case PRESSURE_NOT_WRITTEN -> "no blood pressure since the last dose";
      case MAO_INHIBITOR -> "an MAO inhibitor, or not known";
      case NO_SECOND_PERSON -> "no second person";
    };
  }
}
