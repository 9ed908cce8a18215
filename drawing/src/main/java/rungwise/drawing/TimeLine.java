package rungwise.drawing;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * Injections in the order in which they happened, as they are to be drawn. Volumes of different
 * preparations cannot be compared, so all of them should be of one.
 *
 * @param points oldest first, at least one
 */
public record TimeLine(List<Point> points) {

  /** From here on an erection is an emergency. */
  static final TimeSpan EMERGENCY = TimeSpan.ofHours(4);

  /** So many injections at most are drawn: the newest. */
  static final int MOST_DRAWN = 40;

  private static final int HIGHEST_GRADE = 4;
  private static final int LEAST_USEFUL_GRADE = 3;

  /** How long after the injection the penis was soft again. */
  public sealed interface SoftAfter {

    /** Known to the minute. */
    record Exactly(TimeSpan duration) implements SoftAfter {}

    /** Still firm when last seen; the end is not known. */
    record AtLeast(TimeSpan duration) implements SoftAfter {}

    /**
     * Soft at some time between two.
     *
     * @param from 0 or more
     * @param before more than from, and left out
     */
    record Between(TimeSpan from, TimeSpan before) implements SoftAfter {
      public Between {
        if (!before.isMoreThan(from)) {
          throw new IllegalArgumentException("bug: soft between " + from + " and " + before);
        }
      }
    }

    /** Not recorded. */
    record NotKnown() implements SoftAfter {}

    /** Whether what is recorded itself reaches a limit, or has an upper end beyond it. */
    private boolean reaches(TimeSpan limit) {
      return switch (this) {
        case Exactly exactly -> !exactly.duration().isLessThan(limit);
        case AtLeast atLeast -> !atLeast.duration().isLessThan(limit);
        case Between between -> between.before().isMoreThan(limit);
        case NotKnown notKnown -> false;
      };
    }

    /** "soft after 45 min". */
    default String words() {
      return switch (this) {
        case Exactly exactly -> "soft after " + exactly.duration();
        case AtLeast atLeast -> "still firm at " + atLeast.duration() + ", end not known";
        case Between between -> "soft between " + between.from() + " and " + between.before();
        case NotKnown notKnown -> "duration not known";
      };
    }
  }

  /** What else is known of an injection. */
  public enum Note {
    /** Given in the clinic; otherwise at home. */
    IN_CLINIC,
    /** It lasted four hours or more, or may have. */
    FOUR_HOURS
  }

  /**
   * One injection.
   *
   * @param date the day in the clinic's zone
   * @param drawn the volume, more than 0
   * @param grade the rigidity, 0 to 4
   */
  public record Point(
      LocalDate date, Volume drawn, int grade, SoftAfter softAfter, Set<Note> notes) {
    public Point {
      notes = Set.copyOf(notes);
      if (grade < 0 || grade > HIGHEST_GRADE) {
        throw new IllegalArgumentException("bug: a rigidity of " + grade);
      }
      if (!drawn.isMoreThan(Volume.ZERO)) {
        throw new IllegalArgumentException("bug: an injection of " + drawn);
      }
    }

    boolean isInClinic() {
      return notes.contains(Note.IN_CLINIC);
    }

    /** Whether it is, or may be, an emergency: marked so, or four hours by its own duration. */
    boolean isEmergency() {
      return notes.contains(Note.FOUR_HOURS) || softAfter.reaches(EMERGENCY);
    }
  }

  public TimeLine {
    points = List.copyOf(points);
    if (points.isEmpty()) {
      throw new IllegalArgumentException("bug: a time line without an injection");
    }
    List<LocalDate> dates = points.stream().map(Point::date).toList();
    if (IntStream.range(1, dates.size()).anyMatch(i -> dates.get(i).isBefore(dates.get(i - 1)))) {
      throw new IllegalArgumentException("bug: the time line turns back: " + dates);
    }
  }

  /** Whether a rigidity is enough for intercourse. */
  static boolean isUseful(int grade) {
    return grade >= LEAST_USEFUL_GRADE;
  }

  /** The newest ones, oldest first. */
  List<Point> drawn() {
    return points.subList(notDrawn(), points.size());
  }

  /** How many earlier ones are left out. */
  int notDrawn() {
    return Math.max(0, points.size() - MOST_DRAWN);
  }
}
