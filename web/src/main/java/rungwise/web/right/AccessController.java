package rungwise.web.right;

import java.util.List;
import java.util.stream.Collectors;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.access.CourseAccess;
import rungwise.clinic.access.TakenAccess;
import rungwise.clinic.audit.Trail;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.People;
import rungwise.web.access.Routes;
import rungwise.web.page.Page;

/** Going on after access was taken, and the list of all that was. */
@Controller
final class AccessController {

  private final CourseAccess access;
  private final Trail trail;
  private final People people;
  private final ClinicTime time;

  AccessController(CourseAccess access, Trail trail, People people, ClinicTime time) {
    this.access = access;
    this.trail = trail;
    this.people = people;
    this.time = time;
  }

  /** Reached only once the access is there: it was taken on the way here. */
  @PostMapping("/courses/{id}/access")
  ModelAndView goOn(@PathVariable String id, @RequestParam(defaultValue = "") String next) {
    String course = "/courses/" + id;
    boolean isWithin = next.equals(course) || next.startsWith(course + "/");
    return Page.redirect(isWithin && Routes.isOwnPage(next) ? next : course);
  }

  @GetMapping("/access-taken")
  ModelAndView list(@RequestParam(defaultValue = "0") long before) {
    List<TakenAccess.Numbered> found = access.list(before > 0 ? before : Long.MAX_VALUE);
    var numbers =
        trail.recordNumbers(
            found.stream().map(one -> one.access().course()).collect(Collectors.toSet()));
    return Page.of(
        "right/access-taken", AccessTakenPage.of(found, before > 0, numbers, time, this::nameOf));
  }

  private String nameOf(AccountId id) {
    return people.find(id).map(Account::fullName).orElse("the program");
  }
}
