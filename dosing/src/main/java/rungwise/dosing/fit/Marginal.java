package rungwise.dosing.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntConsumer;
import rungwise.inference.Curved;

/**
 * The logarithm of the probability of all courses at any parameters.
 *
 * <p>Courses are summed in blocks of one group, and the blocks in their order, so that the sum is
 * the same to the last digit whoever sums them.
 */
final class Marginal {

  private static final int LARGEST_BLOCK = 128;

  private final Courses courses;
  private final Layout layout;
  private final Workers workers;

  /** The courses sorted by group. */
  private final int[] order;

  /** Where each block begins in that order; one more at the end. */
  private final int[] firstOfBlock;

  /**
   * All courses of a stride, or all.
   *
   * @param stride 1 for all courses, 2 for every second one of each group, and so on
   */
  Marginal(Courses courses, Layout layout, Workers workers, int stride) {
    this.courses = courses;
    this.layout = layout;
    this.workers = workers;
    List<Integer> starts = new ArrayList<>();
    order = new int[courses.count()];
    int at = 0;
    for (int group = 0; group < courses.groups().size(); group++) {
      int first = at;
      int seen = 0;
      for (int course = 0; course < courses.count(); course++) {
        if (courses.groupOf(course) == group) {
          if (seen % stride == 0) {
            order[at] = course;
            at++;
          }
          seen++;
        }
      }
      for (int start = first; start < at; start += LARGEST_BLOCK) {
        starts.add(start);
      }
    }
    starts.add(at);
    firstOfBlock = starts.stream().mapToInt(Integer::intValue).toArray();
  }

  /** How many courses are summed. */
  int count() {
    return firstOfBlock[firstOfBlock.length - 1];
  }

  Layout layout() {
    return layout;
  }

  /** The logarithm of the probability, by one worker. */
  double log(double[] scaled) {
    var integral = new CourseIntegral(courses, layout.point(scaled));
    double all = 0;
    for (int block = 0; block + 1 < firstOfBlock.length; block++) {
      double sum = 0;
      for (int i = firstOfBlock[block]; i < firstOfBlock[block + 1]; i++) {
        sum += integral.logProbability(order[i]);
      }
      all += sum;
    }
    return all;
  }

  /** The same sum for points near one point, faster. */
  StayingNodes near(double[] scaled) {
    return new StayingNodes(courses, Arrays.copyOf(order, count()), layout.point(scaled));
  }

  /** Value and derivatives, by all workers. */
  Curved curved(double[] scaled) {
    Point point = layout.point(scaled);
    BlockSums[] blocks = new BlockSums[firstOfBlock.length - 1];
    workers.share(blocks.length, () -> blockWorker(point, blocks));
    List<BlockSums> groups = courses.groups().stream().map(group -> new BlockSums()).toList();
    for (int block = 0; block < blocks.length; block++) {
      groups.get(courses.groupOf(order[firstOfBlock[block]])).add(blocks[block]);
    }
    return layout.curved(scaled, groups);
  }

  private IntConsumer blockWorker(Point point, BlockSums[] blocks) {
    var integral = new CourseIntegral(courses, point);
    return block -> {
      var sums = new BlockSums();
      for (int i = firstOfBlock[block]; i < firstOfBlock[block + 1]; i++) {
        integral.addCurved(order[i], sums);
      }
      blocks[block] = sums;
    };
  }
}
