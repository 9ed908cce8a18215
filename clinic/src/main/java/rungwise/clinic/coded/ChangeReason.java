package rungwise.clinic.coded;

/** Why a prescriber signed another dose than the one proposed. */
public enum ChangeReason {
  MORE_CAUTION("more caution for this man"),
  PATIENT_WISH("the man's wish, after discussion"),
  HISTORY_ELSEWHERE("his response elsewhere, not on this record"),
  SUPPLY("supply or syringe at hand"),
  OTHER("another reason, written down");

  private final String words;

  ChangeReason(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
