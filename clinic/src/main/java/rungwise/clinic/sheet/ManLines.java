package rungwise.clinic.sheet;

import java.util.List;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact.CourseOpened;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.Patient;

/** Who he is and was said to be, in a line each. */
public final class ManLines {

  private ManLines() {}

  static String of(CourseOpened opened) {
    return "Course opened for " + of(opened.patient()) + ", group " + opened.group().words();
  }

  /** "Oren Fyfe, born 2 May 1958, record HL-1017". */
  public static String of(Patient patient) {
    return patient.fullName()
        + ", born "
        + ClinicTime.words(patient.birthDate())
        + ", record "
        + patient.recordNumber();
  }

  /** Who he was said to be before it was corrected; empty if it never was. */
  public static List<String> before(CourseFile file) {
    return file.identities().stream()
        .map(Written::fact)
        .map(CourseOpened::patient)
        .filter(one -> !one.equals(file.patient()))
        .distinct()
        .map(ManLines::of)
        .toList();
  }
}
