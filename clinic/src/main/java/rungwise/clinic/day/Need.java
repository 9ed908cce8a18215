package rungwise.clinic.day;

import java.util.Collections;
import java.util.EnumSet;
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
  OBSERVATION(5, "Under observation"),
  SUSPENDED(6, "Signed dose suspended"),
  FLAGGED(7, "Flagged report for a prescriber"),
  DECISION(8, "Waits for a prescriber"),
  SIGNATURE(9, "Dose to sign"),
  CALL_AGAIN(10, "Not reached: call again"),
  SCREENING(11, "Screening questions to ask"),
  TEACHING(12, "To teach before home"),
  EXAMINATION(13, "Examination due"),
  PAUSED(14, "Paused: a prescriber resumes or ends it"),
  NOTHING(15, "Nothing now"),
  ENDED(16, "Treatment ended");

  private final int rank;
  private final String words;

  Need(int rank, String words) {
    this.rank = rank;
    this.words = words;
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
    return this != NOTHING && this != ENDED;
  }

  /**
   * What its time is called: since when it waits, when he injected, or when something was written.
   */
  public String since(String time) {
    return switch (this) {
      case OBSERVATION, DECISION, SIGNATURE, SCREENING, TEACHING, PAUSED -> "since " + time;
      case EXAMINATION -> "due " + time;
      case CALL_AGAIN -> "next try " + time;
      case EMERGENCY, FIRM, END_NOT_KNOWN, EMERGENCY_OVER, FLAGGED -> "injected " + time;
      case RECORD_NOT_SOUND, SUSPENDED, NOTHING, ENDED -> "last entry " + time;
    };
  }

  /**
   * Whether it is the task of who has one of these roles. What worries most is everybody's, so that
   * nobody's list hides it.
   */
  public boolean isTaskOf(Set<Role> roles) {
    return !Collections.disjoint(whose(), roles);
  }

  private Set<Role> whose() {
    return switch (this) {
      case EMERGENCY, FIRM, END_NOT_KNOWN, RECORD_NOT_SOUND, EMERGENCY_OVER ->
          EnumSet.allOf(Role.class);
      case SUSPENDED, FLAGGED, DECISION, SIGNATURE, PAUSED -> EnumSet.of(Role.PRESCRIBER);
      case OBSERVATION, SCREENING, TEACHING -> EnumSet.of(Role.NURSE_EDUCATOR);
      case CALL_AGAIN -> EnumSet.of(Role.NURSE_EDUCATOR, Role.ON_CALL_CLINICIAN);
      case EXAMINATION -> EnumSet.of(Role.NURSE_EDUCATOR, Role.PRESCRIBER);
      case NOTHING, ENDED -> EnumSet.noneOf(Role.class);
    };
  }

  /** Whether an erection is not known to be over. */
  public boolean isNotOver() {
    return this == EMERGENCY || this == FIRM || this == END_NOT_KNOWN;
  }
}
