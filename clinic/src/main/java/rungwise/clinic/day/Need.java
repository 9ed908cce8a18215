package rungwise.clinic.day;

import java.util.Collections;
import java.util.Set;
import java.util.stream.Stream;
import rungwise.clinic.people.Role;

/** What a course needs from somebody, the most worrying first. */
public enum Need {
  EMERGENCY(0, "Emergency: 4 hours have passed, end not known"),
  FIRM(1, "Firm when last seen, end not known"),
  END_NOT_KNOWN(2, "Not known how it ended"),
  RECORD_NOT_SOUND(3, "Record changed: rely on nothing in it"),
  EMERGENCY_OVER(4, "Emergency over: review it"),
  OBSERVATION(5, "Under observation", Role.NURSE_EDUCATOR),
  SUSPENDED(6, "Signed dose suspended", Role.PRESCRIBER),
  FLAGGED(7, "Flagged report for a prescriber", Role.PRESCRIBER),
  DECISION(8, "Waits for a prescriber", Role.PRESCRIBER),
  SIGNATURE(9, "Dose to sign", Role.PRESCRIBER),
  CALL_AGAIN(10, "Not reached: call again", Role.NURSE_EDUCATOR, Role.ON_CALL_CLINICIAN),
  SCREENING(11, "Screening questions to ask", Role.NURSE_EDUCATOR),
  TEACHING(12, "To teach before home", Role.NURSE_EDUCATOR),
  EXAMINATION(13, "Examination due", Role.NURSE_EDUCATOR, Role.PRESCRIBER),
  NOTHING(14, "Nothing now");

  private final int rank;
  private final String words;
  private final Set<Role> tasks;

  Need(int rank, String words, Role... tasks) {
    this.rank = rank;
    this.words = words;
    this.tasks = Set.of(tasks);
  }

  public String words() {
    return words;
  }

  /**
   * Its place on the list, 0 for the most urgent. Kept rows hold it: a number keeps its meaning.
   */
  public int rank() {
    return rank;
  }

  /**
   * The need of a rank.
   *
   * @throws IllegalArgumentException if there is none
   */
  public static Need ofRank(int rank) {
    return Stream.of(values())
        .filter(one -> one.rank == rank)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("there is no need of rank " + rank));
  }

  /** Whether somebody has to do something. */
  public boolean isWaiting() {
    return this != NOTHING;
  }

  /**
   * What its time is called: since when it waits, when he injected, or when something was written.
   */
  public String since(String time) {
    return switch (this) {
      case OBSERVATION, DECISION, SIGNATURE, SCREENING, TEACHING -> "since " + time;
      case EXAMINATION -> "due " + time;
      case CALL_AGAIN -> "next try " + time;
      case EMERGENCY, FIRM, END_NOT_KNOWN, EMERGENCY_OVER, FLAGGED -> "injected " + time;
      case RECORD_NOT_SOUND, SUSPENDED, NOTHING -> "last entry " + time;
    };
  }

  /**
   * Whether it is the task of who has one of these roles. What worries most is everybody's, so that
   * nobody's list hides it.
   */
  public boolean isTaskOf(Set<Role> roles) {
    return rank < OBSERVATION.rank || !Collections.disjoint(tasks, roles);
  }

  /** Whether an erection is not known to be over. */
  public boolean isNotOver() {
    return this == EMERGENCY || this == FIRM || this == END_NOT_KNOWN;
  }
}
