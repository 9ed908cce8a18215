package rungwise.web.beside;

import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.people.Account;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.sheet.CourseViews;
import rungwise.web.page.Page;
import rungwise.web.titration.CourseDrawings;
import rungwise.web.titration.CoursePage;
import rungwise.web.titration.OpenCourses;

/** The injections of a course, and its whole record. */
@Controller
final class BesideController {

  private final OpenCourses courses;
  private final CourseViews views;

  BesideController(OpenCourses courses, CourseViews views) {
    this.courses = courses;
    this.views = views;
  }

  @GetMapping("/courses/{id}/injections")
  ModelAndView injections(@AuthenticationPrincipal Account actor, @PathVariable String id) {
    CourseView view = views.of(courses.find(id));
    return Page.of(
        "beside/injections",
        new InjectionsPage(view, CourseDrawings.of(view), CoursePage.isClinical(actor)));
  }

  @GetMapping("/courses/{id}/record")
  ModelAndView record(@PathVariable String id) {
    return Page.of("beside/record", new RecordPage(views.of(courses.find(id))));
  }
}
