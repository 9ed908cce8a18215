package rungwise.web.audit;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.web.servlet.View;
import rungwise.clinic.TableText;
import rungwise.clinic.course.CourseId;
import rungwise.web.access.NamesCourses;

/** The audit trail as a file of comma-separated values (RFC 4180), for a spreadsheet. */
record TrailFile(List<TrailRow> rows) implements NamesCourses, View {

  private static final String HEADER = "number,at,who,what,about,records,reason\r\n";

  TrailFile {
    rows = List.copyOf(rows);
  }

  @Override
  public List<CourseId> namedCourses() {
    return rows.stream().flatMap(row -> row.courses().stream()).distinct().toList();
  }

  @Override
  public void render(
      @Nullable Map<String, ?> model, HttpServletRequest request, HttpServletResponse response)
      throws IOException {
    response.setContentType("text/csv;charset=UTF-8");
    response.setHeader(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"audit-trail.csv\"");
    response.getOutputStream().write(text().getBytes(StandardCharsets.UTF_8));
  }

  String text() {
    return rows.stream().map(TrailFile::line).collect(Collectors.joining("", HEADER, ""));
  }

  private static String line(TrailRow row) {
    return Stream.of(
                Long.toString(row.number()),
                row.at(),
                row.who(),
                row.what(),
                row.about(),
                row.records(),
                row.reason())
            .map(TrailFile::cell)
            .collect(Collectors.joining(","))
        + "\r\n";
  }

  private static String cell(String text) {
    return "\"" + TableText.safe(text).replace("\"", "\"\"") + "\"";
  }
}
