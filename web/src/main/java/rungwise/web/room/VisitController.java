package rungwise.web.room;

import java.util.Comparator;
import java.util.List;
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
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.people.Account;
import rungwise.clinic.room.Observed;
import rungwise.clinic.room.Room;
import rungwise.clinic.room.RoomViews;
import rungwise.clinic.room.VisitFields;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.titration.Titration;
import rungwise.dosing.history.Spot;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;
import rungwise.web.injection.InjectionQuestions;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.page.Typed;
import rungwise.web.titration.CoursePaths;

/** An injection in the clinic, from the needle until he is soft again. */
@Controller
final class VisitController {

  private static final Logger LOG = LoggerFactory.getLogger(VisitController.class);
  private static final String VISIT = "room/visit";
  private static final String NOTICE = "notice";

  private final Titration titration;
  private final Room room;
  private final CourseViews courseViews;
  private final RoomViews roomViews;

  VisitController(Titration titration, Room room, CourseViews courses, RoomViews views) {
    this.titration = titration;
    this.room = room;
    this.courseViews = courses;
    this.roomViews = views;
  }

  @GetMapping("/courses/{id}/visit")
  ModelAndView visit(
      @AuthenticationPrincipal Account actor, @PathVariable String id, Model carried) {
    String notice = Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
    CourseState state = CoursePaths.find(titration, id);
    return Page.of(VISIT, page(actor, state, notice, new VisitForm(Typed.NOTHING), Faults.NONE));
  }

  @PostMapping("/courses/{id}/visit")
  ModelAndView start(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam MultiValueMap<String, String> typed,
      RedirectAttributes carried) {
    CourseState state = CoursePaths.find(titration, id);
    var form = new VisitForm(new Typed(typed));
    Reading<Long> outcome = room.start(actor, state.file().id(), form.start());
    if (outcome instanceof Reading.Refused<Long> refused) {
      return refused(actor, state, form, VisitForm.START, refused);
    }
    return done(
        actor,
        state,
        "injected",
        "He is under observation until he is soft again.",
        outcome,
        "/visit",
        carried);
  }

  @PostMapping("/courses/{id}/visit/{observation}/note")
  ModelAndView note(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @PathVariable String observation,
      @RequestParam MultiValueMap<String, String> typed,
      RedirectAttributes carried) {
    CourseState state = CoursePaths.find(titration, id);
    var form = new VisitForm(new Typed(typed));
    Reading<Long> outcome =
        room.note(actor, state.file().id(), CoursePaths.entryId(observation), form.note());
    if (outcome instanceof Reading.Refused<Long> refused) {
      return refused(actor, state, form, VisitForm.NOTE, refused);
    }
    return done(actor, state, "seen", "It is on record.", outcome, "/visit", carried);
  }

  @PostMapping("/courses/{id}/visit/{observation}/end")
  ModelAndView end(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @PathVariable String observation,
      @RequestParam MultiValueMap<String, String> typed,
      RedirectAttributes carried) {
    CourseState state = CoursePaths.find(titration, id);
    var form = new VisitForm(new Typed(typed));
    Reading<Long> outcome =
        form.saysHow()
            ? room.end(actor, state.file().id(), CoursePaths.entryId(observation), form.end())
            : Reading.refused(
                new Fault(
                    VisitFields.HOW, "Choose how it ended: he is soft again, or he left before."));
    if (outcome instanceof Reading.Refused<Long> refused) {
      return refused(actor, state, form, VisitForm.END, refused);
    }
    String notice = "The observation is ended, and the report is on record.";
    return done(actor, state, "observation ended", notice, outcome, "", carried);
  }

  private static ModelAndView done(
      Account actor,
      CourseState state,
      String what,
      String notice,
      Reading<Long> outcome,
      String below,
      RedirectAttributes carried) {
    var course = state.file().id();
    LOG.info("Course {}: {} by {}, entry {}", course, what, actor.id(), outcome.orThrow());
    carried.addFlashAttribute(NOTICE, (notice + " " + String.join(" ", outcome.notices())).strip());
    return Page.redirect("/courses/" + course + below);
  }

  private ModelAndView refused(
      Account actor,
      CourseState state,
      VisitForm form,
      String which,
      Reading.Refused<Long> refused) {
    Faults faults = Faults.of(refused.placed(), field -> InjectionQuestions.name(which, field));
    return Page.refused(VISIT, page(actor, state, "", form, faults));
  }

  /** The page with what was typed into one of its forms, over what they show at first. */
  private VisitPage page(
      Account actor, CourseState state, String notice, VisitForm typed, Faults faults) {
    ClinicTime time = room.time();
    var view = courseViews.of(state);
    List<Observed> observed = room.observed(state.file());
    Optional<Observed> first = observed.stream().findFirst();
    VisitForm form = typed.over(VisitForm.now(state, first, time));
    String course = "/courses/" + state.file().id();
    String path = course + "/visit";
    return new VisitPage(
        path,
        course,
        view,
        notice,
        faults,
        By.CLINICIAN.includes(actor),
        first.isPresent()
            ? Optional.empty()
            : Optional.of(
                VisitPage.before(
                    view,
                    state.question().ladder().barrel(),
                    lastSpot(state.file()),
                    roomViews.secondDose(state),
                    VisitPage.vial(state.file(), room.vials(), form.ask(VisitForm.START, faults)),
                    form.ask(VisitForm.START, faults),
                    time)),
        first.map(
            one ->
                new VisitPage.Watch(
                    roomViews.of(one, state.now()),
                    path + "/" + one.observation(),
                    observed.size() - 1,
                    VisitPage.note(form.ask(VisitForm.NOTE, faults), time),
                    VisitPage.end(form.ask(VisitForm.END, faults), time))));
  }

  private static Optional<Spot> lastSpot(CourseFile file) {
    return file.reports().stream()
        .map(CourseFile.Written::fact)
        .sorted(Comparator.comparing(InjectionReported::injectedAt))
        .flatMap(report -> report.details().spot().stream())
        .reduce((earlier, later) -> later);
  }
}
