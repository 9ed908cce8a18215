package rungwise.clinic.audit;

/** The pages that name a man. A word that has been written stays, so none is renamed or removed. */
public enum Screen {
  DAY_LIST("the day's list"),
  COURSE("the course page"),
  SIGNED_DOSE("the signed dose"),
  REPORT("the report form"),
  SCREENING("the screening"),
  BEFORE_HOME("what comes before home use"),
  VIAL("his vials"),
  VISIT("an injection in the clinic"),
  ROOM("the room board"),
  FORECAST("what a dose may do"),
  FIT("a fit to the clinic's own courses"),
  PROTOCOL_COURSES("the courses of a protocol"),
  PREPARATION_COURSES("the courses of a preparation"),
  VIEWS("who has seen the course"),
  RECORD_NUMBERS("the list of record numbers"),
  ACCESS_TAKEN("the list of access taken"),
  AUDIT_TRAIL("the audit trail"),
  SEARCH("the search for a man"),
  CALL("the call about a long erection"),
  REACHING("how he is reached"),
  RUNNING("whether his treatment goes on"),
  TRANSFER("what he injects elsewhere"),
  SHEET("the sheet for home"),
  SAME_MAN("other courses of the same man"),
  INJECTIONS("his injections"),
  PLAN("the plan and its reasons"),
  WHOLE_RECORD("the whole record");

  private final String words;

  Screen(String words) {
    this.words = words;
  }

  /** The page for people: "the course page". */
  public String words() {
    return words;
  }
}
