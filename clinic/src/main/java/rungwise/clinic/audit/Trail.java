package rungwise.clinic.audit;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rungwise.clinic.course.CourseId;

/** Port: every entry of the journal, to be searched. */
public interface Trail {

  /**
   * The entries that a search finds, the newest first.
   *
   * @param before only those with a smaller number
   * @param most how many at the most
   */
  List<TrailLine> find(TrailSearch search, long before, int most);

  /** The kinds of which there is an entry, by name: "dose_signed". */
  List<String> kinds();

  /** The course that has, or had before a correction, this record number. */
  Optional<CourseId> courseOf(String recordNumber);

  /** The record numbers of courses, as they were last written. */
  Map<CourseId, String> recordNumbers(Set<CourseId> courses);
}
