package rungwise.clinic.room;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;

/**
 * A man under observation in words, for the board of the room and for his own page. Every time and
 * amount in it was taken from the record.
 *
 * @param dose volume and mark, as really drawn
 * @param injectedAt the clock time, with the day if that is not today
 * @param since how long ago that is
 * @param check when he is to be looked at next
 * @param lastSeen what was seen last, and when
 * @param alarm what its length asks for
 * @param emergencyAt the clock time at which it will have lasted 4 hours
 * @param place side and place on the clock; may be empty
 * @param milestones what is waited for, in the order in which it comes
 * @param isSound whether his record is as it was written; if not, nothing of it is relied on
 * @param seen everything that was written down, in the order of time
 */
public record WatchView(
    CourseId course,
    EntryId observation,
    String fullName,
    String recordNumber,
    String dose,
    String composition,
    String injectedAt,
    String since,
    Check check,
    String lastSeen,
    Alarm alarm,
    String emergencyAt,
    String place,
    List<Milestone> milestones,
    boolean isSound,
    List<Seen> seen) {

  public WatchView {
    milestones = List.copyOf(milestones);
    seen = List.copyOf(seen);
  }

  /** When he is to be looked at next. */
  public record Check(String at, String distance, boolean isDue) {}

  /**
   * Something that is waited for.
   *
   * @param at the clock time; empty if it has not been seen
   * @param after how long after the injection; empty if it has not been seen
   */
  public record Milestone(String words, Optional<String> at, Optional<String> after) {}

  /**
   * What was seen at one time.
   *
   * @param firmness may be empty, as may the vital signs
   */
  public record Seen(String at, String after, String what, String firmness, String vitals) {}

  /** What the length of an erection asks for. */
  public enum Alarm {
    NONE(""),
    LONG("2 hours have passed: tell a prescriber now, and do not let him leave."),
    EMERGENCY("Emergency: 4 hours have passed and he is not down. Treat him now.");

    private final String words;

    Alarm(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }

    /** Whether 4 hours have passed. */
    public boolean isEmergency() {
      return this == EMERGENCY;
    }

    /** Whether there is anything to say. */
    public boolean isLoud() {
      return this != NONE;
    }
  }
}
