package rungwise.web.today;

import java.util.List;
import rungwise.clinic.course.CourseId;
import rungwise.web.access.NamesCourses;

/**
 * The men whom somebody looked for.
 *
 * @param answer how many there are, in one sentence
 * @param men in the order of their names
 * @param notYet how many men may be missing, as their records are still being read
 * @param mayReport whether the reader may write down what a man tells
 */
public record FoundPage(String answer, List<Man> men, int notYet, boolean mayReport)
    implements NamesCourses {

  /**
   * Who he is, with two identifiers.
   *
   * @param before who he was said to be before a correction
   */
  public record Man(
      CourseId course,
      String fullName,
      String birthDate,
      String recordNumber,
      List<String> before) {
    public Man {
      before = List.copyOf(before);
    }

    public String path() {
      return "/courses/" + course;
    }
  }

  public FoundPage {
    men = List.copyOf(men);
  }

  @Override
  public List<CourseId> namedCourses() {
    return men.stream().map(Man::course).toList();
  }
}
