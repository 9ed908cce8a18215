package rungwise.dosing.protocol;

import java.util.Locale;
import java.util.Optional;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;

/**
 * Everything that a protocol says by one whole number, described once: document, form, list of
 * rules, comparison and check all follow from it. A new one is a constant here and the guard that
 * reads it.
 */
public enum CountedOption {
  READINESS_MONTHS(
      "What was shown or agreed before home use holds for",
      "Months for which what was shown or agreed before home use holds",
      Unit.MONTHS,
      Most.MONTHS,
      Left.optional("it does not expire")),
  LAPSE_MONTHS(
      "A dose in the clinic again after no injection for",
      "Months without an injection after which a dose is given in the clinic again",
      Unit.MONTHS,
      Most.MONTHS,
      Left.assumed(12, "12 months, an assumption of the program", "a year")),
  TAKEN_OVER_PERCENT(
      "First dose of a man who is taken over, at most",
      "The most of a dose told from elsewhere with which a man who is taken over begins here, in"
          + " percent of it, at most 50",
      Unit.PERCENT,
      Most.TAKEN_OVER_PERCENT,
      Left.assumed(
          50, "50 percent, an assumption of the program", "half of a dose seen elsewhere")),
  GRACE_DAYS(
      "Home use may go on after an examination or an answer was due for",
      "Days for which home use may go on after an examination or an answer was due, at most 90;"
          + " it is also the longest for which such a hold may be overridden",
      Unit.DAYS,
      Most.GRACE_DAYS,
      Left.assumed(0, "home use does not go on", "no days")),
  SATISFACTORY_MINUTES(
      "Wanted: usable for at most",
      "Wanted: usable for at most, in minutes",
      Unit.MINUTES,
      Most.MINUTES,
      Left.NEEDED),
  SPACING_HOURS(
      "Minimum interval", "Minimum interval, in hours", Unit.HOURS, Most.HOURS, Left.NEEDED),
  IN_SEVEN_DAYS(
      "Most injections in 168 hours",
      "Most injections in 168 hours",
      Unit.TIMES,
      Most.A_WEEK,
      Left.NEEDED),
  REVIEW_MONTHS(
      "Follow-up exam, every",
      "Follow-up exam, every so many months",
      Unit.MONTHS,
      Most.MONTHS,
      Left.NEEDED),
  SCREENING_MONTHS(
      "An answer of the screening holds for",
      "Months for which an answer of the screening holds",
      Unit.MONTHS,
      Most.MONTHS,
      Left.NEEDED),
  FRESH_DAYS(
      "A solution counts as fresh for",
      "Days for which a solution counts as fresh",
      Unit.DAYS,
      Most.DAYS,
      Left.NEEDED),
  PDE5_HOURS(
      "Between a PDE5 inhibitor and an injection",
      "Hours between a PDE5 inhibitor and an injection",
      Unit.HOURS,
      Most.HOURS,
      Left.NEEDED);

  /** What is counted. */
  public enum Unit {
    MINUTES(" min"),
    HOURS(" h"),
    DAYS(" days"),
    MONTHS(" months"),
    PERCENT(" percent"),
    TIMES("");

    private final String words;

    Unit(String words) {
      this.words = words;
    }
  }

  /** The greatest numbers that are read; none is of a source, each only catches a slip. */
  private static final class Most {
    static final int MINUTES = 119;
    static final int HOURS = 720;
    static final int A_WEEK = 7;
    static final int MONTHS = 24;
    static final int DAYS = 365;
    static final int GRACE_DAYS = 90;
    static final int TAKEN_OVER_PERCENT = 50;
  }

  /**
   * What holds where a protocol leaves it out.
   *
   * @param words what a reader of the form is told
   * @param instead the number in its place, where there is one
   */
  private record Left(boolean isNeeded, String words, Optional<Sourced<Integer>> instead) {
    static final Left NEEDED = new Left(true, "", Optional.empty());

    static Left optional(String words) {
      return new Left(false, words, Optional.empty());
    }

    static Left assumed(int number, String words, String assumption) {
      var source = new Source.Assumption("the protocol does not say: " + assumption);
      return new Left(false, words, Optional.of(new Sourced<>(number, source)));
    }
  }

  private final String words;
  private final String title;
  private final Unit unit;
  private final int most;
  private final Left left;

  CountedOption(String words, String title, Unit unit, int most, Left left) {
    this.words = words;
    this.title = title;
    this.unit = unit;
    this.most = most;
    this.left = left;
  }

  /** Its part of the document: "spacing_hours". */
  public String part() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** What the rule is called: "Minimum interval". */
  public String words() {
    return words;
  }

  /** What the form asks for: "Minimum interval, in hours". */
  public String title() {
    return title;
  }

  /** A number of it for a reader: "24 h". */
  public String of(int number) {
    return number + unit.words;
  }

  /** The greatest number that is read; the least is 1. */
  public int most() {
    return most;
  }

  /** Whether there is no protocol without it. */
  public boolean isNeeded() {
    return left.isNeeded();
  }

  /** What holds where it is left out, for a reader of the form; empty if it is needed. */
  public String whereLeftOut() {
    return left.words();
  }

  /** The number that holds where it is left out, if there is one. */
  Optional<Sourced<Integer>> instead() {
    return left.instead();
  }
}
