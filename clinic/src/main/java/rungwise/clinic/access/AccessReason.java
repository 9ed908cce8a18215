package rungwise.clinic.access;

/** Why somebody takes access to a course that he or she does not treat. */
public enum AccessReason {
  LONG_ERECTION("His erection is not going down"),
  CALLED("He called, or somebody called about him"),
  COVERS("I cover for the colleague who treats him"),
  OTHER("Another reason, which I write below");

  private final String words;

  AccessReason(String words) {
    this.words = words;
  }

  /** The reason for people. */
  public String words() {
    return words;
  }
}
