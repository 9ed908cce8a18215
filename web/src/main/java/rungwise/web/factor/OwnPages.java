package rungwise.web.factor;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.factor.FactorRule;
import rungwise.clinic.factor.FactorStanding;
import rungwise.clinic.factor.SecondFactors;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.quantities.Fault;
import rungwise.web.access.PublicAddress;
import rungwise.web.page.Assets;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.session.OpenSession;
import rungwise.web.session.Sessions;

/** Makes the view record of the page about one's own account. */
final class OwnPages {

  private static final String NONE_YET = "You have no second factor yet.";

  private final SecondFactors factors;
  private final FactorRule rule;
  private final Sessions sessions;
  private final PublicAddress address;
  private final Assets assets;
  private final ClinicTime time;

  OwnPages(
      SecondFactors factors,
      FactorRule rule,
      Sessions sessions,
      PublicAddress address,
      Assets assets,
      ClinicTime time) {
    this.factors = factors;
    this.rule = rule;
    this.sessions = sessions;
    this.address = address;
    this.assets = assets;
    this.time = time;
  }

  OwnAccountPage account(
      Account actor, HttpServletRequest request, String notice, String fault, List<String> codes) {
    FactorStanding standing = factors.standing(actor.id());
    String here = Sessions.of(request).map(OpenSession::handle).orElse("");
    return new OwnAccountPage(
        actor.fullName(),
        actor.signInName().text(),
        answer(actor, standing),
        standing.hasAuthenticator(),
        standing.isSetUp(),
        standing.recoveryCodes(),
        codes,
        standing.passkeys().stream()
            .map(
                passkey ->
                    new OwnAccountPage.Key(
                        passkey.id(), passkey.name(), time.words(passkey.addedAt())))
            .toList(),
        address.ofPasskeys(request).map(anywhere -> assets.passkeyScript()),
        address.given().map(Object::toString),
        Field.of(Field.Kind.TEXT, "passkeyName", "Name of the passkey")
            .withHint("By which you know it again, such as desk computer."),
        sessions.list().stream()
            .filter(Sessions.isOf(actor.id()))
            .map(session -> row(session, here))
            .toList(),
        notice,
        fault.isEmpty() ? Faults.NONE : new Faults(List.of(Fault.ofForm(fault))));
  }

  private String answer(Account actor, FactorStanding standing) {
    if (standing.isSetUp()) {
      return "Your second factor is set up. It is asked once a shift, before a signature.";
    }
    boolean signs = actor.may(Role.PRESCRIBER) || actor.may(Role.PROGRAMME_LEAD);
    return switch (rule.asked()) {
      case OF_EVERYBODY_WHO_ENTERS -> "You need a second factor before you can go on.";
      case OF_EVERYBODY_WHO_SIGNS ->
          signs ? "You need a second factor before you can sign." : NONE_YET;
      case OF_WHO_HAS_ONE -> NONE_YET;
    };
  }

  private OwnAccountPage.Place row(OpenSession session, String here) {
    return new OwnAccountPage.Place(
        session.handle(),
        time.words(session.since()),
        time.words(session.lastSeen()),
        session.address(),
        session.browser(),
        session.handle().equals(here));
  }
}
