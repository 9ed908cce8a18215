package rungwise.dosing.predictive;

import java.util.Arrays;
import rungwise.dosing.predictive.Predicted.Range;

/** Replicated counts, one for each replication. */
final class Tally {

  static final int GRADES = 4;
  private static final int FIRST_USEFUL = 3;
  private static final double LOW = 0.05;
  private static final double HIGH = 0.95;

  /** By bin, grade less 1, and replication. */
  private final int[][][] grades;

  /** By limit and replication. */
  private final int[][] durations;

  Tally(int bins, int replications) {
    grades = new int[bins][GRADES][replications];
    durations = new int[Limit.values().length][replications];
  }

  void addGrade(int bin, int grade, int replication) {
    grades[bin][grade - 1][replication]++;
  }

  void addDuration(Limit limit, int replication) {
    durations[limit.place()][replication]++;
  }

  void add(Tally other) {
    for (int bin = 0; bin < grades.length; bin++) {
      for (int grade = 0; grade < GRADES; grade++) {
        add(grades[bin][grade], other.grades[bin][grade]);
      }
    }
    for (int limit = 0; limit < durations.length; limit++) {
      add(durations[limit], other.durations[limit]);
    }
  }

  private static void add(int[] counts, int[] others) {
    for (int i = 0; i < counts.length; i++) {
      counts[i] += others[i];
    }
  }

  Range ofGrade(int bin, int grade) {
    return range(grades[bin][grade - 1]);
  }

  Range ofUseful(int bin) {
    return range(useful(bin));
  }

  private int[] useful(int bin) {
    int[] sums = new int[grades[bin][0].length];
    for (int grade = FIRST_USEFUL; grade <= GRADES; grade++) {
      add(sums, grades[bin][grade - 1]);
    }
    return sums;
  }

  Range ofDuration(Limit limit) {
    return range(durations[limit.place()]);
  }

  /** How many replications miss so many of the ranges or more, one being the reports themselves. */
  double partMissing(int missed) {
    int replications = durations[0].length;
    int[] misses = new int[replications];
    for (int bin = 0; bin < grades.length; bin++) {
      for (int[] counts : grades[bin]) {
        addMisses(misses, counts);
      }
      addMisses(misses, useful(bin));
    }
    for (int[] counts : durations) {
      addMisses(misses, counts);
    }
    long asMany = Arrays.stream(misses).filter(one -> one >= missed).count();
    return (asMany + 1.0) / (replications + 1);
  }

  private static void addMisses(int[] misses, int[] counts) {
    Range range = range(counts);
    for (int i = 0; i < misses.length; i++) {
      misses[i] += range.meets(counts[i], counts[i]) ? 0 : 1;
    }
  }

  /** Between two replications, the one farther out is taken: a range is rather wide than narrow. */
  private static Range range(int[] counts) {
    int[] sorted = counts.clone();
    Arrays.sort(sorted);
    int last = sorted.length - 1;
    return new Range(
        sorted[(int) Math.floor(LOW * last)],
        Arrays.stream(sorted).average().orElseThrow(),
        sorted[(int) Math.ceil(HIGH * last)]);
  }
}
