package rungwise.web.factor;

import java.util.Optional;
import java.util.UUID;
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
import rungwise.clinic.factor.SecondFactors;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.People;
import rungwise.quantities.Reading;
import rungwise.web.page.Page;
import rungwise.web.session.Sessions;
import rungwise.web.session.Shifts;

/** What an administrator does when somebody's device is lost. */
@Controller
final class ResetController {

  private static final Logger LOG = LoggerFactory.getLogger(ResetController.class);
  private static final String PAGE = "factor/reset";
  private static final String DONE =
      "The second factor is reset, and everywhere this person was signed in has ended.";

  private final SecondFactors factors;
  private final People people;
  private final Sessions sessions;
  private final Shifts shifts;

  ResetController(SecondFactors factors, People people, Sessions sessions, Shifts shifts) {
    this.factors = factors;
    this.people = people;
    this.sessions = sessions;
    this.shifts = shifts;
  }

  @GetMapping("/people/{id}/second-factor")
  ModelAndView show(@PathVariable String id, Model carried) {
    String notice =
        Optional.ofNullable(carried.getAttribute(AccountController.NOTICE)).orElse("").toString();
    return Page.of(PAGE, page(find(id), "", Optional.empty(), notice));
  }

  private ResetPage page(Account account, String typed, Optional<String> fault, String notice) {
    return ResetPage.of(account, factors.standing(account.id()), typed, fault, notice);
  }

  @PostMapping("/people/{id}/second-factor")
  ModelAndView reset(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "") String reason,
      RedirectAttributes carried) {
    Account account = find(id);
    return switch (factors.reset(actor, account.id(), reason)) {
      case Reading.Read<Account> read -> {
        shifts.endAllOf(account.id());
        if (!account.id().equals(actor.id())) {
          sessions.end(Sessions.isOf(account.id()));
        }
        LOG.info("Second factor of {} reset by {}", account.id(), actor.id());
        carried.addFlashAttribute(AccountController.NOTICE, DONE);
        yield Page.redirect("/people/" + account.id() + "/second-factor");
      }
      case Reading.Refused<Account> refused ->
          Page.refused(PAGE, page(account, reason, Optional.of(refused.faults().getFirst()), ""));
    };
  }

  private Account find(String text) {
    try {
      return people
          .find(AccountId.of(UUID.fromString(text)))
          .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
    } catch (IllegalArgumentException notAnId) {
      throw new ResponseStatusException(HttpStatus.NOT_FOUND, "no such account", notAnId);
    }
  }
}
