package rungwise.web.tablet;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.people.Account;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.titration.PartFault;
import rungwise.clinic.titration.ReportAnswer;
import rungwise.clinic.titration.ReportDraft;
import rungwise.clinic.titration.ReportPart;
import rungwise.clinic.titration.Titration;
import rungwise.quantities.Reading;
import rungwise.web.injection.DailyTabletForm;
import rungwise.web.injection.TabletForm;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.page.Typed;
import rungwise.web.titration.CoursePaths;

/** Tablets for erections: that he took one, and whether he may go on with a daily low dose. */
@Controller
final class TabletController {

  private static final Logger LOG = LoggerFactory.getLogger(TabletController.class);
  private static final String PAGE = "tablet/tablet";
  private static final String DAILY = "tablet/daily";
  private static final String NOTICE = "notice";

  private final Titration titration;

  TabletController(Titration titration) {
    this.titration = titration;
  }

  @PostMapping("/courses/{id}/tablet")
  ModelAndView tablet(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    CourseState state = CoursePaths.find(titration, id);
    var typed = new Typed(sent);
    ReportDraft draft =
        ReportDraft.EMPTY
            .with(ReportPart.TABLET, typed.text(ReportPart.TABLET.field()))
            .with(ReportPart.TABLET_DATE, typed.text(ReportPart.TABLET_DATE.field()))
            .with(ReportPart.TABLET_TIME, typed.text(ReportPart.TABLET_TIME.field()));
    ReportAnswer answer = titration.reports().tookTablet(actor, state.file().id(), draft);
    if (answer.entry().isEmpty()) {
      Faults faults = new Faults(answer.faults().stream().map(PartFault::placed).toList());
      return Page.refused(PAGE, TabletPage.of(state.file(), faults, TabletForm.of(typed, faults)));
    }
    LOG.info("Course {}: tablet by {}, {}", state.file().id(), actor.id(), answer.entry().get());
    carried.addFlashAttribute(NOTICE, "The tablet is on record.");
    return Page.redirect(
        "/courses/" + state.file().id() + (typed.has("from", "visit") ? "/visit" : ""));
  }

  @PostMapping("/courses/{id}/daily-tablet")
  ModelAndView daily(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam MultiValueMap<String, String> sent,
      RedirectAttributes carried) {
    CourseState state = CoursePaths.find(titration, id);
    var typed = new Typed(sent);
    Reading<Long> outcome =
        DailyTabletForm.isAnswered(typed)
            ? titration
                .reports()
                .decideDailyTablet(
                    actor,
                    state.file().id(),
                    DailyTabletForm.isAllowed(typed),
                    typed.text(DailyTabletForm.REASON))
            : Reading.<Long>refused("Say whether he may go on with it or may not.")
                .at(DailyTabletForm.ALLOWED);
    if (outcome instanceof Reading.Refused<Long> refused) {
      Faults faults = Faults.of(refused.placed(), DailyTabletForm::fieldOf);
      return Page.refused(
          DAILY, DailyTabletPage.of(state.file(), faults, DailyTabletForm.of(typed, faults)));
    }
    LOG.info("Course {}: daily tablet by {}", state.file().id(), actor.id());
    carried.addFlashAttribute(NOTICE, "The decision on a daily low dose is on record.");
    return Page.redirect("/courses/" + state.file().id());
  }
}
