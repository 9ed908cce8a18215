package rungwise.web.audit;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.CourseId;
import rungwise.web.access.NamesCourses;
import rungwise.web.page.Choice;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * The audit trail as shown: the search and a part of what it found.
 *
 * @param isNewest whether the list begins with the newest entry
 * @param csvPath the same search as a file
 */
public record TrailPage(
    Choice person,
    Field record,
    Choice kind,
    Field from,
    Field until,
    List<TrailRow> rows,
    boolean isNewest,
    String newestPath,
    Optional<String> olderPath,
    String csvPath,
    Faults faults)
    implements NamesCourses {

  public TrailPage {
    rows = List.copyOf(rows);
  }

  @Override
  public List<CourseId> namedCourses() {
    return rows.stream().flatMap(row -> row.courses().stream()).distinct().toList();
  }
}
