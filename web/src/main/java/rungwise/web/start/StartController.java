package rungwise.web.start;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.Account;
import rungwise.clinic.start.CourseDraft;
import rungwise.clinic.start.Starting;
import rungwise.quantities.Reading;
import rungwise.web.page.Page;

/** Opens a course. */
@Controller
final class StartController {

  private static final Logger LOG = LoggerFactory.getLogger(StartController.class);
  private static final String FORM = "start/new-course";

  private final Starting starting;
  private final StartChoices choices;

  StartController(Starting starting, StartChoices choices) {
    this.starting = starting;
    this.choices = choices;
  }

  @GetMapping("/courses/new")
  ModelAndView form() {
    return Page.of(FORM, NewCoursePage.empty(choices));
  }

  @PostMapping("/courses/new")
  ModelAndView open(
      @AuthenticationPrincipal Account actor,
      @RequestParam(defaultValue = "") String fullName,
      @RequestParam(defaultValue = "") String birthDate,
      @RequestParam(defaultValue = "") String recordNumber,
      @RequestParam(defaultValue = "") String group,
      @RequestParam(defaultValue = "") String preparation,
      @RequestParam(defaultValue = "") String barrel,
      @RequestParam(defaultValue = "") String protocol,
      @RequestParam(defaultValue = "") String namesake,
      RedirectAttributes carried) {
    var draft =
        new CourseDraft(
            fullName,
            birthDate,
            recordNumber,
            group,
            preparation,
            barrel,
            protocol,
            !namesake.isEmpty());
    return switch (starting.open(actor, draft)) {
      case Reading.Read<CourseId> opened -> {
        LOG.info("Course {} opened by {}", opened.value(), actor.id());
        carried.addFlashAttribute("notice", String.join(" ", opened.notices()));
        yield Page.redirect("/courses/" + opened.value());
      }
      case Reading.Refused<CourseId> refused ->
          Page.refused(FORM, NewCoursePage.of(draft, choices, refused.faults()));
    };
  }
}
