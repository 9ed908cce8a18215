package rungwise.web.teaching;

import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.Account;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.teaching.Teaching;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.titration.OpenCourses;

/** What comes before home use: each item, and its record. */
@Controller
final class ReadinessController {

  private static final Logger LOG = LoggerFactory.getLogger(ReadinessController.class);
  private static final String PAGE = "teaching/before-home";
  private static final String NOTICE = "notice";

  private final OpenCourses courses;
  private final CourseViews views;
  private final Teaching teaching;
  private final ClinicTime time;

  ReadinessController(OpenCourses courses, CourseViews views, Teaching teaching, ClinicTime time) {
    this.courses = courses;
    this.views = views;
    this.teaching = teaching;
    this.time = time;
  }

  @GetMapping("/courses/{id}/before-home")
  ModelAndView show(
      @AuthenticationPrincipal Account actor, @PathVariable String id, Model carried) {
    String notice = Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
    return Page.of(PAGE, page(actor, id, ReadinessForm.EMPTY, Faults.NONE).withNotice(notice));
  }

  @PostMapping("/courses/{id}/before-home")
  ModelAndView record(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      RedirectAttributes carried) {
    var form = new ReadinessForm(typed);
    CourseId course = OpenCourses.idOf(id);
    return switch (teaching.record(actor, course, form.draft())) {
      case Reading.Read<Long> read -> {
        LOG.info("Course {}: readiness by {}, entry {}", course, actor.id(), read.value());
        carried.addFlashAttribute(NOTICE, "It is on record.");
        yield Page.redirect("/courses/" + course + "/before-home");
      }
      case Reading.Refused<Long> refused ->
          Page.refused(PAGE, page(actor, id, form, form.placed(refused)));
    };
  }

  private ReadinessPage page(Account actor, String id, ReadinessForm form, Faults faults) {
    CourseState state = courses.find(id);
    return ReadinessPage.of(state, views.of(state), actor, time, form, faults);
  }
}
