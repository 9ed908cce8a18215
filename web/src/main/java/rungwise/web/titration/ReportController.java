package rungwise.web.titration;

import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.people.Account;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.titration.PartFault;
import rungwise.clinic.titration.ReportAnswer;
import rungwise.clinic.titration.ReportDraft;
import rungwise.clinic.titration.Reports;
import rungwise.clinic.titration.Titration;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.page.Typed;
import rungwise.web.start.StartChoices;

/** The report of an injection, and its correction by an addendum. */
@Controller
final class ReportController {

  private static final Logger LOG = LoggerFactory.getLogger(ReportController.class);
  private static final String FORM = "titration/report";

  private final Titration titration;
  private final StartChoices choices;
  private final CourseViews views;
  private final ClinicTime time;

  ReportController(Titration titration, StartChoices choices, CourseViews views, ClinicTime time) {
    this.titration = titration;
    this.choices = choices;
    this.views = views;
    this.time = time;
  }

  @GetMapping("/courses/{id}/report")
  ModelAndView form(@PathVariable String id, @RequestParam(defaultValue = "") String draft) {
    CourseState state = CoursePaths.find(titration, id);
    return draft.isEmpty()
        ? Page.of(FORM, page(state, ReportForm.empty(state), Optional.empty(), Faults.NONE))
        : Page.of(FORM, unfinished(state, draft, Optional.empty()));
  }

  @PostMapping("/courses/{id}/report")
  ModelAndView report(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam MultiValueMap<String, String> typed,
      RedirectAttributes carried) {
    return save(actor, id, new ReportForm(new Typed(typed)), Optional.empty(), carried);
  }

  @GetMapping("/courses/{id}/report/{entry}")
  ModelAndView correctionForm(
      @PathVariable String id,
      @PathVariable String entry,
      @RequestParam(defaultValue = "") String draft) {
    CourseState state = CoursePaths.find(titration, id);
    return Page.of(
        FORM,
        draft.isEmpty() ? correction(state, entry) : unfinished(state, draft, Optional.of(entry)));
  }

  @PostMapping("/courses/{id}/report/{entry}")
  ModelAndView correct(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @PathVariable String entry,
      @RequestParam MultiValueMap<String, String> typed,
      RedirectAttributes carried) {
    return save(actor, id, new ReportForm(new Typed(typed)), Optional.of(entry), carried);
  }

  @PostMapping("/courses/{id}/report/{entry}/withdraw")
  ModelAndView withdraw(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @PathVariable String entry,
      @RequestParam(defaultValue = "") String withdrawReason,
      RedirectAttributes carried) {
    CourseState state = CoursePaths.find(titration, id);
    Written<InjectionReported> report = written(state, entry);
    Reading<Long> outcome =
        titration.withdraw(actor, state.file().id(), report.entry().id(), withdrawReason);
    if (outcome instanceof Reading.Refused<Long> refused) {
      Faults faults = Faults.of(refused.placed(), field -> ReportForm.WITHDRAW_REASON);
      ReportForm form =
          ReportForm.of(report.fact(), state.file(), time).withdrawnFor(withdrawReason);
      return Page.refused(FORM, page(state, form, Optional.of(entry), faults));
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
    CourseState state = CoursePaths.find(titration, id);
    Optional<EntryId> corrects = entry.map(CoursePaths::entryId);
    ReportAnswer answer = titration.reports().enter(actor, state.file().id(), form.draft(corrects));
    if (answer.entry().isPresent()) {
      LOG.info(
          "Course {}: report by {}, entry {}", state.file().id(), actor.id(), answer.entry().get());
      String notice = "The report is on record. " + String.join(" ", answer.notices());
      carried.addFlashAttribute("notice", notice.strip());
      return Page.redirect("/courses/" + state.file().id());
    }
    if (answer.unfinished().isPresent()) {
      EntryId unfinished = answer.unfinished().get();
      LOG.info("Course {}: unfinished report by {}, {}", state.file().id(), actor.id(), unfinished);
      String path = "/courses/" + state.file().id() + "/report";
      return Page.redirect(path + entry.map(one -> "/" + one).orElse("") + "?draft=" + unfinished);
    }
    return Page.refused(FORM, page(state, form, entry, placed(answer.faults())));
  }

  /** The page that goes on with what stands unfinished on record. */
  private ReportPage unfinished(CourseState state, String entry, Optional<String> corrects) {
    ReportDraft draft =
        Reports.draftOf(state.file(), CoursePaths.entryId(entry))
            .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
    Faults faults = placed(titration.reports().faultsOf(state.file(), draft));
    return page(state, ReportForm.of(draft), corrects, faults);
  }

  private ReportPage correction(CourseState state, String entry) {
    ReportForm form = ReportForm.of(written(state, entry).fact(), state.file(), time);
    return page(state, form, Optional.of(entry), Faults.NONE);
  }

  private ReportPage page(
      CourseState state, ReportForm form, Optional<String> entry, Faults faults) {
    var around =
        new ReportPage.Around(
            state,
            choices.barrels().get(),
            titration.namesakes(state.file()),
            views.notOver(state),
            time);
    return ReportPage.of(around, form, entry, faults);
  }

  private static Written<InjectionReported> written(CourseState state, String entry) {
    return state.file().reports().stream()
        .filter(one -> one.entry().id().text().equals(entry))
        .findFirst()
        .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
  }

  private static Faults placed(List<PartFault> faults) {
    return new Faults(faults.stream().map(PartFault::placed).toList());
  }
}
