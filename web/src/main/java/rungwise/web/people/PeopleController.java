package rungwise.web.people;

import java.util.List;
import java.util.Optional;
import java.util.Set;
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
import rungwise.clinic.ClinicTime;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.Invitation;
import rungwise.clinic.people.People;
import rungwise.clinic.people.Role;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Page;
import rungwise.web.people.AccountPage.ShownCode;
import rungwise.web.session.Endings;

/** The accounts, for administrators. */
@Controller
final class PeopleController {

  private static final Logger LOG = LoggerFactory.getLogger(PeopleController.class);

  private static final String ACCOUNT = "people/account";
  private static final String INVITE = "people/invite";

  /** Carried over one redirect, so that a code is seen once and a reload sends no form again. */
  private static final String CODE = "shownCode";

  private static final Faults OWN =
      Faults.ofForm(
          List.of(
              "That is your own account: change your password on your own page. A code would end"
                  + " the session in which it is shown."));

  private static final String NOTICE = "notice";

  private final People people;
  private final Endings endings;
  private final ClinicTime time;

  PeopleController(People people, Endings endings, ClinicTime time) {
    this.people = people;
    this.endings = endings;
    this.time = time;
  }

  @GetMapping("/people")
  ModelAndView list() {
    return Page.of("people/people", PeoplePage.of(people.list()));
  }

  @GetMapping("/people/invite")
  ModelAndView inviteForm() {
    return Page.of(INVITE, InvitePage.of("", "", Set.of(), Faults.NONE));
  }

  @PostMapping("/people/invite")
  ModelAndView invite(
      @AuthenticationPrincipal Account actor,
      @RequestParam(defaultValue = "") String fullName,
      @RequestParam(defaultValue = "") String signInName,
      @RequestParam(defaultValue = "") List<String> roles,
      RedirectAttributes carried) {
    Set<Role> picked = RoleChoice.read(roles);
    String name = signInName.strip();
    return switch (people.invite(actor.id(), name, fullName, picked)) {
      case Reading.Read<Invitation> read -> showCode(actor, read.value(), carried);
      case Reading.Refused<Invitation> refused ->
          Page.refused(INVITE, InvitePage.of(fullName, name, picked, Faults.of(refused)));
    };
  }

  @GetMapping("/people/{id}")
  ModelAndView account(@PathVariable String id, Model carried) {
    AccountPage page = AccountPage.of(find(id));
    Optional<ShownCode> code =
        Optional.ofNullable(carried.getAttribute(CODE)).map(ShownCode.class::cast);
    String notice = Optional.ofNullable(carried.getAttribute(NOTICE)).orElse("").toString();
    return Page.of(ACCOUNT, page.with(code, notice));
  }

  @PostMapping("/people/{id}/roles")
  ModelAndView changeRoles(
      @AuthenticationPrincipal Account actor,
      @PathVariable String id,
      @RequestParam(defaultValue = "") List<String> roles,
      RedirectAttributes carried) {
    Account account = find(id);
    Set<Role> picked = RoleChoice.read(roles);
    Reading<Account> changed = people.changeRoles(actor.id(), account.id(), picked);
    return done(actor, "roles changed", changed, account, picked, "The roles are saved.", carried);
  }

  @PostMapping("/people/{id}/deactivate")
  ModelAndView deactivate(
      @AuthenticationPrincipal Account actor, @PathVariable String id, RedirectAttributes carried) {
    Account account = find(id);
    Reading<Account> ended = people.deactivate(actor.id(), account.id());
    return done(
        actor, "deactivated", ended, account, account.roles(), "The account is ended.", carried);
  }

  @PostMapping("/people/{id}/new-code")
  ModelAndView newCode(
      @AuthenticationPrincipal Account actor, @PathVariable String id, RedirectAttributes carried) {
    Account account = find(id);
    if (account.id().equals(actor.id())) {
      return refused(account, account.roles(), OWN);
    }
    return switch (people.newCode(actor.id(), account.id())) {
      case Reading.Read<Invitation> read -> {
        endings.endAllOf(account.id());
        yield showCode(actor, read.value(), carried);
      }
      case Reading.Refused<Invitation> refused ->
          refused(account, account.roles(), Faults.of(refused));
    };
  }

  private ModelAndView done(
      Account actor,
      String what,
      Reading<Account> outcome,
      Account account,
      Set<Role> picked,
      String notice,
      RedirectAttributes carried) {
    return switch (outcome) {
      case Reading.Read<Account> read -> {
        LOG.info("Account {} {} by {}", account.id(), what, actor.id());
        carried.addFlashAttribute(NOTICE, notice);
        yield Page.redirect(AccountPage.pathOf(account));
      }
      case Reading.Refused<Account> refused -> refused(account, picked, Faults.of(refused));
    };
  }

  private static ModelAndView refused(Account account, Set<Role> picked, Faults faults) {
    return Page.refused(ACCOUNT, AccountPage.of(account).refused(picked, faults));
  }

  private ModelAndView showCode(Account actor, Invitation made, RedirectAttributes carried) {
    LOG.info("Code for {} made by {}", made.account().id(), actor.id());
    carried.addFlashAttribute(
        CODE, new ShownCode(made.code().text(), time.words(made.goodUntil())));
    return Page.redirect(AccountPage.pathOf(made.account()));
  }

  private Account find(String id) {
    return readId(id)
        .flatMap(people::find)
        .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
  }

  private static Optional<AccountId> readId(String text) {
    try {
      UUID id = UUID.fromString(text);
      return Optional.of(AccountId.of(id));
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }
}
