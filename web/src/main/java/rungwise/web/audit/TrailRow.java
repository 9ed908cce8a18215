package rungwise.web.audit;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.clinic.audit.TrailLine;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.AccountId;

/**
 * One entry of the audit trail as read.
 *
 * @param courses those that it names, of which only the first few stand in {@code records}
 * @param about the account it is about; empty if none
 */
public record TrailRow(
    long number,
    String at,
    String who,
    String what,
    String about,
    List<CourseId> courses,
    String records,
    String reason) {

  private static final int MOST_NUMBERS = 3;

  public TrailRow {
    courses = List.copyOf(courses);
  }

  /**
   * A line as read.
   *
   * @param first the course that was asked for, which is named before others
   */
  static TrailRow of(
      TrailLine line,
      String at,
      Optional<CourseId> first,
      Map<CourseId, String> numbers,
      Function<AccountId, String> names) {
    List<CourseId> named =
        Stream.concat(first.filter(line.courses()::contains).stream(), line.courses().stream())
            .distinct()
            .limit(MOST_NUMBERS)
            .toList();
    int others = line.courses().size() - named.size();
    String listed =
        named.stream().map(id -> numbers.getOrDefault(id, "")).collect(Collectors.joining(", "));
    return new TrailRow(
        line.number(),
        at,
        names.apply(line.by()),
        words(line.kind()),
        line.about().map(names).orElse(""),
        named,
        others == 0 ? listed : listed + " and " + others + " more",
        line.reason().orElse(""));
  }

  /** "dose_signed" as "dose signed". */
  static String words(String kind) {
    return kind.replace('_', ' ');
  }
}
