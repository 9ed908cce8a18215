package rungwise.web.today;

import java.util.List;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.Patient;
import rungwise.clinic.people.Account;
import rungwise.clinic.sheet.ManLines;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.today.DayList;
import rungwise.web.page.Page;
import rungwise.web.today.FoundPage.Man;

/**
 * The search from the head of every page. It is sent as a form, so that no address holds a name.
 */
@Controller
final class FoundController {

  private static final int MOST = 50;
  private static final String HOW =
      "Type parts of his name in any order, his date of birth such as 1957-11-02, or his record"
          + " number.";

  private final DayList list;

  FoundController(DayList list) {
    this.list = list;
  }

  @GetMapping("/men")
  ModelAndView how() {
    return page(HOW);
  }

  /**
   * Looks for a man.
   *
   * @param typed parts of his name, his date of birth, his record number
   */
  @PostMapping("/men")
  ModelAndView found(
      @AuthenticationPrincipal Account account, @RequestParam(defaultValue = "") String typed) {
    if (typed.isBlank()) {
      return page("Nothing was typed. " + HOW);
    }
    List<CourseState> found = list.found(typed, MOST + 1);
    return Page.of(
        "today/found",
        new FoundPage(
            answer(found.size()),
            found.stream().limit(MOST).map(FoundController::man).toList(),
            list.notYetKept(),
            By.CLINICIAN.includes(account)));
  }

  private static ModelAndView page(String answer) {
    return Page.of("today/found", new FoundPage(answer, List.of(), 0, /* mayReport= */ false));
  }

  private static String answer(int found) {
    if (found > MOST) {
      return "More than " + MOST + " men were found: these are the first. Type more of his name.";
    }
    return switch (found) {
      case 0 -> "Nobody was found. " + HOW;
      case 1 -> "1 man was found.";
      default -> found + " men were found.";
    };
  }

  private static Man man(CourseState state) {
    Patient patient = state.file().patient();
    return new Man(
        state.file().id(),
        patient.fullName(),
        ClinicTime.words(patient.birthDate()),
        patient.recordNumber(),
        ManLines.before(state.file()));
  }
}
