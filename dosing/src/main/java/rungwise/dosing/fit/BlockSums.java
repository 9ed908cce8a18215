package rungwise.dosing.fit;

import java.util.Arrays;

/** Sums over the courses of one block, which all belong to one group. */
final class BlockSums {

  /** First and second derivatives, in the order of {@link Point}. */
  final double[] first = new double[Point.COUNT];

  final double[] second = new double[Point.PAIRS];
  double log = 0;

  private final double[] courseFirst = new double[Point.COUNT];
  private final double[] courseSecond = new double[Point.PAIRS];

  void clearCourse() {
    Arrays.fill(courseFirst, 0);
    Arrays.fill(courseSecond, 0);
  }

  /** Adds one node of a course. */
  void weigh(double weight, Integrand node) {
    double[] slopes = node.first;
    int at = 0;
    for (int row = 0; row < Point.COUNT; row++) {
      double weighed = weight * slopes[row];
      courseFirst[row] += weighed;
      for (int column = row; column < Point.COUNT; column++) {
        courseSecond[at] += weighed * slopes[column] + weight * node.second[at];
        at++;
      }
    }
  }

  /** Adds a course, of which all nodes have been weighed. */
  void endCourse(double logProbability, double total) {
    log += logProbability;
    int at = 0;
    for (int row = 0; row < Point.COUNT; row++) {
      double slope = courseFirst[row] / total;
      first[row] += slope;
      for (int column = row; column < Point.COUNT; column++) {
        second[at] += courseSecond[at] / total - slope * (courseFirst[column] / total);
        at++;
      }
    }
  }

  /** Adds the sums of another block. */
  void add(BlockSums other) {
    log += other.log;
    for (int i = 0; i < first.length; i++) {
      first[i] += other.first[i];
    }
    for (int i = 0; i < second.length; i++) {
      second[i] += other.second[i];
    }
  }
}
