package rungwise.dosing.guard;

import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.dosing.syringe.DrawingError;

/** Every guard: its class, its words, its source and what clears it, in one table. */
public enum GuardRule {
  CONTRAINDICATED(
      GuardClass.HARD_STOP,
      "A contraindication is on record.",
      Source.read(Citation.EU_CORE_SAFETY_2012, "contraindications"),
      "a prescriber writes that the yes was wrong and what shows it; for curvature or scarring that"
          + " an examination found, a later examination is without it"),
  SIGNED_BEFORE_FINDING(
      GuardClass.HARD_STOP,
      "The dose was signed before an examination found curvature or scarring.",
      Source.read(Citation.EU_CORE_SAFETY_2012, "contraindications"),
      "a later examination is without it, and a prescriber signs a dose anew"),
  SCREENING_OPEN(
      GuardClass.HARD_STOP,
      "It is not known whether he has a contraindication.",
      Source.read(Citation.EU_CORE_SAFETY_2012, "contraindications"),
      "the open questions of the screening are answered"),
  DECISION_MISSING(
      GuardClass.HARD_STOP,
      "He has a condition that asks for a prescriber's written decision, and none is on record.",
      new Source.Assumption("each condition of this kind names its own source"),
      "a prescriber has written down the decision to go on"),
  SCREENING_EXPIRED(
      GuardClass.HOLD,
      "The answers of the screening are older than the protocol allows.",
      new Source.CommonPractice("answers are asked again from time to time"),
      "he has said which answers are still true"),
  CAUTION(
      GuardClass.NOTE,
      "A caution of the screening.",
      new Source.Assumption("each caution names its own source"),
      ""),
  UNDER_OBSERVATION(
      GuardClass.HARD_STOP,
      "He is under observation, and it is not recorded how the injection ended.",
      Source.read(Citation.US_SYRINGE_LABEL, "2: in the office until complete detumescence"),
      "the observation is closed"),
  EMERGENCY_OPEN(
      GuardClass.HARD_STOP,
      "An erection lasted, or may have lasted, 4 hours or more, and no prescriber has reviewed it.",
      DurationLimits.EMERGENCY.source(),
      "a prescriber has reviewed it; where it is only possible, also when a correction says that it"
          + " ended before 4 hours"),
  REPORT_UNFINISHED(
      GuardClass.HARD_STOP,
      "Somebody said what may mean 4 hours or still firm, and the report is not complete.",
      DurationLimits.EMERGENCY.source(),
      "that report is complete, or a prescriber has reviewed it"),
  RECORD_NOT_SOUND(
      GuardClass.HARD_STOP,
      "What stands on record is not as it was written: nothing that rests on it can be relied on.",
      new Source.Assumption("a changed record may hide an erection, a contraindication or a dose"),
      "an administrator has put a sound record back"),
  CLOCK_NOT_KNOWN(
      GuardClass.HARD_STOP,
      "It is not known what time it is: nothing that rests on time can be answered.",
      new Source.Assumption("a clock that is ahead ends a wait too early"),
      "the clock of the server is right, or somebody has confirmed its date and time"),
  COURSE_PAUSED(
      GuardClass.HARD_STOP,
      "His treatment is paused.",
      new Source.Assumption("who pauses has seen what speaks against the next dose"),
      "a prescriber resumes the treatment"),
  COURSE_ENDED(
      GuardClass.HARD_STOP,
      "His treatment has ended.",
      new Source.Assumption("no order outlives the treatment that it was signed for"),
      "a prescriber opens the treatment again, and signs a dose anew"),
  RECALLED(
      GuardClass.HARD_STOP,
      "The clinic has taken this preparation out of use.",
      new Source.Assumption("what is recalled is injected no more, whatever was ordered"),
      "a prescriber chooses another preparation"),
  PAST_LONG(
      GuardClass.HARD_STOP,
      "Before this record began an erection lasted, or may have lasted, 2 hours or more, and it is"
          + " not known what he was injected with.",
      DurationLimits.CLOSES_VOLUME.source(),
      "a prescriber has written what it was, or that nobody can tell"),
  PAST_OPEN(
      GuardClass.HARD_STOP,
      "He was injected before this record began, and when the last time was is not on record.",
      new Source.CommonPractice("ask for the last injection before the next one is given"),
      "a report of his last injection is entered, the day of it is told, or a prescriber confirms"
          + " that an import that was undone was wrong"),
  PROTOCOL_NOT_FOR(
      GuardClass.HARD_STOP,
      "The protocol is not written for this preparation: the same volume would be another dose.",
      new Source.Assumption("a volume means nothing without the composition it was written for"),
      "a prescriber has chosen a protocol that is written for this composition"),
  ABOVE_CEILING(
      GuardClass.HARD_STOP,
      "This is above the maximum dose.",
      new Source.Assumption("the limit of this preparation, as the clinic entered it"),
      ""),
  ABOVE_COMPONENT_LIMIT(
      GuardClass.HARD_STOP,
      "This holds more of a component than its limit.",
      new Source.Assumption("the limit of this preparation, as the clinic entered it"),
      ""),
  NEWER_VERSION_FORBIDS(
      GuardClass.HARD_STOP,
      "A later version of the protocol does not allow this much.",
      new Source.Assumption("a limit that the clinic has lowered holds for everybody at once"),
      "a prescriber signs a lower dose"),
  EXAMINATION_OVERDUE(
      GuardClass.HOLD,
      "An examination for curvature and scarring is due: no higher dose before it.",
      Source.read(Citation.US_VIAL_LABEL, "follow-up every 3 months"),
      "he has been examined"),
  BETWEEN_MARKS(
      GuardClass.HARD_STOP,
      "No printed line of the syringe stands at this volume.",
      Source.secondary(Citation.ISO_8537_2007, "graduation"),
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
      "This is more than one step above the last dose that went in.",
      Source.read(Citation.US_SYRINGE_LABEL, "2: increments of 5 to 10 mcg"),
      "the step between has gone in"),
  NO_FIRST_DOSE(
      GuardClass.HARD_STOP,
      "It holds more than he is known to have tolerated of what he was injected with before.",
      new Source.Assumption("no component above what was last tolerated"),
      "a weaker strength is chosen, or it is recorded how the injections before ended"),
  ABOVE_TOLD(
      GuardClass.HARD_STOP,
      "It holds more of a component than the part of the dose told from elsewhere with which a man"
          + " who is taken over begins.",
      new Source.Assumption("half of a dose that nobody here has seen"),
      "a dose with this component has been given and watched in the clinic since, and was over"
          + " within the hour"),
  NOT_OPENED_AS_TOLD(
      GuardClass.HARD_STOP,
      "It is above where the schedule of a man who was taken over begins.",
      new Source.Assumption("a dose that was only told opens no schedule: a prescriber does"),
      "a prescriber opens the schedule up to it, as a part of the told dose"),
  FIRST_AFTER_TOO_LONG(
      GuardClass.HOLD,
      "Nothing that he was injected with before is known to have been tolerated. This holds less of"
          + " everything than the smallest dose that lasted too long or of which nobody knows how"
          + " long.",
      new Source.Assumption("less of everything, as a test in the clinic"),
      "it is recorded how the injections before ended"),
  VOLUME_CLOSED(
      GuardClass.HARD_STOP,
      "At this dose or less an erection lasted, or may have lasted, 2 hours or more.",
      DurationLimits.CLOSES_VOLUME.source(),
      "a prescriber reopens this volume with a reason, or confirms that the report was wrong"),
  HIGHER_AFTER_LONG(
      GuardClass.HARD_STOP,
      "At a lower dose an erection lasted over an hour, or it is not known how long.",
      DurationLimits.NO_HIGHER_DOSE.source(),
      "the report says that it lasted an hour or less, or a later one does of a dose as high that"
          + " went in from a vial on record"),
  SIGN_ANEW(
      GuardClass.HOLD,
      "At this dose or less an erection lasted, or may have lasted, over an hour, or nobody knows"
          + " how long it was firm: this dose waits until a prescriber signs anew.",
      new Source.CommonPractice(
          "a UK monograph says to reduce the dose above 1 h; that it waits for a signature is"
              + " practice"),
      "it is recorded that it lasted an hour or less, or a prescriber signs anew"),
  HOME_NOT_READY(
      GuardClass.HARD_STOP,
      "Something that must come before home use is not on record.",
      Source.read(Citation.US_SYRINGE_LABEL, "2 and 17: dose finding and training in the office"),
      "each item is on record"),
  READINESS_EXPIRED(
      GuardClass.HOLD,
      "What he has shown or agreed before home use is older than the protocol allows.",
      new Source.CommonPractice("what was taught and agreed is gone over again from time to time"),
      "each item is on record anew"),
  EXAMINATION_LONG_OVERDUE(
      GuardClass.HOLD,
      "An examination for curvature and scarring is overdue by more than the protocol's grace.",
      Source.read(Citation.US_VIAL_LABEL, "follow-up every 3 months"),
      "he has been examined"),
  LAPSED(
      GuardClass.HOLD,
      "Nothing was injected for longer than the protocol allows: a dose in the clinic comes first.",
      new Source.CommonPractice("after a long time without an injection the dose is tested again"),
      "a dose has been given and watched in the clinic"),
  ABOVE_BEFORE_LAPSE(
      GuardClass.HARD_STOP,
      "After a long time without an injection this is more than the last dose that was proven.",
      new Source.CommonPractice("after a long time the last dose that worked, or one step below"),
      "a dose has been given and watched in the clinic since"),
  FIRST_IN_CLINIC(
      GuardClass.HARD_STOP,
      "No dose of this preparation was watched in the clinic since he began it that went in, from a"
          + " vial on record, and was over within the hour.",
      Source.read(Citation.US_SYRINGE_LABEL, "2: the dose is found in the office"),
      "such a dose of it has been given and watched in the clinic"),
  NOT_WATCHED_SINCE_TOLD(
      GuardClass.HARD_STOP,
      "He was taken over from elsewhere, and no dose has been watched in the clinic since that went"
          + " in, from a vial on record, and was over within the hour.",
      Source.read(Citation.US_SYRINGE_LABEL, "2: the dose is found in the office"),
      "such a dose has been given and watched in the clinic"),
  AFTER_EMERGENCY(
      GuardClass.HARD_STOP,
      "After an erection that lasted, or may have lasted, 4 hours or more, he has not been examined"
          + " or no dose has been given in the clinic.",
      new Source.CommonPractice("after an emergency the dose is found again in the clinic"),
      "he has been examined since, and since the review a dose has been given and watched in the"
          + " clinic that was over within the hour"),
  PAIR_NOT_CREDITED(
      GuardClass.HOLD,
      "The last response followed two doses in one visit: it is not known what the second one does"
          + " alone.",
      new Source.Assumption("a response belongs to everything injected before it"),
      "this dose has been given alone in the clinic"),
  NEW_STOCK(
      GuardClass.HOLD,
      "The doses before were drawn from older stock or stock of unknown age: a new vial may be"
          + " stronger.",
      new Source.CommonPractice("ask about lot and storage before a dose is raised"),
      "a lower dose of the new vial has been tried"),
  CARE_ABOVE(
      GuardClass.HOLD,
      "A dose this high needs particular care in a man with a heart condition.",
      Source.read(Citation.UK_MONOGRAPH_2023, "above 20 mcg with cardiovascular risk factors"),
      ""),
  NO_VIAL(
      GuardClass.HOLD,
      "No vial is on record, so its label and date are not checked.",
      new Source.Assumption("a label is compared with the order before first use"),
      "the vial's label and dates are entered"),
  VIAL_DIFFERS(
      GuardClass.HARD_STOP,
      "The vial's label does not say what the order says.",
      new Source.Assumption("a label is compared with the order before first use"),
      "a vial that holds what was ordered is entered"),
  VIAL_PAST_DATE(
      GuardClass.HARD_STOP,
      "The vial is past its beyond-use date.",
      Source.secondary(Citation.USP_797, "beyond-use dates"),
      "a vial in date is entered"),
  VIAL_OPEN_TOO_LONG(
      GuardClass.HARD_STOP,
      "The vial has been open for longer than it may be used.",
      new Source.CommonPractice("what the label or the pharmacy says of an opened vial"),
      "a vial in date is entered"),
  VIAL_GONE(
      GuardClass.HARD_STOP,
      "By the record the vial was thrown away, taken back or is empty.",
      new Source.CommonPractice("nothing is drawn from a vial that was thrown away"),
      "another vial is entered, or a prescriber says that this one may be used"),
  VIAL_TO_BE_JUDGED(
      GuardClass.HARD_STOP,
      "Something happened to the vial, such as warmth, frost or a journey, and no prescriber has"
          + " judged it since.",
      Source.read(Citation.USP_797_OLDER, "warmer than the label allows"),
      "a prescriber judges the vial, or another one is entered"),
  IN_USE_NOT_STATED(
      GuardClass.HOLD,
      "The vial is open, and nobody has said how long it may be used once opened: ask the pharmacy"
          + " that made it.",
      new Source.CommonPractice("days once opened are the pharmacy's own answer for a preparation"),
      "the pharmacy's answer is written down with the vial or the preparation"),
  NEXT_STEP_NOT_YET(
      GuardClass.HARD_STOP,
      "The condition for the signed next step is not met.",
      new Source.Assumption("a poor response to the signed dose, over in time, with nothing wrong"),
      "the last report is a poor response to the signed dose, over within the hour, with nothing"
          + " wrong; a partial one as often in a row as the protocol waits for"),
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
  SAME_VISIT(
      GuardClass.NOTE,
      "The protocol lets this second dose follow in the same visit.",
      Source.read(Citation.US_SYRINGE_LABEL, "2: within 1 h, at most 2 doses in 24 h"),
      ""),
  TOGETHER_ABOVE_LIMIT(
      GuardClass.HARD_STOP,
      "With what was injected within 24 hours of it this is above a limit of one dose.",
      new Source.Assumption("no text limits the sum; both act together"),
      ""),
  THIRD_IN_24_HOURS(
      GuardClass.HARD_STOP,
      "There were two doses within 24 hours of this: never a third.",
      Source.read(Citation.US_SYRINGE_LABEL, "2: at most 2 doses in 24 h"),
      ""),
  WEEKLY_COUNT(
      GuardClass.HOLD,
      "There are already as many injections within 168 hours as are allowed.",
      Source.read(Citation.US_SYRINGE_LABEL, "17: at most 3 a week"),
      ""),
  PDE5_HOURS(
      GuardClass.HOLD,
      "He took a tablet for erections too recently.",
      new Source.CommonPractice("clinics keep hours of their own between the two"),
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

  /** Whether a signature may override it, and how long it then does. */
  public Overriding overriding() {
    return Overriding.of(this);
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
