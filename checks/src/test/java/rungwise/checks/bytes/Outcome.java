package rungwise.checks.bytes;

/** What became of one changed byte. */
enum Outcome {
  TOLD_AT_OPENING("told when the record was opened"),
  TOLD_AT_THE_LOOK("told by the first look"),
  TOLD_BY_THE_BACKGROUND("told by the check in the background"),
  UNCHANGED("changed nothing that is served"),
  WITHOUT_WORDS("ended in a failure that nothing explains"),
  SERVED_AS_TRUTH("served as truth");

  private final String words;

  Outcome(String words) {
    this.words = words;
  }

  /** Whether no change may end so. */
  boolean isFailure() {
    return this == WITHOUT_WORDS || this == SERVED_AS_TRUTH;
  }

  String words() {
    return words;
  }
}
