package rungwise.dosing.history;

import java.time.Instant;

/** Something that a rule read, so that a reader can check it. */
public sealed interface Fact {

  /** The name of a condition of the screening. */
  String CONDITION = "condition";

  /** The name of what such a condition asks for. */
  String WHAT_TO_DO = "what to do";

  /** What it is: "last dose". */
  String what();

  /** A fact in words; amounts have printed themselves. */
  record Said(String what, String value) implements Fact {
    @Override
    public String toString() {
      return what + ": " + value;
    }
  }

  /** A fact with an instant, which a reader sees in the clinic's zone. */
  record Happened(String what, Instant at) implements Fact {
    @Override
    public String toString() {
      return what + ": " + at;
    }
  }

  /**
   * Which of several things of the record it was, so that one is not taken for another.
   *
   * @param id its identity in the record, which no reader sees
   */
  record Which(String what, String id) implements Fact {
    @Override
    public String toString() {
      return what + ": " + id;
    }
  }

  static Fact said(String what, Object value) {
    return new Said(what, value.toString());
  }
}
