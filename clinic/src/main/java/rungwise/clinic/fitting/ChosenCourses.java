package rungwise.clinic.fitting;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rungwise.clinic.course.CourseId;
import rungwise.dosing.fit.Courses;
import rungwise.dosing.fit.Fitting;
import rungwise.dosing.known.Preparation;

/**
 * The courses that a choice leads to.
 *
 * @param reference the preparation whose strength is 1
 * @param men whose courses these are, in their order
 * @param leftOut how many men do not count, or not whole, and why
 */
public record ChosenCourses(
    FitChoice choice,
    Preparation reference,
    Courses courses,
    List<Man> men,
    Map<LeftOut, Integer> leftOut) {

  /**
   * Whose course it is.
   *
   * @param recordNumber as his course or his history has it
   * @param course nothing where he has a history from before alone
   */
  public record Man(String recordNumber, Optional<CourseId> course) {}

  /**
   * One group of them.
   *
   * @param token of the aetiology group
   */
  public record OfGroup(String token, int courses) {}

  public ChosenCourses {
    men = List.copyOf(men);
    leftOut = Collections.unmodifiableMap(new EnumMap<>(leftOut));
  }

  /** Whether a fit can be tried at all; whether it may be trusted is said after it. */
  public boolean isEnough() {
    return courses.count() >= Fitting.LEAST_COURSES && courses.trials() > 0;
  }

  public List<OfGroup> groups() {
    return courses.groups().stream()
        .map(group -> new OfGroup(group, courses.countOf(group)))
        .toList();
  }

  /** Sentences about what does not count. */
  public List<String> leftOutWords() {
    return leftOut.entrySet().stream()
        .map(one -> one.getValue() + (one.getValue() == 1 ? " course " : " courses ") + words(one))
        .toList();
  }

  private static String words(Map.Entry<LeftOut, Integer> one) {
    return one.getKey().words();
  }

  /** What was chosen, in a sentence that goes into the document. */
  public String words() {
    String others = String.join(", ", leftOutWords());
    return courses.count()
        + " courses with "
        + courses.trials()
        + " injections, begun "
        + days()
        + (choice.countsFiles() ? ", with histories that name no preparation." : ".")
        + (others.isEmpty() ? "" : " Not counted: " + others + ".");
  }

  private String days() {
    String from = choice.from().map(day -> "from " + day).orElse("");
    String to = choice.to().map(day -> "up to " + day).orElse("");
    String both = (from + " " + to).strip();
    return both.isEmpty() ? "on any day" : both;
  }
}
