package rungwise.files.history;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntFunction;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Lasted;

/** The trials of all patients in the order of the file, in a form that is small. */
final class CourseRows {

  private static final int FIRST_SIZE = 1024;
  private static final int SIZE = 1 << 16;
  private static final int HALF_OF_A_LONG = 32;
  private static final int BITS_OF_GRADE = 3;
  private static final int MASK_OF_GRADE = 7;
  private static final byte NOT_RECORDED = 0;
  private static final byte EXACTLY = 1;
  private static final byte AT_LEAST = 2;
  private static final byte BETWEEN = 3;

  private int[] groupOf = new int[FIRST_SIZE];
  private int[] trialsOf = new int[FIRST_SIZE];
  private int patients = 0;

  private final List<Block> blocks = new ArrayList<>();
  private int count = 0;

  /** Of durations between two bounds: both, where the row keeps the place of the first. */
  private double[] bounds = new double[FIRST_SIZE];

  private int bounded = 0;

  /** Whether each row belongs behind the one before it: then nothing has to be sorted. */
  private boolean isInOrder = true;

  /** The rows patient by patient, each behind the number of its injection, sorted by that. */
  private long[] sorted = {};

  /** So many rows in a row, which are never copied. */
  private static final class Block {
    private final int[] patient = new int[SIZE];
    private final int[] injection = new int[SIZE];
    private final double[] logDose = new double[SIZE];
    private final byte[] report = new byte[SIZE];
    private final double[] minutes = new double[SIZE];
  }

  /**
   * Whether a patient may be of this group, being new or having been of it before.
   *
   * @param number at most one above that of any before him
   */
  boolean isOf(int number, int group) {
    if (number == patients) {
      if (patients == groupOf.length) {
        groupOf = Arrays.copyOf(groupOf, 2 * patients);
        trialsOf = Arrays.copyOf(trialsOf, 2 * patients);
      }
      groupOf[patients] = group;
      patients++;
    }
    return groupOf[number] == group;
  }

  void add(int number, int itsInjection, double itsLogDose, Grade itsGrade, Lasted lasted) {
    int at = count & (SIZE - 1);
    if (at == 0) {
      blocks.add(new Block());
    }
    isInOrder &= count == 0 || isBehind(number, itsInjection, count - 1);
    Block block = blocks.getLast();
    block.patient[at] = number;
    block.injection[at] = itsInjection;
    block.logDose[at] = itsLogDose;
    byte kind =
        switch (lasted) {
          case Lasted.NotRecorded none -> NOT_RECORDED;
          case Lasted.Exactly(double minutes) -> keep(block, at, minutes, EXACTLY);
          case Lasted.AtLeast(double minutes) -> keep(block, at, minutes, AT_LEAST);
          case Lasted.Between(double from, double before) ->
              keep(block, at, placeOf(from, before), BETWEEN);
        };
    block.report[at] = (byte) (itsGrade.number() | kind << BITS_OF_GRADE);
    trialsOf[number]++;
    count++;
  }

  private static byte keep(Block block, int at, double minutes, byte kind) {
    block.minutes[at] = minutes;
    return kind;
  }

  private int placeOf(double from, double before) {
    if (bounded + 2 > bounds.length) {
      bounds = Arrays.copyOf(bounds, bounds.length + bounds.length / 2);
    }
    bounds[bounded] = from;
    bounds[bounded + 1] = before;
    bounded += 2;
    return bounded - 2;
  }

  private boolean isBehind(int number, int itsInjection, int row) {
    int before = patient(row);
    return number > before || (number == before && itsInjection > injection(row));
  }

  private Block block(int row) {
    return blocks.get(row / SIZE);
  }

  private int patient(int row) {
    return block(row).patient[row & (SIZE - 1)];
  }

  private int injection(int row) {
    return block(row).injection[row & (SIZE - 1)];
  }

  int patients() {
    return patients;
  }

  int count() {
    return count;
  }

  /** Whether there are any, and no two of a patient have one number. */
  boolean areRight() {
    for (int i = 1; i < count && !isInOrder; i++) {
      int row = (int) sorted[i];
      int before = (int) sorted[i - 1];
      if (patient(row) == patient(before) && injection(row) == injection(before)) {
        return false;
      }
    }
    return count > 0;
  }

  /**
   * Tells of the courses in the order in which their patients came, of the trials of each by the
   * number of the injection.
   */
  void tell(IntFunction<String> groupName, CourseTaker taker) {
    int at = 0;
    for (int number = 0; number < patients; number++) {
      taker.course(groupName.apply(groupOf[number]));
      for (int end = at + trialsOf[number]; at < end; at++) {
        int row = isInOrder ? at : (int) sorted[at];
        Block block = block(row);
        int place = row & (SIZE - 1);
        Grade grade = Grade.of(block.report[place] & MASK_OF_GRADE).orElseThrow();
        taker.trial(block.logDose[place], grade, lasted(block, place));
      }
    }
  }

  /** Nothing may be added after it. */
  void sort() {
    if (isInOrder) {
      return;
    }
    sorted = new long[count];
    int[] next = new int[patients];
    for (int number = 1; number < patients; number++) {
      next[number] = next[number - 1] + trialsOf[number - 1];
    }
    for (int row = 0; row < count; row++) {
      sorted[next[patient(row)]++] = (long) injection(row) << HALF_OF_A_LONG | row;
    }
    int at = 0;
    for (int number = 0; number < patients; number++) {
      Arrays.sort(sorted, at, at + trialsOf[number]);
      at += trialsOf[number];
    }
  }

  private Lasted lasted(Block block, int place) {
    double minutes = block.minutes[place];
    return switch (block.report[place] >> BITS_OF_GRADE) {
      case EXACTLY -> new Lasted.Exactly(minutes);
      case AT_LEAST -> new Lasted.AtLeast(minutes);
      case BETWEEN -> new Lasted.Between(bounds[(int) minutes], bounds[(int) minutes + 1]);
      default -> new Lasted.NotRecorded();
    };
  }
}
