package rungwise.web.titration;

import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.people.Account;
import rungwise.clinic.titration.CourseState;
import rungwise.clinic.titration.Titration;
import rungwise.quantities.Reading;
import rungwise.web.page.Page;

/** The report of an injection, and its correction by an addendum. */
@Controller
final class ReportController {

  private static final Logger LOG = LoggerFactory.getLogger(ReportController.class);
  private static final String FORM = "titration/report";

  private final Titration titration;
  private final ClinicTime time;

  ReportController(Titration titration, ClinicTime time) {
    this.titration = titration;
    this.time = time;
  }

  @GetMapping("/courses/{id}/report")
  ModelAndView form(@PathVariable String id) {
    CourseState state = find(id);
    return Page.of(FORM, ReportPage.of(state, ReportForm.empty(state, time), Optional.empty()));
  }

  @PostMapping("/courses/{id}/report")
  ModelAndView report(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @ModelAttribute ReportForm form,
      RedirectAttributes carried) {
    return save(actor, id, form, Optional.empty(), carried);
  }

  @GetMapping("/courses/{id}/report/{entry}")
  ModelAndView correctionForm(@PathVariable String id, @PathVariable String entry) {
    CourseState state = find(id);
    ReportForm form = ReportForm.of(written(state, entry).fact(), time);
    return Page.of(FORM, ReportPage.of(state, form, Optional.of(entry)));
  }

  @PostMapping("/courses/{id}/report/{entry}")
  ModelAndView correct(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @PathVariable String entry,
      @ModelAttribute ReportForm form,
      RedirectAttributes carried) {
    return save(actor, id, form, Optional.of(entry), carried);
  }

  @PostMapping("/courses/{id}/report/{entry}/withdraw")
  ModelAndView withdraw(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @PathVariable String entry,
      @RequestParam(defaultValue = "") String reason,
      RedirectAttributes carried) {
    CourseState state = find(id);
    EntryId report = written(state, entry).entry().id();
    Reading<Long> outcome = titration.withdraw(actor, state.file().id(), report, reason);
    if (outcome instanceof Reading.Refused<Long> refused) {
      ReportForm form = ReportForm.of(written(state, entry).fact(), time);
      ReportPage page = ReportPage.of(state, form, Optional.of(entry));
      return Page.refused(FORM, page.withFaults(refused.faults()));
    }
    carried.addFlashAttribute("notice", "The report no longer counts. It stays on record.");
    return Page.redirect("/courses/" + state.file().id());
  }

  private ModelAndView save(
      Account actor,
      String id,
      ReportForm form,
      Optional<String> entry,
      RedirectAttributes carried) {
    CourseId course = CourseController.courseId(id);
    Optional<EntryId> corrects = entry.map(EntryId::new);
    return switch (titration.report(actor, course, form.draft(corrects))) {
      case Reading.Read<Long> read -> {
        LOG.info("Course {}: report by {}, entry {}", course, actor.id(), read.value());
        String notice = "The report is on record. " + String.join(" ", read.notices());
        carried.addFlashAttribute("notice", notice.strip());
        yield Page.redirect("/courses/" + course);
      }
      case Reading.Refused<Long> refused ->
          Page.refused(FORM, ReportPage.of(find(id), form, entry).withFaults(refused.faults()));
    };
  }

  private static CourseFile.Written<InjectionReported> written(CourseState state, String entry) {
    return state.file().reports().stream()
        .filter(one -> one.entry().id().text().equals(entry))
        .findFirst()
        .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
  }

  private CourseState find(String id) {
    return titration
        .find(CourseController.courseId(id))
        .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
  }
}
