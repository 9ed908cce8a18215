package rungwise.web.reach;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.Account;
import rungwise.clinic.reaching.ReachDraft;
import rungwise.clinic.reaching.Reaching;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.page.Typed;
import rungwise.web.titration.OpenCourses;

/** How a man is reached: his numbers, his wishes, and the calls that did not reach him. */
@Controller
final class ReachController {

  private static final Logger LOG = LoggerFactory.getLogger(ReachController.class);
  private static final String PAGE = "reach/reach";
  private static final String NOTICE = "notice";
  private static final String FROM = "back";

  /** The page on which a call was made, to which its tap leads back. */
  private enum Back {
    REACH,
    COURSE,
    CALL,
    TODAY,
    ROOM;

    private static Back of(String token) {
      return Arrays.stream(values())
          .filter(one -> one.name().toLowerCase(Locale.ROOT).equals(token))
          .findFirst()
          .orElse(REACH);
    }

    private String path(CourseId course) {
      return switch (this) {
        case REACH -> "/courses/" + course + "/reach";
        case COURSE -> "/courses/" + course;
        case CALL -> "/courses/" + course + "/call";
        case TODAY -> "/";
        case ROOM -> "/room";
      };
    }
  }

  private final OpenCourses courses;
  private final CourseViews views;
  private final Reaching reaching;

  ReachController(OpenCourses courses, CourseViews views, Reaching reaching) {
    this.courses = courses;
    this.views = views;
    this.reaching = reaching;
  }

  /**
   * The page.
   *
   * @param entry the number that is to be changed; empty for a new one
   */
  @GetMapping("/courses/{id}/reach")
  ModelAndView show(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "") String entry,
      Model carried) {
    String notice = Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
    return Page.of(PAGE, page(actor, id, entry, Typed.NOTHING, notice, Faults.NONE));
  }

  @PostMapping("/courses/{id}/reach")
  ModelAndView write(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    var typed = new Typed(sent);
    CourseId course = OpenCourses.idOf(id);
    ReachDraft draft = ReachPage.draft(typed);
    return switch (reaching.write(actor, course, draft)) {
      case Reading.Read<Long> read -> {
        LOG.info("Course {}: how he is reached by {}, entry {}", course, actor.id(), read.value());
        carried.addFlashAttribute(NOTICE, "It is written down.");
        yield Page.redirect(Back.of(typed.text(FROM)).path(course));
      }
      case Reading.Refused<Long> refused ->
          Page.refused(PAGE, page(actor, id, draft.entry(), typed, "", Faults.of(refused)));
    };
  }

  private ReachPage page(
      Account actor, String id, String entry, Typed typed, String notice, Faults faults) {
    return ReachPage.of(
        views.of(courses.find(id)),
        By.CLINICIAN.includes(actor),
        Optional.of(entry).filter(one -> !one.isEmpty()),
        typed,
        notice,
        faults);
  }
}
