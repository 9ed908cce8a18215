package rungwise.dosing.decision;

import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;

/** What is gone through, in this order, where the last step of a schedule does not work. */
public enum NonResponseStep {
  TECHNIQUE(
      "Technique",
      "Watch him draw up and inject: whole dose, no bubble, needle to the hub, not under the skin.",
      Source.read(Citation.ALBAUGH_2006, "return demonstration")),
  VIAL(
      "Vial",
      "Lot, date and warmth of the vial: try one dose from a fresh vial, at the last dose proven on"
          + " fresh stock.",
      new Source.CommonPractice("older stock has lost strength")),
  AROUSAL(
      "Arousal",
      "Privacy, time and stimulation: the clinic is a poor place to judge by.",
      new Source.CommonPractice("a test in the clinic may under-read")),
  STRENGTH(
      "Strength",
      "A stronger vial of the same components, from the volume that holds what he tolerated.",
      new Source.Assumption("no component above what was last tolerated")),
  PREPARATION(
      "Preparation",
      "Another preparation, as a new test in the clinic.",
      Source.read(Citation.BECHARA_1997, "the one trial that compares two")),
  REFERRAL(
      "Referral",
      "Imaging of the blood flow, or another treatment.",
      new Source.CommonPractice("when injections do not work at their maximum"));

  private final String words;
  private final String what;
  private final Source source;

  NonResponseStep(String words, String what, Source source) {
    this.words = words;
    this.what = what;
    this.source = source;
  }

  public String words() {
    return words;
  }

  /** What to look at or to try. */
  public String what() {
    return what;
  }

  public Source source() {
    return source;
  }
}
