package rungwise.dosing.fit;

import java.util.ArrayList;
import java.util.List;

/** What the courses themselves make doubtful, whatever the search finds. */
final class Doubts {

  private static final int FIRST_USEFUL = 3;

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
}
