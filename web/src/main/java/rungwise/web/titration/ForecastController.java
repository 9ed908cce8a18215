package rungwise.web.titration;

import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.forecast.CourseForecasts;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.CourseState;
import rungwise.web.page.Page;

/** What every volume of a course may do, and how that moved. */
@Controller
final class ForecastController {

  private final OpenCourses courses;
  private final CourseViews views;
  private final CourseForecasts forecasts;

  ForecastController(OpenCourses courses, CourseViews views, CourseForecasts forecasts) {
    this.courses = courses;
    this.views = views;
    this.forecasts = forecasts;
  }

  @GetMapping("/courses/{id}/forecast")
  ModelAndView show(@PathVariable String id) {
    CourseState state = courses.find(id);
    CourseView view = views.of(state);
    return Page.of(
        "titration/forecast",
        ForecastPage.of(view, ForecastPart.of(forecasts.of(state), view), forecasts.whole(state)));
  }
}
