package rungwise.checks.bytes;

/** What became of one changed byte. */
enum Outcome {
  TOLD_AT_OPENING("told when the record was opened"),
  TOLD_AT_THE_LOOK("told by the first look"),
  TOLD_BY_THE_BACKGROUND("told by the check in the background"),
  UNCHANGED("changed nothing that is served"),
  SERVED_AS_TRUTH("served as truth");

  private final String words;

  Outcome(String words) {
    this.words = words;
  }

  String words() {
    return words;
  }
}
