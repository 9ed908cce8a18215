package rungwise.web.supply;

import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.people.Account;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.supply.VialView;
import rungwise.clinic.supply.Vials;
import rungwise.quantities.Reading;
import rungwise.web.page.Page;
import rungwise.web.supply.VialPage.Sent;
import rungwise.web.titration.OpenCourses;

/** The vials of a man: a new one, and an addendum to the one in use. */
@Controller
final class VialsController {

  private static final Logger LOG = LoggerFactory.getLogger(VialsController.class);
  private static final String PAGE = "supply/vial";
  private static final String NOTICE = "notice";

  private final OpenCourses courses;
  private final CourseViews views;
  private final Vials vials;
  private final ClinicTime time;

  VialsController(OpenCourses courses, CourseViews views, Vials vials, ClinicTime time) {
    this.courses = courses;
    this.views = views;
    this.vials = vials;
    this.time = time;
  }

  @GetMapping("/courses/{id}/vial")
  ModelAndView show(
      @AuthenticationPrincipal Account actor, @PathVariable String id, Model carried) {
    String notice = Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
    CourseState state = courses.find(id);
    return Page.of(PAGE, page(actor, state, Sent.NOTHING).withNotice(notice));
  }

  @PostMapping("/courses/{id}/vial")
  ModelAndView receive(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      RedirectAttributes carried) {
    var form = new VialForm(VialForm.NEW, typed);
    Reading<Long> outcome = vials.receive(actor, OpenCourses.idOf(id), form.draft());
    return done(actor, id, form, outcome, carried);
  }

  @PostMapping("/courses/{id}/vial/{entry}")
  ModelAndView amend(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @PathVariable String entry,
      @RequestParam Map<String, String> typed,
      RedirectAttributes carried) {
    var form = new VialForm(VialForm.ADDENDUM, typed);
    String reason = form.said(CourseChanges.REASON);
    EntryId vial = entryOf(courses.find(id), entry);
    Reading<Long> outcome = vials.amend(actor, OpenCourses.idOf(id), vial, form.draft(), reason);
    return done(actor, id, form, outcome, carried);
  }

  @PostMapping("/courses/{id}/vial/{entry}/befell")
  ModelAndView befell(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @PathVariable String entry,
      @RequestParam Map<String, String> typed,
      RedirectAttributes carried) {
    var form = new VialForm(VialForm.BEFELL, typed);
    EntryId vial = entryOf(courses.find(id), entry);
    Reading<Long> outcome = vials.befell(actor, OpenCourses.idOf(id), vial, form.befell());
    return done(actor, id, form, outcome, carried);
  }

  @PostMapping("/courses/{id}/vial/{entry}/judge")
  ModelAndView judge(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @PathVariable String entry,
      @RequestParam(defaultValue = "0") long basis,
      @RequestParam Map<String, String> typed,
      RedirectAttributes carried) {
    var form = new VialForm(VialForm.JUDGED, typed);
    String reason = form.said(CourseChanges.REASON);
    EntryId vial = entryOf(courses.find(id), entry);
    Reading<Long> outcome = vials.judge(actor, OpenCourses.idOf(id), vial, basis, reason);
    return done(actor, id, form, outcome, carried);
  }

  private ModelAndView done(
      Account actor, String id, VialForm form, Reading<Long> outcome, RedirectAttributes carried) {
    CourseId course = OpenCourses.idOf(id);
    return switch (outcome) {
      case Reading.Read<Long> read -> {
        LOG.info("Course {}: vial by {}, entry {}", course, actor.id(), read.value());
        String notice = form.kept() + " " + String.join(" ", read.notices());
        carried.addFlashAttribute(NOTICE, notice.strip());
        yield Page.redirect("/courses/" + course + "/vial");
      }
      case Reading.Refused<Long> refused -> {
        CourseState state = courses.find(id);
        var first = state.question().preparation().ingredients().getFirst().component();
        var sent = new Sent(form, form.placed(refused, first));
        yield Page.refused(PAGE, page(actor, state, sent));
      }
    };
  }

  private static EntryId entryOf(CourseState state, String text) {
    return state.file().entries().stream()
        .map(CourseEntry::id)
        .filter(id -> id.text().equals(text))
        .findFirst()
        .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
  }

  private VialPage page(Account actor, CourseState state, Sent sent) {
    CourseView course = views.of(state);
    return VialPage.of(
        VialView.of(state, course, vials.uses(state.file()), time), course, actor, sent);
  }
}
