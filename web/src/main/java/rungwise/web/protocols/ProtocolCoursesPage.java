package rungwise.web.protocols;

import java.util.Comparator;
import java.util.List;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.dosing.protocol.Protocol;
import rungwise.web.access.NamesCourses;

/**
 * The courses that run on one protocol as shown: enough to find each man, and nothing of his
 * therapy. The list of protocols only counts them, so that reading rules is no look at anybody.
 *
 * @param title title and version of the protocol
 * @param rows by name
 */
public record ProtocolCoursesPage(String title, List<Row> rows) implements NamesCourses {

  /** One course. */
  public record Row(CourseId course, String man, String recordNumber) {

    public String path() {
      return "/courses/" + course;
    }
  }

  public ProtocolCoursesPage {
    rows = List.copyOf(rows);
  }

  static ProtocolCoursesPage of(Protocol protocol, List<CourseFile> running) {
    return new ProtocolCoursesPage(
        protocol.title() + ", version " + protocol.version(),
        running.stream()
            .map(
                file ->
                    new Row(file.id(), file.patient().fullName(), file.patient().recordNumber()))
            .sorted(Comparator.comparing(Row::man).thenComparing(Row::recordNumber))
            .toList());
  }

  @Override
  public List<CourseId> namedCourses() {
    return rows.stream().map(Row::course).toList();
  }
}
