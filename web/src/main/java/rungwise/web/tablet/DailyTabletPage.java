package rungwise.web.tablet;

import rungwise.clinic.course.CourseFile;
import rungwise.web.injection.DailyTabletForm;
import rungwise.web.page.Faults;

/** The decision on a daily low dose that could not be kept as it was. */
public record DailyTabletPage(String path, String fullName, Faults faults, DailyTabletForm form) {

  static DailyTabletPage of(CourseFile file, Faults faults, DailyTabletForm form) {
    return new DailyTabletPage("/courses/" + file.id(), file.patient().fullName(), faults, form);
  }
}
