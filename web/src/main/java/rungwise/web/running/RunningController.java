package rungwise.web.running;

import java.util.Comparator;
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
import rungwise.clinic.ClinicTime;
import rungwise.clinic.people.Account;
import rungwise.clinic.running.Running;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.LifeLog;
import rungwise.clinic.start.Correcting;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.page.Typed;
import rungwise.web.titration.OpenCourses;

/** Whether his treatment goes on: one page, and a form for each way. */
@Controller
final class RunningController {

  private static final Logger LOG = LoggerFactory.getLogger(RunningController.class);
  private static final String PAGE = "running/running";
  private static final String NOTICE = "notice";

  private final OpenCourses courses;
  private final CourseViews views;
  private final Running running;
  private final Correcting correcting;
  private final ClinicTime time;

  RunningController(
      OpenCourses courses,
      CourseViews views,
      Running running,
      Correcting correcting,
      ClinicTime time) {
    this.courses = courses;
    this.views = views;
    this.running = running;
    this.correcting = correcting;
    this.time = time;
  }

  @GetMapping("/courses/{id}/running")
  ModelAndView show(
      @AuthenticationPrincipal Account actor, @PathVariable String id, Model carried) {
    String notice = Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
    return Page.of(PAGE, page(actor, id, Typed.NOTHING, notice, Faults.NONE));
  }

  @PostMapping("/courses/{id}/running/pause")
  ModelAndView pause(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    var form = new Sent(actor, id, new Typed(sent), RunningForms.PAUSE);
    return form.done(
        running.pause(actor, OpenCourses.idOf(id), form.reason()),
        "Paused. Nothing is injected until a prescriber resumes it: tell him.",
        carried);
  }

  @PostMapping("/courses/{id}/running/resume")
  ModelAndView resume(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "0") long basis,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    var form = new Sent(actor, id, new Typed(sent), RunningForms.RESUME);
    return form.done(
        running.resume(actor, OpenCourses.idOf(id), basis, form.reason()),
        "His treatment goes on. What is signed counts again.",
        carried);
  }

  @PostMapping("/courses/{id}/running/end")
  ModelAndView end(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    var form = new Sent(actor, id, new Typed(sent), RunningForms.END);
    return form.done(
        running.end(actor, OpenCourses.idOf(id), RunningForms.end(form.typed())),
        "His treatment has ended. No dose is signed for him any more: tell him.",
        carried);
  }

  @PostMapping("/courses/{id}/running/reopen")
  ModelAndView reopen(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "0") long basis,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    var form = new Sent(actor, id, new Typed(sent), RunningForms.REOPEN);
    return form.done(
        running.reopen(actor, OpenCourses.idOf(id), basis, form.reason()),
        "His treatment is open again. A dose has to be signed anew.",
        carried);
  }

  @PostMapping("/courses/{id}/running/identity")
  ModelAndView correct(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "0") long basis,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    var form = new Sent(actor, id, new Typed(sent), IdentityForm.REASON);
    return form.done(
        correcting.correct(actor, OpenCourses.idOf(id), basis, IdentityForm.draft(form.typed())),
        "Corrected. He is found by both, and both stay on record.",
        carried);
  }

  /** One form that was sent. */
  private final class Sent {

    private final Account actor;
    private final String id;
    private final Typed typed;
    private final String reasonField;

    Sent(Account actor, String id, Typed typed, String reasonField) {
      this.actor = actor;
      this.id = id;
      this.typed = typed;
      this.reasonField = reasonField;
    }

    Typed typed() {
      return typed;
    }

    String reason() {
      return typed.text(reasonField);
    }

    ModelAndView done(Reading<Long> outcome, String notice, RedirectAttributes carried) {
      if (outcome instanceof Reading.Refused<Long> refused) {
        Faults faults =
            RunningForms.faults(refused.placed(), reasonField).inOrderOf(RunningForms.End.FIELDS);
        return Page.refused(PAGE, page(actor, id, typed, "", faults));
      }
      LOG.info("Course {}: {} by {}, entry {}", id, reasonField, actor.id(), outcome.orThrow());
      carried.addFlashAttribute(NOTICE, notice);
      return Page.redirect("/courses/" + id + "/running");
    }
  }

  private RunningPage page(Account actor, String id, Typed typed, String notice, Faults faults) {
    CourseState state = courses.find(id);
    LifeLog log = LifeLog.of(state.file());
    String last =
        state.file().reports().stream()
            .map(written -> written.fact().injectedAt())
            .max(Comparator.naturalOrder())
            .map(time::dateText)
            .orElse("");
    return new RunningPage(
        views.man(state),
        "/courses/" + id,
        state.file().basis(),
        log.isEnded()
            ? RunningPage.Answer.ENDED
            : log.isPaused() ? RunningPage.Answer.PAUSED : RunningPage.Answer.RUNS,
        views.standing(state),
        By.CLINICIAN.includes(actor),
        By.PRESCRIBER.includes(actor),
        RunningForms.of(typed, faults, last),
        IdentityForm.of(state.file(), typed, faults),
        notice,
        faults);
  }
}
