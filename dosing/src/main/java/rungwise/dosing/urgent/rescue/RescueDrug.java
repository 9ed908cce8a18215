package rungwise.dosing.urgent.rescue;

import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;

/**
 * Two drugs whose names look alike and which do the opposite. There is no way to read a name here
 * without its class and purpose.
 */
public enum RescueDrug {
  PHENYLEPHRINE(
      "phenylephrine, which narrows vessels and raises blood pressure: the rescue",
      Source.remembered(Citation.PHENYLEPHRINE_LABEL, "pharmacology")),
  PHENTOLAMINE(
      "phentolamine, which widens vessels and lowers blood pressure: a part of his mixture,"
          + " never the rescue",
      Source.remembered(Citation.US_PHENTOLAMINE_LABEL, "pharmacology"));

  /** What whoever treats a fall of blood pressure must know of a man who had phentolamine. */
  public static final Sourced<String> EPINEPHRINE_AFTER_PHENTOLAMINE =
      new Sourced<>(
          "He had phentolamine: epinephrine for low pressure may drop it further.",
          Source.remembered(Citation.US_PHENTOLAMINE_LABEL, "overdosage"));

  private final String words;
  private final Source source;

  RescueDrug(String words, Source source) {
    this.words = words;
    this.source = source;
  }

  /** The name with class and purpose. */
  public String words() {
    return words;
  }

  public Source source() {
    return source;
  }
}
