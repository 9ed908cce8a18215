package rungwise.web.today;

import java.util.List;
import rungwise.clinic.course.CourseId;
import rungwise.web.access.NamesCourses;
import rungwise.web.today.TodayPage.Step;

/**
 * The first page of who treats nobody.
 *
 * @param first what is to be done before anything else; may be empty
 * @param parts one for each role
 */
public record OwnPage(List<Step> first, List<Part> parts) implements NamesCourses {

  /** How many there are of something. */
  public record Figure(String words, int count) {}

  /**
   * What a role may do and see.
   *
   * @param role its name
   * @param sees what of men it sees, in a sentence
   */
  public record Part(String role, String sees, List<Figure> figures, List<Step> steps) {
    public Part {
      figures = List.copyOf(figures);
      steps = List.copyOf(steps);
    }
  }

  public OwnPage {
    first = List.copyOf(first);
    parts = List.copyOf(parts);
  }

  @Override
  public List<CourseId> namedCourses() {
    return List.of();
  }
}
