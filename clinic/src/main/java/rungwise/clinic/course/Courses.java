package rungwise.clinic.course;

import java.util.List;
import java.util.Optional;

/** Port: every course, as the entries that were appended to it. */
public interface Courses {

  /** The ids of all courses, the one opened last first. */
  List<CourseId> all();

  /** A course with all its entries in the order of their numbers. */
  Optional<CourseFile> find(CourseId id);

  /** Courses of men with that record number, or with that name and birth date. */
  List<CourseId> alike(Patient patient);

  /** Appends an entry and gives back its number. */
  long append(NewEntry entry);
}
