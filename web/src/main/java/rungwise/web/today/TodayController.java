package rungwise.web.today;

import java.util.List;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.web.page.Page;
import rungwise.web.today.TodayPage.Step;

/** The page after signing in. */
@Controller
final class TodayController {

  private static final Step INVITE =
      new Step("Invite the people who work here.", "/people/invite", "Invite somebody");
  private static final Step ASK =
      new Step(
          "Ask your administrator for the roles you need, if a page you need is not in the list"
              + " above.",
          "",
          "");

  @GetMapping("/")
  ModelAndView today(@AuthenticationPrincipal Account account) {
    Step first = account.may(Role.ADMINISTRATOR) ? INVITE : ASK;
    return Page.of("today/today", new TodayPage("Nobody needs you now.", List.of(first)));
  }
}
