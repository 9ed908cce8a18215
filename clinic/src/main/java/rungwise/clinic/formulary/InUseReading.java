package rungwise.clinic.formulary;

import java.util.List;
import rungwise.dosing.supply.InUseRule;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/** Reads how long an opened vial may be used. */
final class InUseReading {

  private static final String NOT_CHOSEN =
      "The use after opening was not chosen: choose what the pharmacy or label says.";
  private static final String TOO_MANY =
      "The days after opening are more than 365: enter what the label says.";
  private static final String NOT_PRESERVED =
      "No preservative is named: the days after opening must be the pharmacy's own answer for"
          + " this preparation.";

  private InUseReading() {}

  /**
   * The rule, or what is wrong with it.
   *
   * @param rule one of "single_use", "days", "not_stated"
   * @param days whole days after opening; ignored for another rule
   */
  static Reading<InUseRule> read(String rule, String days, boolean isPreserved) {
    return switch (rule) {
      case "single_use" -> Reading.of(new InUseRule.SingleUse());
      case "not_stated" -> Reading.of(new InUseRule.NotStated());
      case "days" -> daysAfterOpening(days, isPreserved);
      default -> Reading.refused(new Fault(PreparationDraft.IN_USE, NOT_CHOSEN));
    };
  }

  private static Reading<InUseRule> daysAfterOpening(String typed, boolean isPreserved) {
    return switch (WholeNumber.read(typed)) {
      case Reading.Refused<Integer> refused ->
          refusedDays("The days after opening: " + String.join(" ", refused.faults()));
      case Reading.Read<Integer> read ->
          read.value() > InUseRule.DaysAfterOpening.MOST
              ? refusedDays(TOO_MANY)
              : new Reading.Read<>(
                  new InUseRule.DaysAfterOpening(read.value()),
                  isPreserved ? List.of() : List.of(NOT_PRESERVED));
    };
  }

  private static Reading<InUseRule> refusedDays(String text) {
    return Reading.refused(new Fault(PreparationDraft.IN_USE_DAYS, text));
  }
}
