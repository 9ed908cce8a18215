package rungwise.dosing.guard;

import rungwise.dosing.known.DrawingError;
import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;

/** Every guard: its class, its words, its source and what clears it, in one table. */
public enum GuardRule {
  CONTRAINDICATED(
      GuardClass.HARD_STOP,
      "A contraindication is on record.",
      Source.read(Citation.EU_CORE_SAFETY_2012, "contraindications"),
      "the screening is entered again without one"),
  SCREENING_OPEN(
      GuardClass.HARD_STOP,
      "It is not known whether he has a contraindication.",
      Source.read(Citation.EU_CORE_SAFETY_2012, "contraindications"),
      "every contraindication has been asked about"),
  EMERGENCY_OPEN(
      GuardClass.HARD_STOP,
      "An erection lasted, or may have lasted, 4 hours or more, and no prescriber has reviewed it.",
      DurationLimits.EMERGENCY.source(),
      "a prescriber has reviewed it, or the report says how it ended"),
  ABOVE_CEILING(
      GuardClass.HARD_STOP,
      "This is above the maximum dose.",
      Source.read(Citation.US_SYRINGE_LABEL, "2: above 60 mcg not recommended"),
      ""),
  ABOVE_COMPONENT_LIMIT(
      GuardClass.HARD_STOP,
      "This holds more of a component than its limit.",
      Source.read(Citation.US_SYRINGE_LABEL, "2: above 60 mcg not recommended"),
      ""),
  BETWEEN_MARKS(
      GuardClass.HARD_STOP,
      "No printed line of the syringe stands at this volume.",
      Source.read(Citation.ISO_8537_2007, "graduation"),
      ""),
  TOO_SMALL_TO_MEASURE(
      GuardClass.HARD_STOP,
      "This is below the 2-unit mark, too little to be measured.",
      DrawingError.BLOCK_BELOW.source(),
      ""),
  NOT_A_STEP(
      GuardClass.HARD_STOP,
      "This volume is not a step of the signed titration schedule.",
      new Source.Assumption("a prescriber signs every volume that may be ordered"),
      ""),
  MORE_THAN_ONE_STEP_UP(
      GuardClass.HARD_STOP,
      "This is more than one step above the last dose.",
      Source.read(Citation.US_SYRINGE_LABEL, "2: increments of 5 to 10 mcg"),
      "the step between has been tried"),
  VOLUME_CLOSED(
      GuardClass.HARD_STOP,
      "At this volume or less an erection lasted, or may have lasted, 2 hours or more.",
      DurationLimits.CLOSES_VOLUME.source(),
      "a prescriber reopens this volume with a reason"),
  HIGHER_AFTER_LONG(
      GuardClass.HARD_STOP,
      "At a lower volume an erection lasted over an hour, or it is not known how long.",
      DurationLimits.NO_HIGHER_DOSE.source(),
      "the report says that it lasted an hour or less, or a later one at that dose does"),
  HOME_NOT_READY(
      GuardClass.HARD_STOP,
      "Something that must come before home use is not on record.",
      Source.read(Citation.US_SYRINGE_LABEL, "2 and 17: dose finding and training in the office"),
      "each item is on record"),
  NO_ORDER(
      GuardClass.HARD_STOP,
      "No dose is signed for him.",
      new Source.Assumption("only a signed order reaches a patient"),
      "a prescriber signs a dose"),
  SPACING(
      GuardClass.HOLD,
      "The last injection was too recent.",
      Source.read(Citation.US_SYRINGE_LABEL, "17: at least 24 h apart"),
      ""),
  WEEKLY_COUNT(
      GuardClass.HOLD,
      "There were already as many injections in the last 168 hours as are allowed.",
      Source.read(Citation.US_SYRINGE_LABEL, "17: at most 3 a week"),
      ""),
  HARD_TO_MEASURE(
      GuardClass.HOLD,
      "The drawing error may be more than 25 percent of this dose: use a smaller syringe or a"
          + " weaker strength.",
      DrawingError.ASK_FOR_ANOTHER_ABOVE_PERCENT.source(),
      "a smaller syringe or a weaker strength is chosen"),
  INACCURATE(
      GuardClass.NOTE,
      "The drawing error may be more than 15 percent of this dose.",
      DrawingError.WARN_ABOVE_PERCENT.source(),
      ""),
  SMALL_VOLUME(
      GuardClass.NOTE,
      "At or below the 5-unit mark errors of a tenth are usual.",
      DrawingError.WARN_AT_OR_BELOW.source(),
      "");

  private final GuardClass guardClass;
  private final String wording;
  private final Source source;
  private final String clearedWhen;

  GuardRule(GuardClass guardClass, String wording, Source source, String clearedWhen) {
    this.guardClass = guardClass;
    this.wording = wording;
    this.source = source;
    this.clearedWhen = clearedWhen;
  }

  public GuardClass guardClass() {
    return guardClass;
  }

  public String wording() {
    return wording;
  }

  public Source source() {
    return source;
  }

  /** What clears it where no instant does. */
  public Clears clears() {
    return clearedWhen.isEmpty() ? new Clears.Never() : new Clears.When(clearedWhen);
  }
}
