package rungwise.dosing.fit;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.response.Trial;

/**
 * The courses of many men as the response model reads them, in a form that is small: a trial takes
 * 25 bytes. Grade 0 is kept as 1, and a duration only where the grade is 3 or 4.
 *
 * <p>Groups, courses and trials are numbered from 0 in the order in which they were added.
 */
public final class Courses {

  static final int LOWEST_GRADE = 1;
  static final int HIGHEST_GRADE = 4;
  private static final int MASK_OF_GRADE = 7;
  private static final double MILLIONTHS = 1e6;

  /** How a duration is known. */
  static final byte NOT_KNOWN = 0;

  static final byte EXACT = 1;

  /** It is between two bounds; one of them may be infinite. */
  static final byte BOUNDED = 2;

  private final List<String> groups;
  private final int courses;
  private final int[] groupOf;
  private final int[] firstTrial;
  private final double[] logDose;
  private final byte[] report;
  private final double[] low;
  private final double[] high;

  private Courses(Builder builder) {
    groups = List.copyOf(builder.groups.keySet());
    courses = builder.courses;
    groupOf = builder.groupOf;
    firstTrial = builder.firstTrial;
    logDose = builder.logDose;
    report = builder.report;
    low = builder.low;
    high = builder.high;
  }

  public static Builder builder() {
    return new Builder(Builder.FIRST_SIZE, Builder.FIRST_SIZE);
  }

  /** A builder that makes room at once for so many courses and trials, or for more later. */
  public static Builder builder(int courses, int trials) {
    return new Builder(courses + 2, trials);
  }

  /** The groups in the order in which they first came. */
  public List<String> groups() {
    return groups;
  }

  /** How many courses there are. */
  public int count() {
    return courses;
  }

  /** How many trials there are in all courses. */
  public int trials() {
    return firstTrial[courses];
  }

  /** How many courses a group has. */
  public int countOf(String group) {
    int wanted = groups.indexOf(group);
    return (int) Arrays.stream(groupOf, 0, courses).filter(one -> one == wanted).count();
  }

  /** How many trials a course has. */
  public int trialsOf(int course) {
    return firstTrial[course + 1] - firstTrial[course];
  }

  /** The group of a course. */
  public String nameOfGroup(int course) {
    return groups.get(groupOf[course]);
  }

  /** The trials of a course in their order, as far as the model reads them. */
  public List<Trial> listOfTrials(int course) {
    return IntStream.range(firstTrial[course], firstTrial[course + 1])
        .mapToObj(trial -> new Trial(logDose[trial], gradeOf(trial), lasted(trial)))
        .toList();
  }

  private Grade gradeOf(int trial) {
    return Grade.of(grade(trial)).orElseThrow();
  }

  private Lasted lasted(int trial) {
    return switch (duration(trial)) {
      case EXACT -> new Lasted.Exactly(minutes(low[trial]));
      case BOUNDED ->
          Double.isInfinite(high[trial])
              ? new Lasted.AtLeast(minutes(low[trial]))
              : new Lasted.Between(minutes(low[trial]), minutes(high[trial]));
      default -> new Lasted.NotRecorded();
    };
  }

  /** The minutes of a logarithm; to the last digit where they were given in millionths. */
  private static double minutes(double log) {
    double minutes = Math.exp(log);
    double rounded = Math.rint(minutes * MILLIONTHS) / MILLIONTHS;
    return Math.log(rounded) == log ? rounded : minutes;
  }

  int groupOf(int course) {
    return groupOf[course];
  }

  /** The first trial of a course; that of the next course is one past its last. */
  int firstTrial(int course) {
    return firstTrial[course];
  }

  double logDose(int trial) {
    return logDose[trial];
  }

  /** 1 to 4. */
  int grade(int trial) {
    return report[trial] & MASK_OF_GRADE;
  }

  byte duration(int trial) {
    return (byte) (report[trial] >> Builder.BITS_OF_GRADE);
  }

  /** The logarithm of the minutes, or of the lower bound; minus infinity where there is none. */
  double low(int trial) {
    return low[trial];
  }

  /** The logarithm of the upper bound; infinite where there is none. */
  double high(int trial) {
    return high[trial];
  }

  /** Takes courses one after another. It is used up by {@link #build}. */
  public static final class Builder {

    private static final int BITS_OF_GRADE = 3;
    private static final int FIRST_SIZE = 1024;

    private final Map<String, Integer> groups = new LinkedHashMap<>();
    private int courses = 0;
    private int[] groupOf;
    private int[] firstTrial;
    private double[] logDose;
    private byte[] report;
    private double[] low;
    private double[] high;

    private Builder(int sizeOfCourses, int sizeOfTrials) {
      groupOf = new int[sizeOfCourses];
      firstTrial = new int[sizeOfCourses];
      logDose = new double[sizeOfTrials];
      report = new byte[sizeOfTrials];
      low = new double[sizeOfTrials];
      high = new double[sizeOfTrials];
    }

    /** Begins the course of a man of a group. */
    public Builder course(String group) {
      Integer known = groups.get(group);
      if (known == null) {
        known = groups.size();
        groups.put(group, known);
      }
      if (courses + 1 >= groupOf.length) {
        groupOf = Arrays.copyOf(groupOf, larger(courses));
        firstTrial = Arrays.copyOf(firstTrial, larger(courses));
      }
      groupOf[courses] = known;
      courses++;
      firstTrial[courses] = firstTrial[courses - 1];
      return this;
    }

    /**
     * Adds a trial to the course that was begun last.
     *
     * @param dose the logarithm of what was given as a multiple of the reference amount: {@link
     *     rungwise.dosing.response.Given#logDose}
     * @throws IllegalArgumentException if no course was begun, the dose is not finite, or a usable
     *     response lasted 0 minutes exactly
     */
    public Builder trial(double dose, Grade grade, Lasted lasted) {
      if (courses == 0 || !Double.isFinite(dose)) {
        throw new IllegalArgumentException("bug: a trial at " + dose + " in course " + courses);
      }
      int at = firstTrial[courses];
      if (at >= report.length) {
        enlarge(larger(at));
      }
      logDose[at] = dose;
      byte known = grade.isUseful() ? keep(at, lasted) : NOT_KNOWN;
      report[at] = (byte) (Math.max(LOWEST_GRADE, grade.number()) | (known << BITS_OF_GRADE));
      firstTrial[courses]++;
      return this;
    }

    private byte keep(int at, Lasted lasted) {
      return switch (lasted) {
        case Lasted.NotRecorded none -> NOT_KNOWN;
        case Lasted.Exactly(double minutes) -> exact(at, minutes);
        case Lasted.AtLeast(double minutes) -> bounded(at, minutes, Double.POSITIVE_INFINITY);
        case Lasted.Between(double from, double before) -> bounded(at, from, before);
      };
    }

    private byte exact(int at, double minutes) {
      if (minutes > 0) {
        low[at] = Math.log(minutes);
        return EXACT;
      }
      throw new IllegalArgumentException("bug: a usable response of " + minutes + " minutes");
    }

    private byte bounded(int at, double from, double before) {
      low[at] = Math.log(from);
      high[at] = Math.log(before);
      boolean saysNothing = from == 0 && Double.isInfinite(before);
      return saysNothing ? NOT_KNOWN : BOUNDED;
    }

    private void enlarge(int size) {
      logDose = Arrays.copyOf(logDose, size);
      report = Arrays.copyOf(report, size);
      low = Arrays.copyOf(low, size);
      high = Arrays.copyOf(high, size);
    }

    private static int larger(int size) {
      return size + size / 2 + FIRST_SIZE;
    }

    /** The courses; nothing more may be added. */
    public Courses build() {
      return new Courses(this);
    }
  }
}
