package rungwise.dosing.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** What the courses themselves make doubtful, whatever the search finds. */
final class Doubts {

  /** Odd, with bits everywhere: the golden ratio of 64 bits. */
  private static final long FACTOR = 0x9e3779b97f4a7c15L;

  private static final int FIRST_USEFUL = 3;
  private static final double LEAST = Math.log(Doubt.LEAST_USABLE_MINUTES);
  private static final double MOST = Math.log(Doubt.MOST_MINUTES);

  private Doubts() {}

  static boolean hasDurations(Courses courses) {
    for (int trial = 0; trial < courses.trials(); trial++) {
      if (courses.duration(trial) != Courses.NOT_KNOWN) {
        return true;
      }
    }
    return false;
  }

  static List<Doubt> of(Courses courses) {
    var doubts = new ArrayList<Doubt>();
    if (courses.count() < Doubt.LEAST_COURSES) {
      doubts.add(new Doubt.FewCourses(courses.count()));
    }
    int[][] counts = countGrades(courses);
    for (int grade = Courses.LOWEST_GRADE; grade <= Courses.HIGHEST_GRADE; grade++) {
      int all = 0;
      for (int[] ofGroup : counts) {
        all += ofGroup[grade];
      }
      if (all == 0) {
        doubts.add(new Doubt.MissingGrade(grade));
      }
    }
    for (int group = 0; group < counts.length; group++) {
      String name = courses.groups().get(group);
      if (courses.countOf(name) < Doubt.LEAST_OF_GROUP) {
        doubts.add(new Doubt.SmallGroup(name, courses.countOf(name)));
      }
      if (isSeparated(counts[group])) {
        doubts.add(new Doubt.SeparatedGroup(name));
      }
    }
    if (!hasDurations(courses)) {
      doubts.add(new Doubt.NoDurations());
    }
    doubts.addAll(suspicions(courses));
    return doubts;
  }

  private static int[][] countGrades(Courses courses) {
    int[][] counts = new int[courses.groups().size()][Courses.HIGHEST_GRADE + 1];
    for (int course = 0; course < courses.count(); course++) {
      for (int trial = courses.firstTrial(course);
          trial < courses.firstTrial(course + 1);
          trial++) {
        counts[courses.groupOf(course)][courses.grade(trial)]++;
      }
    }
    return counts;
  }

  private static boolean isSeparated(int[] counts) {
    int useful = 0;
    int poor = 0;
    for (int grade = Courses.LOWEST_GRADE; grade <= Courses.HIGHEST_GRADE; grade++) {
      if (grade < FIRST_USEFUL) {
        poor += counts[grade];
      } else {
        useful += counts[grade];
      }
    }
    return useful == 0 || poor == 0;
  }

  /** What looks as if it were written in another unit, or twice. */
  static List<Doubt> suspicions(Courses courses) {
    var doubts = new ArrayList<Doubt>();
    int[] hours = with(courses, Doubt.MEANT_IN_HOURS, trial -> isLikeHours(courses, trial));
    if (hours.length > 0) {
      doubts.add(new Doubt.LikeHours(hours.length, 1 + hours[0]));
    }
    int[] days = with(courses, 1, trial -> isLikeDays(courses, trial));
    if (days.length > 0) {
      doubts.add(new Doubt.LikeDays(days.length, 1 + days[0]));
    }
    int[] repeated = repeated(courses);
    if (repeated.length > 0) {
      doubts.add(new Doubt.Repeated(repeated.length, 1 + repeated[0]));
    }
    return doubts;
  }

  /** The courses of which so many trials are so. */
  private static int[] with(Courses courses, int least, IntPredicate isSo) {
    return IntStream.range(0, courses.count())
        .filter(course -> trials(courses, course).filter(isSo).count() >= least)
        .toArray();
  }

  private static IntStream trials(Courses courses, int course) {
    return IntStream.range(courses.firstTrial(course), courses.firstTrial(course + 1));
  }

  private static boolean isLikeHours(Courses courses, int trial) {
    return courses.duration(trial) == Courses.EXACT && courses.low(trial) < LEAST;
  }

  private static boolean isLikeDays(Courses courses, int trial) {
    return courses.duration(trial) != Courses.NOT_KNOWN && courses.low(trial) > MOST;
  }

  /** Whole courses are compared only where their hashes are equal: a million would not fit. */
  private static int[] repeated(Courses courses) {
    int least = Doubt.equalDurations(courses.count());
    int[] asked =
        IntStream.range(0, courses.count())
            .filter(course -> exactDurations(courses, course) >= least)
            .toArray();
    long[] hashes = Arrays.stream(asked).mapToLong(course -> hash(courses, course)).toArray();
    Set<Long> twice = twice(hashes);
    Set<List<Double>> seen = new HashSet<>();
    return IntStream.range(0, asked.length)
        .filter(i -> twice.contains(hashes[i]) && !seen.add(told(courses, asked[i])))
        .map(i -> asked[i])
        .toArray();
  }

  private static Set<Long> twice(long[] numbers) {
    long[] sorted = numbers.clone();
    Arrays.sort(sorted);
    return IntStream.range(1, sorted.length)
        .filter(i -> sorted[i] == sorted[i - 1])
        .mapToObj(i -> sorted[i])
        .collect(Collectors.toSet());
  }

  /** Of what {@link #told} tells. */
  private static long hash(Courses courses, int course) {
    long hash = 1;
    for (int trial = courses.firstTrial(course); trial < courses.firstTrial(course + 1); trial++) {
      hash = FACTOR * hash + Double.doubleToLongBits(courses.logDose(trial));
      hash = FACTOR * hash + courses.grade(trial);
      hash = FACTOR * hash + courses.duration(trial);
      hash = FACTOR * hash + Double.doubleToLongBits(courses.low(trial));
      hash = FACTOR * hash + Double.doubleToLongBits(courses.high(trial));
    }
    return hash;
  }

  private static long exactDurations(Courses courses, int course) {
    return trials(courses, course)
        .filter(trial -> courses.duration(trial) == Courses.EXACT)
        .count();
  }

  /** Everything that a course says of its injections. */
  private static List<Double> told(Courses courses, int course) {
    return trials(courses, course)
        .boxed()
        .flatMap(
            trial ->
                Stream.of(
                    courses.logDose(trial),
                    (double) courses.grade(trial),
                    (double) courses.duration(trial),
                    courses.low(trial),
                    courses.high(trial)))
        .toList();
  }
}
