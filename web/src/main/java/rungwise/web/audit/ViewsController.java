package rungwise.web.audit;

import java.util.OptionalLong;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.audit.Viewing;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.People;
import rungwise.web.page.Page;

/** Who has seen a course; looking here is a view too. */
@Controller
final class ViewsController {

  private static final String PROGRAM = "the program";
  private static final String NEWEST = "0";

  private final Viewing viewing;
  private final People people;
  private final ClinicTime time;

  ViewsController(Viewing viewing, People people, ClinicTime time) {
    this.viewing = viewing;
    this.people = people;
    this.time = time;
  }

  @GetMapping("/views")
  ModelAndView choose() {
    return Page.of("audit/record-numbers", RecordNumbersPage.of(viewing.courses(), time));
  }

  @GetMapping("/courses/{id}/views")
  ModelAndView show(@PathVariable String id, @RequestParam(defaultValue = NEWEST) long before) {
    OptionalLong start = before > 0 ? OptionalLong.of(before) : OptionalLong.empty();
    return viewing
        .of(courseId(id), start)
        .map(looks -> Page.of("audit/views", ViewsPage.of(looks, start, time, this::nameOf)))
        .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
  }

  private String nameOf(AccountId id) {
    return people.find(id).map(Account::fullName).orElse(PROGRAM);
  }

  private static CourseId courseId(String text) {
    try {
      return new CourseId(text);
    } catch (IllegalArgumentException notAnId) {
      throw new ResponseStatusException(HttpStatus.NOT_FOUND, "no such course", notAnId);
    }
  }
}
