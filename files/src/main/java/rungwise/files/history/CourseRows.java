package rungwise.files.history;

import java.util.Arrays;
import java.util.function.IntFunction;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Lasted;

/** The trials of all patients in the order of the file, in a form that is small. */
final class CourseRows {

  private static final int FIRST_SIZE = 1024;
  private static final int HALF_OF_A_LONG = 32;
  private static final byte NOT_RECORDED = 0;
  private static final byte EXACTLY = 1;
  private static final byte AT_LEAST = 2;
  private static final byte BETWEEN = 3;

  private int[] groupOf = new int[FIRST_SIZE];
  private int[] trialsOf = new int[FIRST_SIZE];
  private int patients = 0;

  private int[] patient = new int[FIRST_SIZE];
  private int[] injection = new int[FIRST_SIZE];
  private double[] logDose = new double[FIRST_SIZE];
  private byte[] grade = new byte[FIRST_SIZE];
  private byte[] kind = new byte[FIRST_SIZE];
  private double[] low = new double[FIRST_SIZE];
  private double[] high = new double[FIRST_SIZE];
  private int count = 0;

  /** The rows patient by patient, each behind the number of its injection, sorted by that. */
  private long[] sorted = {};

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
    if (count == patient.length) {
      enlarge(count + count / 2);
    }
    patient[count] = number;
    injection[count] = itsInjection;
    logDose[count] = itsLogDose;
    grade[count] = (byte) itsGrade.number();
    switch (lasted) {
      case Lasted.NotRecorded none -> keep(NOT_RECORDED, 0, 0);
      case Lasted.Exactly(double minutes) -> keep(EXACTLY, minutes, 0);
      case Lasted.AtLeast(double minutes) -> keep(AT_LEAST, minutes, 0);
      case Lasted.Between(double from, double before) -> keep(BETWEEN, from, before);
    }
    trialsOf[number]++;
    count++;
  }

  private void keep(byte itsKind, double itsLow, double itsHigh) {
    kind[count] = itsKind;
    low[count] = itsLow;
    high[count] = itsHigh;
  }

  private void enlarge(int size) {
    patient = Arrays.copyOf(patient, size);
    injection = Arrays.copyOf(injection, size);
    logDose = Arrays.copyOf(logDose, size);
    grade = Arrays.copyOf(grade, size);
    kind = Arrays.copyOf(kind, size);
    low = Arrays.copyOf(low, size);
    high = Arrays.copyOf(high, size);
  }

  /** Whether there are any, and no two of a patient have one number. */
  boolean areRight() {
    for (int i = 1; i < count; i++) {
      int row = (int) sorted[i];
      int before = (int) sorted[i - 1];
      if (patient[row] == patient[before] && injection[row] == injection[before]) {
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
        int row = (int) sorted[at];
        taker.trial(logDose[row], Grade.of(grade[row]).orElseThrow(), lasted(row));
      }
    }
  }

  /** Nothing may be added after it. */
  void sort() {
    sorted = new long[count];
    int[] next = new int[patients];
    for (int number = 1; number < patients; number++) {
      next[number] = next[number - 1] + trialsOf[number - 1];
    }
    for (int row = 0; row < count; row++) {
      sorted[next[patient[row]]++] = (long) injection[row] << HALF_OF_A_LONG | row;
    }
    int at = 0;
    for (int number = 0; number < patients; number++) {
      Arrays.sort(sorted, at, at + trialsOf[number]);
      at += trialsOf[number];
    }
  }

  private Lasted lasted(int row) {
    return switch (kind[row]) {
      case EXACTLY -> new Lasted.Exactly(low[row]);
      case AT_LEAST -> new Lasted.AtLeast(low[row]);
      case BETWEEN -> new Lasted.Between(low[row], high[row]);
      default -> new Lasted.NotRecorded();
    };
  }
}
