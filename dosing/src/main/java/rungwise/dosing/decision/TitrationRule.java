package rungwise.dosing.decision;

import rungwise.dosing.history.Grade;
import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;

/** Every rule of titration that can speak: its words and its source, in one table. */
public enum TitrationRule {
  FIRST_DOSE(
      "No injection of this preparation is on record: start at the first step.",
      Source.read(Citation.US_SYRINGE_LABEL, "2.1 and 2.2: start dose by group")),
  NOT_SAFE_TO_START(
      "The screening forbids every dose.",
      Source.read(Citation.EU_CORE_SAFETY_2012, "contraindications")),
  SCREENING_FIRST(
      "Ask about every contraindication before any dose.",
      Source.read(Citation.EU_CORE_SAFETY_2012, "contraindications")),
  DECISION_FIRST(
      "A condition asks for a prescriber's written decision before any dose.",
      new Source.Assumption("each condition of this kind names its own source")),
  RECORD_FIRST(
      "What stands on record is not as it was written: put a sound record back before any dose.",
      new Source.Assumption("a changed record may hide an erection, a contraindication or a dose")),
  CLOCK_FIRST(
      "It is not known what time it is: set the clock right, or confirm it, before any dose.",
      new Source.Assumption("a clock that is ahead ends a wait too early")),
  RESUME_FIRST(
      "His treatment is paused: a prescriber resumes it before any dose.",
      new Source.Assumption("who pauses has seen what speaks against the next dose")),
  ENDED(
      "His treatment has ended: a prescriber opens it again before any dose.",
      new Source.Assumption("no order outlives the treatment that it was signed for")),
  RECALL_FIRST(
      "The clinic has taken this preparation out of use: choose another one before any dose.",
      new Source.Assumption("what is recalled is injected no more, whatever was ordered")),
  PROTOCOL_FIRST(
      "The protocol is not written for this preparation: choose one that is before any dose.",
      new Source.Assumption("a volume means nothing without the composition it was written for")),
  OBSERVATION_FIRST(
      "He is under observation: record how it ended before anything else.",
      Source.read(Citation.US_SYRINGE_LABEL, "2: in the office until complete detumescence")),
  LONG_BEFORE_RECORD(
      "An erection before this record began lasted, or may have lasted, 2 hours or more: a"
          + " prescriber writes what he was injected with, or that nobody can tell.",
      DurationLimits.CLOSES_VOLUME.source()),
  LAST_INJECTION_FIRST(
      "He was injected before this record began: report his last injection before anything else.",
      new Source.CommonPractice("ask for the last injection before the next one is given")),
  FIRST_DOSE_AFTER_CHANGE(
      "No injection of this preparation is on record: no component above what he last tolerated,"
          + " as a new test in the clinic.",
      new Source.Assumption("no published table converts one mixture into another")),
  FIRST_DOSE_AS_TOLD(
      "He was taken over from elsewhere: of every component no more than a part of the told dose,"
          + " watched in the clinic. Above the first step only once a prescriber has opened the"
          + " schedule.",
      new Source.Assumption("half of a dose that nobody here has seen")),
  NOTHING_TOLERATED_BEFORE(
      "Of what he was injected with before nothing is known to have been tolerated, and something"
          + " lasted too long or nobody knows how long: no first dose is proposed. Ask how it"
          + " ended, or a prescriber signs less of everything, in the clinic, with a reason.",
      new Source.Assumption("what was too long is no ground for a dose of anything else")),
  NO_STEP_AS_TOLERATED(
      "No step of the schedule holds as little as he tolerated: a weaker strength is needed.",
      new Source.Assumption("no published table converts one mixture into another")),
  NEW_STOCK_RESTART(
      "The doses before were drawn from older stock: begin the new vial at the last dose that was"
          + " proven on fresh stock.",
      new Source.CommonPractice("ask about lot and storage before a dose is raised")),
  TWO_DOSES_TOGETHER(
      "It was usable, but after two doses in one visit: give this dose alone before it counts.",
      new Source.Assumption("a response belongs to everything injected before it")),
  EMERGENCY_FIRST(
      "An erection of 4 hours or more, known or possible, stops everything until a prescriber has"
          + " reviewed it.",
      DurationLimits.EMERGENCY.source()),
  TWO_HOURS_OR_MORE(
      "It lasted, or may have lasted, 2 hours or more: only a lower dose.",
      DurationLimits.CLOSES_VOLUME.source()),
  TWO_HOURS_AT_LOWEST(
      "It lasted, or may have lasted, 2 hours or more at the lowest step: stop, or choose a weaker"
          + " strength.",
      DurationLimits.CLOSES_VOLUME.source()),
  OVER_AN_HOUR(
      "It worked but lasted, or may have lasted, over an hour: one step down.",
      Source.read(Citation.UK_MONOGRAPH_2023, "reduce the dose if it lasts longer than 1 h")),
  OVER_AN_HOUR_AT_LOWEST(
      "It worked but lasted over an hour at the lowest step: a weaker strength or a finer syringe"
          + " is needed.",
      Source.read(Citation.UK_MONOGRAPH_2023, "reduce the dose if it lasts longer than 1 h")),
  LONG_BUT_NOT_USABLE(
      "It was not usable, yet lasted over an hour: never a higher dose.",
      DurationLimits.NO_HIGHER_DOSE.source()),
  DURATION_NOT_KNOWN(
      "There was some firmness and it is not known how long it lasted: ask him; never a higher"
          + " dose until then.",
      DurationLimits.NO_HIGHER_DOSE.source()),
  NOT_KNOWN_AGAIN(
      "Twice in a row there was some firmness and it is not known how long it lasted: no further"
          + " dose until he has been asked.",
      new Source.CommonPractice("a dose is not given on without knowing how long it lasts")),
  SETTLED("It was usable and over within the hour: no more than this dose.", Grade.ADEQUATE_SOURCE),
  CAUSES_NOT_ASKED(
      "A poor response is a reason for more only after the simple causes are asked about: same"
          + " dose again.",
      new Source.CommonPractice("technique, vial and arousal come before the dose")),
  CAUSE_FOUND(
      "Something went wrong with this injection, so that it shows nothing of the dose: same dose"
          + " again, done well.",
      new Source.CommonPractice("technique, vial and arousal come before the dose")),
  LESS_THAN_ORDERED(
      "Less was drawn than was ordered, and it was too little: back towards the ordered dose, at"
          + " most one step above what was drawn.",
      new Source.CommonPractice("the dose is judged by what was injected")),
  STEP_ABOVE_ORDER(
      "Too little although more was drawn than was ordered: one step above the ordered dose, as if"
          + " it had been drawn.",
      new Source.Assumption("a draw above the order never raises what may be proposed")),
  NOT_DRAWN_AS_STEP(
      "What was drawn is no step that was ordered: the largest step that is above neither what was"
          + " drawn nor what was ordered.",
      new Source.CommonPractice("the dose is judged by what was injected")),
  NO_STEP_SO_LOW(
      "No step of the schedule is as low as what was drawn and ordered: a prescriber decides.",
      new Source.CommonPractice("the dose is judged by what was injected")),
  STEP_AFTER_NONE(
      "No response: one step up.",
      Source.read(Citation.US_SYRINGE_LABEL, "2.2: increments until the wanted response")),
  STEP_AFTER_PARTIAL(
      "Partial response: one step up.",
      Source.read(Citation.US_SYRINGE_LABEL, "2.2: increments until the wanted response")),
  PARTIAL_AGAIN(
      "Partial response, and the protocol waits for more of them in a row at this dose before a"
          + " step up: same dose again.",
      new Source.Assumption("the protocol's own number, with its own source")),
  STEP_AFTER_FULLER(
      "Fuller but not firm, for which the protocol does not wait as for a partial response: one"
          + " step up.",
      Source.read(Citation.US_SYRINGE_LABEL, "2.2: increments until the wanted response")),
  AT_MAXIMUM(
      "Not usable at the last step of the schedule: review technique, vial, arousal, strength and"
          + " preparation.",
      Source.read(Citation.US_SYRINGE_LABEL, "2: above 60 mcg not recommended")),
  NEXT_STEP_TOO_LONG(
      "Not usable here, and the next step has already lasted too long: a strength or syringe with"
          + " a step between is needed.",
      new Source.Assumption("a dose that was too long is not tried again without a decision")),
  MODEL_LOWERS(
      "The response model finds the chance of a long erection above the protocol's limit: the"
          + " highest step at which it is not.",
      new Source.Assumption("the protocol's own limit; the model never raises a dose")),
  MODEL_FORBIDS(
      "The response model finds the chance of a long erection above the protocol's limit at every"
          + " step.",
      new Source.Assumption("the protocol's own limit; the model never raises a dose")),
  MODEL_AGREES(
      "The response model finds the chance of a long erection within the protocol's limits.",
      new Source.Assumption("the protocol's own limit; the model never raises a dose")),
  MODEL_SILENT(
      "The protocol limits the chance of a long erection, and no signed population knows this"
          + " preparation and group, so that nobody can say whether it is kept: a prescriber"
          + " decides.",
      new Source.Assumption("a limit that cannot be kept is not dropped")),
  REPORT_UNLIKELY(
      "The response model finds this report very unlikely: check the mark, the volume and the vial"
          + " first.",
      new Source.Assumption("less than 1 in 100 reports lie as far to that side")),
  GUARD_FORBIDS(
      "A safety check forbids the dose that the rule would give: the next lower one that is"
          + " allowed.",
      new Source.Assumption("guards are asked again after every choice")),
  NOTHING_ALLOWED(
      "A safety check forbids every dose on the schedule.",
      new Source.Assumption("guards are asked again after every choice"));

  private final String wording;
  private final Source source;

  TitrationRule(String wording, Source source) {
    this.wording = wording;
    this.source = source;
  }

  public String wording() {
    return wording;
  }

  public Source source() {
    return source;
  }
}
