package rungwise.web.tablet;

import rungwise.clinic.course.CourseFile;
import rungwise.web.injection.TabletForm;
import rungwise.web.page.Faults;

/** The form of a tablet for erections that could not be kept as it was. */
public record TabletPage(String path, String fullName, Faults faults, TabletForm form) {

  static TabletPage of(CourseFile file, Faults faults, TabletForm form) {
    return new TabletPage("/courses/" + file.id(), file.patient().fullName(), faults, form);
  }
}
