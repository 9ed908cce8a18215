package rungwise.web.people;

import java.util.Optional;
import java.util.UUID;
import java.util.function.Predicate;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.People;
import rungwise.web.page.Page;
import rungwise.web.session.Endings;
import rungwise.web.session.OpenSession;
import rungwise.web.session.Sessions;

/** Who is signed in now, for administrators, who can end it. */
@Controller
final class SessionsController {

  private static final Logger LOG = LoggerFactory.getLogger(SessionsController.class);
  private static final String NOTICE = "notice";
  private static final String ENDED = "That place is signed out.";

  private final Sessions sessions;
  private final Endings endings;
  private final People people;
  private final ClinicTime time;

  SessionsController(Sessions sessions, Endings endings, People people, ClinicTime time) {
    this.sessions = sessions;
    this.endings = endings;
    this.people = people;
    this.time = time;
  }

  @GetMapping("/sessions")
  ModelAndView list(Model carried) {
    String notice = Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
    return Page.of("people/sessions", SessionsPage.of(sessions.list(), people::find, time, notice));
  }

  @PostMapping("/sessions/{handle}/end")
  ModelAndView end(
      @AuthenticationPrincipal Account actor,
      @PathVariable String handle,
      RedirectAttributes carried) {
    Predicate<OpenSession> named = session -> session.handle().equals(handle);
    OpenSession found =
        sessions.list().stream()
            .filter(named)
            .findFirst()
            .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
    people.endSessions(actor.id(), found.account()).orThrow();
    sessions.end(named);
    LOG.info("A session of {} ended by {}", found.account(), actor.id());
    carried.addFlashAttribute(NOTICE, ENDED);
    return Page.redirect("/sessions");
  }

  @PostMapping("/people/{id}/end-sessions")
  ModelAndView endAll(
      @AuthenticationPrincipal Account actor, @PathVariable String id, RedirectAttributes carried) {
    AccountId of = readId(id);
    if (people.endSessions(actor.id(), of).found().isEmpty()) {
      throw new ResponseStatusException(HttpStatus.NOT_FOUND);
    }
    int ended = endings.endAllOf(of);
    LOG.info("{} sessions of {} ended by {}", ended, of, actor.id());
    carried.addFlashAttribute(NOTICE, "Everywhere this person was signed in has ended.");
    return Page.redirect("/people/" + of);
  }

  private static AccountId readId(String text) {
    try {
      return AccountId.of(UUID.fromString(text));
    } catch (IllegalArgumentException notAnId) {
      throw new ResponseStatusException(HttpStatus.NOT_FOUND, "no such account", notAnId);
    }
  }
}
