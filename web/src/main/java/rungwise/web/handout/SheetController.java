package rungwise.web.handout;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.handout.SheetDraft;
import rungwise.clinic.handout.SheetView;
import rungwise.clinic.handout.Sheets;
import rungwise.clinic.people.Account;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseState;
import rungwise.quantities.Reading;
import rungwise.web.access.PublicAddress;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.page.Typed;
import rungwise.web.titration.CoursePaths;
import rungwise.web.titration.OpenCourses;

/** The sheets that a man takes home: one way to make one, and those that were made. */
@Controller
final class SheetController {

  private static final Logger LOG = LoggerFactory.getLogger(SheetController.class);
  private static final String PAGE = "handout/sheet";
  private static final String NOTICE = "notice";

  private final OpenCourses courses;
  private final CourseViews views;
  private final Sheets sheets;
  private final PublicAddress address;

  SheetController(OpenCourses courses, CourseViews views, Sheets sheets, PublicAddress address) {
    this.courses = courses;
    this.views = views;
    this.sheets = sheets;
    this.address = address;
  }

  @GetMapping("/courses/{id}/sheet")
  ModelAndView show(
      @AuthenticationPrincipal Account actor, @PathVariable String id, Model carried) {
    String notice = Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
    return Page.of(PAGE, page(actor, id, Typed.NOTHING, notice, Faults.NONE));
  }

  @PostMapping("/courses/{id}/sheet")
  ModelAndView make(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam MultiValueMap<String, String> sent,
      HttpServletRequest request,
      RedirectAttributes carried) {
    var typed = new Typed(sent);
    SheetDraft draft = SheetForm.draft(typed);
    String current = address.orOf(request) + CurrentController.PATH;
    return switch (sheets.make(actor, OpenCourses.idOf(id), draft, current)) {
      case Reading.Read<EntryId> read -> {
        LOG.info("Course {}: sheet made by {}, entry {}", id, actor.id(), read.value().text());
        carried.addFlashAttribute(
            NOTICE, "The sheet is made. Print it at 100 %, and go through it with him.");
        yield Page.redirect("/courses/" + id + "/sheet");
      }
      case Reading.Refused<EntryId> refused ->
          Page.refused(
              PAGE, page(actor, id, typed, "", Faults.of(refused).inOrderOf(SheetForm.FIELDS)));
    };
  }

  @GetMapping("/courses/{id}/sheet/{entry}")
  ModelAndView document(@PathVariable String id, @PathVariable String entry) {
    byte[] pdf =
        sheets
            .document(OpenCourses.idOf(id), CoursePaths.entryId(entry))
            .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
    return new ModelAndView(new SheetFile(pdf, "sheet-" + entry), Map.of());
  }

  private SheetPage page(Account actor, String id, Typed typed, String notice, Faults faults) {
    CourseState state = courses.find(id);
    SheetView view = sheets.view(state, views::nameOf);
    return new SheetPage(
        views.man(state),
        "/courses/" + id,
        view,
        By.CLINICIAN.includes(actor),
        SheetForm.of(view.draft(), typed, faults),
        view.made().stream().map(MadeLine::of).toList(),
        notice,
        faults);
  }
}
