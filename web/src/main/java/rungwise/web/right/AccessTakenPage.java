package rungwise.web.right;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.access.CourseAccess;
import rungwise.clinic.access.TakenAccess;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.AccountId;
import rungwise.web.access.NamesCourses;

/** Every access that was taken as shown: by record number, without a man's name. */
public record AccessTakenPage(List<Row> rows, boolean isNewest, Optional<String> olderPath)
    implements NamesCourses {

  private static final String PATH = "/access-taken";

  /** One access. */
  public record Row(
      CourseId course,
      String at,
      String who,
      String recordNumber,
      String reason,
      String goodUntil) {

    public String viewsPath() {
      return "/courses/" + course + "/views";
    }
  }

  public AccessTakenPage {
    rows = List.copyOf(rows);
  }

  static AccessTakenPage of(
      List<TakenAccess.Numbered> found,
      boolean isOlder,
      Map<CourseId, String> numbers,
      ClinicTime time,
      Function<AccountId, String> names) {
    int most = CourseAccess.ON_ONE_PAGE;
    List<TakenAccess.Numbered> shown = found.subList(0, Math.min(most, found.size()));
    Optional<String> older =
        found.size() > most
            ? Optional.of(PATH + "?before=" + shown.getLast().number())
            : Optional.empty();
    return new AccessTakenPage(
        shown.stream()
            .map(TakenAccess.Numbered::access)
            .map(
                access ->
                    new Row(
                        access.course(),
                        time.words(access.at()),
                        names.apply(access.by()),
                        numbers.getOrDefault(access.course(), ""),
                        access.reason(),
                        time.words(access.goodUntil())))
            .toList(),
        !isOlder,
        older);
  }

  @Override
  public List<CourseId> namedCourses() {
    return rows.stream().map(Row::course).distinct().toList();
  }
}
