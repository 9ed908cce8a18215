package rungwise.web.soundness;

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
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.People;
import rungwise.clinic.soundness.Doubts;
import rungwise.clinic.standing.Acknowledging;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;

/** What is not as it was written, and two people's word where nothing can be put back. */
@Controller
final class FaultsController {

  private static final Logger LOG = LoggerFactory.getLogger(FaultsController.class);
  private static final String TEMPLATE = "soundness/faults";
  private static final String NOTICE = "notice";
  private static final String PROGRAM = "the program";

  private final Acknowledging acknowledging;
  private final People people;
  private final Doubts doubts;
  private final ClinicTime time;

  FaultsController(Acknowledging acknowledging, People people, Doubts doubts, ClinicTime time) {
    this.acknowledging = acknowledging;
    this.people = people;
    this.doubts = doubts;
    this.time = time;
  }

  @GetMapping("/record-faults")
  ModelAndView show(Model carried) {
    String notice = Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
    return Page.of(TEMPLATE, page(Optional.empty(), notice));
  }

  @PostMapping("/record-faults/{id}")
  ModelAndView acknowledge(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "") String shown,
      @RequestParam(defaultValue = "") String reason,
      RedirectAttributes carried) {
    CourseId course = courseId(id);
    return switch (acknowledging.acknowledge(actor, course, shown, reason)) {
      case Reading.Read<Boolean> read -> {
        LOG.info("Course {}: fault acknowledged by {}", course, actor.id());
        if (read.value()) {
          doubts.lookAgain();
        }
        carried.addFlashAttribute(
            NOTICE,
            read.value()
                ? "Both have acknowledged it. Call him now, before anything is signed."
                : "Acknowledged. It counts once the other one has done so too.");
        yield Page.redirect("/record-faults");
      }
      case Reading.Refused<Boolean> refused ->
          Page.refused(
              TEMPLATE,
              page(
                  Optional.of(new FaultsPage.Sent(course, reason, new Faults(refused.placed()))),
                  ""));
    };
  }

  private FaultsPage page(Optional<FaultsPage.Sent> sent, String notice) {
    return FaultsPage.of(
        Way.of(doubts),
        acknowledging.unreadable().size(),
        acknowledging.faulty(),
        this::nameOf,
        time,
        sent,
        notice);
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
