package rungwise.web.people;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.People;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.secrets.Refusal;
import rungwise.web.secrets.TryLimiter;
import rungwise.web.session.Endings;
import rungwise.web.session.Sessions;

/** Changing one's own password. */
@Controller
final class PasswordController {

  private static final Logger LOG = LoggerFactory.getLogger(PasswordController.class);
  private static final String PAGE = "people/password";

  private final People people;
  private final Sessions sessions;
  private final Endings endings;
  private final TryLimiter limiter;

  PasswordController(People people, Sessions sessions, Endings endings, TryLimiter limiter) {
    this.people = people;
    this.sessions = sessions;
    this.endings = endings;
    this.limiter = limiter;
  }

  @GetMapping("/account/password")
  ModelAndView show() {
    return Page.of(PAGE, PasswordPage.of(Faults.NONE));
  }

  @PostMapping("/account/password")
  ModelAndView change(
      @AuthenticationPrincipal Account actor,
      @RequestParam(defaultValue = "") String presentPassword,
      @RequestParam(defaultValue = "") String newPassword,
      HttpServletRequest request,
      RedirectAttributes carried) {
    String name = actor.signInName().text();
    Optional<Refusal> refusal = limiter.tryCode(request.getRemoteAddr(), name);
    if (refusal.isPresent()) {
      return Page.of(
          PAGE,
          PasswordPage.of(Faults.ofForm(List.of(refusal.get().words()))),
          HttpStatus.TOO_MANY_REQUESTS);
    }
    return switch (people.changePassword(actor.id(), presentPassword, newPassword)) {
      case Reading.Read<Account> read -> {
        limiter.prove(request.getRemoteAddr(), name, Optional.empty());
        endings.endAllOf(actor.id());
        sessions.open(request, actor);
        LOG.info("Password changed by {}", actor.id());
        carried.addFlashAttribute(
            "notice", "Your password is changed. You are signed out everywhere else.");
        yield Page.redirect("/account");
      }
      case Reading.Refused<Account> refused ->
          Page.refused(PAGE, PasswordPage.of(Faults.of(refused)));
    };
  }
}
