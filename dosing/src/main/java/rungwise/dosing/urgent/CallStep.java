package rungwise.dosing.urgent;

import java.util.Arrays;
import java.util.List;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;

/**
 * The steps of a call, in their order. They are a sample that no clinic has signed. No step waits
 * for a home measure, and a home measure is shown before 4 hours only.
 */
public enum CallStep {
  SENT(
      "He goes to the nearest emergency department now, and does not drive himself.",
      Shown.FROM_FOUR_HOURS,
      Source.read(Citation.US_SYRINGE_LABEL, "5.1 and 17: 4 hours")),
  NOTHING_MORE(
      "He injects nothing more, and takes no tablet for erections.",
      Shown.ALWAYS,
      new Source.CommonPractice("a second dose lengthens the first")),
  WHO_IS_WITH_HIM(
      "Who is with him, and who can drive?",
      Shown.ALWAYS,
      new Source.CommonPractice("nobody drives himself with it")),
  SETS_OUT(
      "He sets out, so as to be in the emergency department before 4 hours.",
      Shown.BEFORE_FOUR_HOURS,
      new Source.CommonPractice("the way there counts")),
  CALLED_AGAIN(
      "He is called again: softer, the same, or worse?",
      Shown.BEFORE_FOUR_HOURS,
      new Source.CommonPractice("clinics ask for a call at 2 to 3 hours")),
  WALK_AND_COLD(
      "He walks about, and holds a cold pack in a cloth against it for some minutes.",
      Shown.BEFORE_FOUR_HOURS,
      new Source.CommonPractice("home measures before 4 hours; no study of them was found")),
  HOSPITAL_TOLD(
      "The hospital is told: what he injected, when, and the warnings.",
      Shown.ALWAYS,
      new Source.CommonPractice("a hospital that knows is ready"));

  /** When a step is shown. */
  public enum Shown {
    ALWAYS,
    BEFORE_FOUR_HOURS,
    FROM_FOUR_HOURS
  }

  private final String words;
  private final Shown shown;
  private final Source source;

  CallStep(String words, Shown shown, Source source) {
    this.words = words;
    this.shown = shown;
    this.source = source;
  }

  public String words() {
    return words;
  }

  public Shown shown() {
    return shown;
  }

  public Source source() {
    return source;
  }

  /** The steps at that time of an erection, in their order. */
  public static List<CallStep> due(Elapsed elapsed) {
    Shown other = elapsed.isEmergency() ? Shown.FROM_FOUR_HOURS : Shown.BEFORE_FOUR_HOURS;
    return Arrays.stream(values())
        .filter(step -> step.shown == Shown.ALWAYS || step.shown == other)
        .toList();
  }
}
