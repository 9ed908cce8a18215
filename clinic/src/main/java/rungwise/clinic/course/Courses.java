package rungwise.clinic.course;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import rungwise.clinic.soundness.UnreadableRecord;
import rungwise.clinic.words.SheetCode;

/**
 * Port: every course, as the entries that were appended to it. Instants are kept to the
 * millisecond.
 */
public interface Courses {

  /** The ids of all courses, the one opened last first. */
  List<CourseId> all();

  /** Courses with an injection in the clinic of which no report says how it ended. */
  List<CourseId> underObservation();

  /**
   * Courses of men who left the clinic while it was firm, as far as any report ever said so; some
   * of them are known to be over since.
   */
  List<CourseId> leftWhileFirm();

  /**
   * A course with all its entries in the order of their numbers, and what of it is not as it was
   * written.
   *
   * @throws UnreadableRecord if what is left of it makes no course
   */
  Optional<CourseFile> find(CourseId id);

  /** The same for a list of several courses, which one that cannot be read must not hide. */
  default Optional<CourseFile> readable(CourseId id) {
    try {
      return find(id);
    } catch (UnreadableRecord e) {
      return Optional.empty();
    }
  }

  /** What could be made of several courses, and those of which nothing could. */
  record Made<T>(List<T> found, List<CourseId> unreadable) {
    public Made {
      found = List.copyOf(found);
      unreadable = List.copyOf(unreadable);
    }
  }

  /** Makes something of each course; one that is not as it was written hides no other. */
  default <T> Made<T> each(List<CourseId> ids, Function<CourseFile, List<T>> make) {
    var found = new ArrayList<T>();
    var unreadable = new ArrayList<CourseId>();
    for (CourseId id : ids) {
      Optional<CourseFile> file = Optional.empty();
      try {
        file = find(id);
        file.map(make).ifPresent(found::addAll);
      } catch (UnreadableRecord e) {
        unreadable.add(id);
      } catch (RuntimeException e) {
        if (file.filter(one -> !one.isSound()).isEmpty()) {
          throw e;
        }
        unreadable.add(id);
      }
    }
    return new Made<>(found, unreadable);
  }

  /** Courses of men that are like this one, the one opened last first: {@link Patient#isLike}. */
  List<CourseId> alike(Patient patient);

  /**
   * Courses of men who have, or had before a correction, this man's name, whenever they were born;
   * the one opened last first.
   */
  default List<CourseId> namedLike(Patient patient) {
    return all().stream()
        .filter(id -> find(id).filter(file -> isNamed(file, patient)).isPresent())
        .toList();
  }

  private static boolean isNamed(CourseFile file, Patient patient) {
    return file.entries().stream()
        .anyMatch(
            entry ->
                entry.fact() instanceof CourseFact.CourseOpened opened
                    && opened.patient().nameKey().equals(patient.nameKey()));
  }

  /** The course for which the sheet of a code was made; empty if there is no such code. */
  default Optional<CourseId> withSheet(SheetCode code) {
    return all().stream()
        .filter(id -> readable(id).filter(file -> file.sheet(code).isPresent()).isPresent())
        .findFirst();
  }

  /**
   * Appends an entry inside the caller's transaction and gives back its number.
   *
   * @throws IllegalStateException outside a transaction; if a course does not begin with its
   *     opening, or is opened again; if what is corrected is no entry of this course
   */
  long append(NewEntry entry);
}
