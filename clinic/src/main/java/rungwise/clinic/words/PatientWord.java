package rungwise.clinic.words;

import java.util.Arrays;
import java.util.Optional;

/**
 * Everything that is said to a man on a page or a document, each by its key. The texts stand in one
 * file for each version and language; a key without a text, or a text without a key, breaks the
 * build. A key that was written into a record is never renamed.
 */
public enum PatientWord {
  SHEET_HEAD_MAIN("sheet.h.main"),
  SHEET_WHO("sheet.who"),
  SHEET_DRAFT("sheet.draft"),
  SHEET_CURRENT("sheet.current"),
  SHEET_NUMBER("sheet.number"),
  SHEET_STRIP_TWO("sheet.strip.two"),
  SHEET_STRIP_FOUR("sheet.strip.four"),
  SHEET_HEAD_DOSE("sheet.h.dose"),
  SHEET_DOSE_VOLUME("sheet.dose.volume"),
  SHEET_DOSE_LINES("sheet.dose.lines"),
  SHEET_DOSE_CONTENT("sheet.dose.content"),
  SHEET_DOSE_COMPOSITION("sheet.dose.composition"),
  SHEET_DOSE_DEVICE("sheet.dose.device"),
  SHEET_DOSE_NEVER_MORE("sheet.dose.never_more"),
  SHEET_RULER("sheet.ruler"),
  SHEET_HEAD_NEXT("sheet.h.next"),
  SHEET_NEXT_DOSE("sheet.next.dose"),
  SHEET_NEXT_WEAK("sheet.next.weak"),
  SHEET_NEXT_COUNT("sheet.next.count"),
  SHEET_NEXT_CLEAN("sheet.next.clean"),
  SHEET_NEXT_SHORT("sheet.next.short"),
  SHEET_NEXT_ELSE("sheet.next.else"),
  SHEET_HEAD_TIME("sheet.h.time"),
  SHEET_TIME_WAIT("sheet.time.wait"),
  SHEET_TIME_WEEK("sheet.time.week"),
  SHEET_TIME_WEEK_ONE("sheet.time.week.one"),
  SHEET_TIME_NO_SECOND("sheet.time.no_second"),
  SHEET_TIME_LEAD("sheet.time.lead"),
  SHEET_TIME_ONSET("sheet.time.onset"),
  SHEET_TIME_TOUCH("sheet.time.touch"),
  SHEET_HEAD_PLACE("sheet.h.place"),
  SHEET_PLACE_WHERE("sheet.place.where"),
  SHEET_PLACE_SWITCH("sheet.place.switch"),
  SHEET_PLACE_LAST("sheet.place.last"),
  SHEET_PLACE_FIRST("sheet.place.first"),
  SHEET_PLACE_AVOID("sheet.place.avoid"),
  SHEET_PLACE_SORE("sheet.place.sore"),
  SHEET_HEAD_STEPS("sheet.h.steps"),
  SHEET_STEP_LOOK("sheet.step.look"),
  SHEET_STEP_WASH("sheet.step.wash"),
  SHEET_STEP_MIX("sheet.step.mix"),
  SHEET_STEP_AIR("sheet.step.air"),
  SHEET_STEP_DRAW("sheet.step.draw"),
  SHEET_STEP_BUBBLE("sheet.step.bubble"),
  SHEET_STEP_CHECK("sheet.step.check"),
  SHEET_STEP_HOLD("sheet.step.hold"),
  SHEET_STEP_IN("sheet.step.in"),
  SHEET_STEP_PUSH("sheet.step.push"),
  SHEET_STEP_STUCK("sheet.step.stuck"),
  SHEET_STEP_OUT("sheet.step.out"),
  SHEET_STEP_BIN("sheet.step.bin"),
  SHEET_STEP_CLOCK("sheet.step.clock"),
  SHEET_NEEDLE_BENT("sheet.needle.bent"),
  SHEET_NEEDLE_BROKEN("sheet.needle.broken"),
  SHEET_HEAD_LOG("sheet.h.log"),
  SHEET_LOG_SHOT("sheet.b.log.shot"),
  SHEET_LOG_TWO("sheet.b.log.two"),
  SHEET_LOG_FOUR("sheet.b.log.four"),
  SHEET_HEAD_LONG("sheet.h.long"),
  SHEET_LONG_COUNT("sheet.long.count"),
  SHEET_LONG_TWO("sheet.long.two"),
  SHEET_LONG_LEAVE("sheet.long.leave"),
  SHEET_LONG_FOUR("sheet.long.four"),
  SHEET_LONG_WHY("sheet.long.why"),
  SHEET_LONG_AGAIN("sheet.long.again"),
  SHEET_HEAD_CALL("sheet.h.call"),
  SHEET_CALL_HOUR("sheet.call.hour"),
  SHEET_CALL_CHANGE("sheet.call.change"),
  SHEET_CALL_BRUISE("sheet.call.bruise"),
  SHEET_CALL_ZERO("sheet.call.zero"),
  SHEET_CALL_NEW("sheet.call.new"),
  SHEET_HEAD_NOT("sheet.h.not"),
  SHEET_NOT_PILLS("sheet.not.pills"),
  SHEET_NOT_PILLS_UNSET("sheet.not.pills_unset"),
  SHEET_NOT_GERMS("sheet.not.germs"),
  SHEET_HEAD_KEEP("sheet.h.keep"),
  SHEET_KEEP_FRIDGE("sheet.keep.fridge"),
  SHEET_KEEP_FROZEN("sheet.keep.frozen"),
  SHEET_KEEP_LABEL("sheet.keep.label"),
  SHEET_KEEP_POWDER("sheet.keep.powder"),
  SHEET_KEEP_LAST("sheet.keep.last"),
  SHEET_KEEP_DAYS("sheet.keep.days"),
  SHEET_KEEP_ONCE("sheet.keep.once"),
  SHEET_KEEP_ASK("sheet.keep.ask"),
  SHEET_KEEP_WARM("sheet.keep.warm"),
  SHEET_KEEP_KIDS("sheet.keep.kids"),
  SHEET_KEEP_NEW_VIAL("sheet.keep.new_vial"),
  SHEET_KEEP_TRAVEL("sheet.keep.travel"),
  SHEET_SHARPS_BOX("sheet.sharps.box"),
  SHEET_SHARPS_FULL("sheet.sharps.full"),
  SHEET_SHARPS_ONCE("sheet.sharps.once"),
  PART_MAN("part.b.man"),
  PART_LINE("part.b.line"),
  PART_LINE_ONE_PAST("part.b.line.one_past"),
  PART_LINE_PAST("part.b.line.past"),
  PART_LINE_ONE_PAST_ZERO("part.b.line.one_past_zero"),
  PART_LINE_PAST_ZERO("part.b.line.past_zero"),
  PART_COUNTS("part.b.counts"),
  PART_LEFT("part.b.left"),
  PART_RIGHT("part.b.right"),
  PART_PLACES("part.b.places"),
  PART_OR("part.b.or"),
  PART_FROM_TO("part.b.from_to"),
  PART_MINUTES("part.b.minutes"),
  PART_NEEDLE("part.b.needle"),
  PART_TRUE_SIZE("part.b.true_size"),
  PART_ENLARGED("part.b.enlarged"),
  PART_RULER_LINE("part.b.ruler_line"),
  PART_SQUARE("part.b.square"),
  SYRINGE_U100_0_3_HALF("syringe.b.u100-0.3-half"),
  SYRINGE_U100_0_3("syringe.b.u100-0.3"),
  SYRINGE_U100_0_5("syringe.b.u100-0.5"),
  SYRINGE_U100_1("syringe.b.u100-1"),
  SYRINGE_U100_1_TWO("syringe.b.u100-1-two"),
  SYRINGE_ML_1("syringe.b.ml-1"),
  SYRINGE_PREFILLED_0_5("syringe.b.prefilled-0.5"),
  SYRINGE_CARTRIDGE_1("syringe.b.cartridge-1"),
  DRUG_PAPAVERINE("drug.b.papaverine"),
  DRUG_PAPAVERINE_SALT("drug.b.papaverine.salt"),
  DRUG_PHENTOLAMINE("drug.b.phentolamine"),
  DRUG_PHENTOLAMINE_SALT("drug.b.phentolamine.salt"),
  DRUG_ALPROSTADIL("drug.b.alprostadil"),
  DRUG_ALPROSTADIL_SALT("drug.b.alprostadil.salt"),
  DRUG_ATROPINE("drug.b.atropine"),
  DRUG_ATROPINE_SALT("drug.b.atropine.salt"),
  CHECK_HEAD_MAIN("check.h.main"),
  CHECK_ASK("check.ask"),
  CHECK_CODE("check.b.code"),
  CHECK_SEND("check.b.send"),
  CHECK_CURRENT("check.current"),
  CHECK_NEW("check.new"),
  CHECK_NOT("check.not"),
  CHECK_UNKNOWN("check.unknown"),
  CHECK_BUSY("check.busy"),
  CHECK_LONG("check.long"),
  CHANGED_VIAL("changed.b.vial"),
  CHANGED_TIMES("changed.b.times"),
  CHANGED_PLAN("changed.b.plan"),
  CHANGED_PILLS("changed.b.pills"),
  CHANGED_WORDS("changed.b.words"),
  CHANGED_OTHER("changed.b.other");

  private final String token;

  PatientWord(String token) {
    this.token = token;
  }

  /** Its name in the files of texts and in the record. */
  public String token() {
    return token;
  }

  /** A heading: no part of the sentences that are measured for reading. */
  public boolean isHeading() {
    return token.contains(".h.");
  }

  /** A label, or a part of a sentence: no sentence of its own. */
  public boolean isPart() {
    return token.contains(".b.");
  }

  /** The word of a key. */
  public static Optional<PatientWord> of(String token) {
    return Arrays.stream(values()).filter(one -> one.token.equals(token)).findFirst();
  }
}
