package rungwise.clinic.today;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.day.Need;

/**
 * Port: the kept rows of the day's list. They are no record: each can be made anew from its course
 * at any time, and is, where it was made of an earlier entry or of other versions, has passed its
 * instant, or is not as it was kept.
 */
public interface DayRows {

  /** What a row rests on. */
  record Basis(String versions, Instant now) {}

  /**
   * A course in the list.
   *
   * @param row what was kept of it; empty if nothing was yet, or it is not as it was kept
   * @param isCurrent whether that still holds
   */
  record Listed(CourseId course, Optional<DayRow> row, boolean isCurrent) {}

  /**
   * How many courses there are, but for those that have ended and need nothing.
   *
   * @param open with an erection that is not known to be over
   * @param others all others, by what they need
   * @param due those whose row no longer holds
   */
  record Counts(int open, Map<Need, Integer> others, int due) {
    public Counts {
      others = Map.copyOf(others);
    }

    /** All courses that have not ended. */
    public int all() {
      return open + count(need -> true);
    }

    /** How many of the others need something of that kind. */
    public int count(Predicate<Need> isCounted) {
      return others.entrySet().stream()
          .filter(one -> isCounted.test(one.getKey()))
          .mapToInt(Map.Entry::getValue)
          .sum();
    }
  }

  /** Stands for all that every course rests on: another one after any change of it. */
  String foundation();

  /** The number of the last entry of any course; 0 if there is none. */
  long last();

  /** The number of the last entry of a course; 0 if there is none. */
  long endOf(CourseId course);

  /**
   * Keeps a row in the caller's transaction, unless something was written to the course since.
   *
   * @param basis by which versions and when it was made: an earlier clock does not believe it
   * @param end the last entry of the course before it was read
   * @param words by which the man is found
   */
  void keep(DayRow row, Basis basis, long end, Set<String> words);

  /** Courses whose row no longer holds, the most urgent by their facts first. */
  List<CourseId> due(Basis basis, int most);

  Counts counts(Basis basis);

  /** Courses with an erection that was not known to be over, or may be an emergency by now. */
  List<Listed> open(Basis basis, int most);

  /**
   * All others that have not ended: those that need one of the first things, then the rest, the
   * most worrying first.
   */
  List<Listed> others(Basis basis, Set<Need> first, int from, int most);

  /** Courses of men whom each group of words names by one of them, as far as they are kept. */
  List<CourseId> found(List<Set<String>> beginnings, int most);

  /** Whether there are fewer rows than courses. */
  boolean isAnyMissing();

  /** Has every row made anew that is missing or is not as it was kept; gives their number. */
  int repair();
}
