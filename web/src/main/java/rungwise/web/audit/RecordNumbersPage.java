package rungwise.web.audit;

import java.util.Comparator;
import java.util.List;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.web.access.NamesCourses;

/** The courses to choose from as shown: by record number, without a name, by that number. */
public record RecordNumbersPage(List<Row> rows) implements NamesCourses {

  /** One course. */
  public record Row(CourseId course, String recordNumber, String opened) {

    public String path() {
      return "/courses/" + course + "/views";
    }
  }

  public RecordNumbersPage {
    rows = List.copyOf(rows);
  }

  static RecordNumbersPage of(List<CourseFile> files, ClinicTime time) {
    return new RecordNumbersPage(
        files.stream()
            .map(
                file ->
                    new Row(
                        file.id(),
                        file.patient().recordNumber(),
                        time.words(file.entries().getFirst().recordedAt())))
            .sorted(Comparator.comparing(Row::recordNumber))
            .toList());
  }

  @Override
  public List<CourseId> namedCourses() {
    return rows.stream().map(Row::course).toList();
  }
}
