package rungwise.checks.adversary.law;

import java.util.Set;

/** The rules that never bend, one by one. */
public enum Law {
  ALWAYS_ANSWERS("every record has an answer"),
  EMERGENCY_STOPS("240 min or more, known or possible, stops everything until it is reviewed"),
  EMERGENCY_IS_COUNTED("every emergency that is open is told"),
  UNFINISHED("what may mean 4 hours stops while it is asked back"),
  OPEN_CALL("an open call, and one that ended as an emergency until a review, stop everything"),
  AT_A_STAND("a course that is paused or has ended leads to no dose"),
  NO_ORDER_AFTER_END("no order of before the end of a course comes back"),
  LABEL_DECIDES("what the label of the vial says was injected, whatever was planned"),
  VIAL_NOT_KNOWN("from nobody knows which vial it closes by each label that he had"),
  CLOSED("120 min or more, known or possible, closes that dose and all above it"),
  CLOSED_WHEN_STRUCK(
      "a struck report of 120 min or more closes until it is completed or confirmed"),
  HIGHER_AFTER_LONG("over 60 min, or not known after any change: never a higher dose"),
  HOLD_AFTER_LONG("61 to 119 min, or not known after firmness: that dose waits for a signature"),
  ONE_RUNG_UP("never more than one step above what was drawn and went in"),
  FIRST_DOSE("the first dose of all is the first step"),
  CHANGE_CARRIES("after a change no component is above what was tolerated of it"),
  CHANGE_AFTER_LONG(
      "where something was long and nothing tolerated nothing is proposed, and less of everything"
          + " alone is open"),
  NAMED_BY_DRAWN("same, more and less are said by comparison with what was drawn"),
  NOT_ABOVE_DRAWN("nothing above what was drawn after useful, unknown or unasked"),
  NOTHING_WITHOUT_CAUSES("more only after the simple causes were asked and none was found"),
  LIMITS("a printed line, not above the ceiling, not above 60 mcg of alprostadil alone"),
  NEW_STOCK("a new vial after older stock begins at the last dose that was proven fresh"),
  SPACING("24 h between two injections at home"),
  THREE_IN_A_WEEK("at most 3 in any 168 h at home"),
  TWO_IN_A_DAY("at most 2 in any 24 h"),
  SECOND_DOSE("a second dose in a visit keeps its own rules"),
  HOME_READY("at home only with everything on record"),
  FIRST_IN_CLINIC("at home only after a dose that went in, in the clinic, and was short"),
  AFTER_EMERGENCY("at home after an emergency without end: examined, and tried in the clinic"),
  EXAMINATION_FOR_MORE("no higher dose while an examination is overdue"),
  EXAMINATION_FOR_HOME("no dose at home while it is overdue by more than the grace"),
  LAPSE(
      "after a year without an injection a dose in the clinic comes first, no more than the last"
          + " proven one"),
  RECALLED("what the clinic has taken out of use is injected no more"),
  PAIR_ALONE("after two doses in a visit the second waits until it was given alone"),
  VIAL_LABEL("the vial says what the order says"),
  VIAL_DATE("no vial past its last day, on the label or once opened"),
  VIAL_NOT_STATED("an opened vial of which nobody said how long it may be used waits"),
  VIAL_FARED("no vial that was warm, frozen, who knows where or is gone, until it is judged"),
  NO_VIAL("without a vial on record there is a hold"),
  UNDER_OBSERVATION("nobody who is under observation is injected again"),
  CONTRAINDICATION("a contraindication stands until a prescriber says that it was wrong"),
  FINDING("after a finding: a later examination without it, and a new signature"),
  DECISION("a condition to decide on waits for the prescriber"),
  NOT_KNOWN_IS_NO("an open question of the screening counts as no"),
  SCREENING_AGE("answers hold for a year"),
  PAST_COUNTS("what is told from before counts, with or without a time"),
  TOLD_HALF("after he was taken over no first dose is above half of the told one"),
  TOLD_NOT_WATCHED("nor one at home before one was watched here"),
  TOLD_LONG("what lasted long elsewhere stops and closes like what lasted long here"),
  ONE_ANSWER("what may be injected now is signed, in force and allowed"),
  NEXT_STEP("the next step waits for a poor response to the signed dose"),
  RAISED_ONLY("only what was raised can be overridden"),
  LIFTED_AS_SEEN("nothing is lifted by who has not seen all that stands there"),
  PRESCRIBER_ONLY("what is a prescriber's is refused to everybody else"),
  REVIEW_NEEDS_END("a review of an erection still firm needs its end"),
  NOBODY_ELSE_ENDS("nobody but a prescriber ends an emergency that was said"),
  NOBODY_ELSE_OPENS("nobody but a prescriber opens a volume"),
  UNSOUND_STOPS("a record that is not as it was written leads to no dose and to no signature"),
  UNSOUND_TOLD("reports are taken whatever state the record is in"),
  TABLET_HOURS("no dose within 72 h after a tablet, at home whatever was signed"),
  READY_EXPIRED("what was shown too long ago sends nobody home, but until a day"),
  FLAGGED("a prescriber is told what was injected out of order"),
  FLAG_STANDS("what is flagged stands until a prescriber has seen it"),
  DAY_STAYS_OPEN("no day is closed while somebody is watched, or left firm and is nobody's");

  /** What the engine is not known to obey yet. */
  public static final Set<Law> AWAITED = Set.of();

  public final String words;

  Law(String words) {
    this.words = words;
  }
}
