package rungwise.web.people;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.web.session.OpenSession;

/** Who is signed in now as shown, who was last active first. */
public record SessionsPage(List<Row> rows, String notice) {

  /** One session. */
  public record Row(
      String handle,
      String who,
      String accountPath,
      String since,
      String lastSeen,
      String address,
      String browser) {}

  public SessionsPage {
    rows = List.copyOf(rows);
  }

  static SessionsPage of(
      List<OpenSession> sessions,
      Function<AccountId, Optional<Account>> accounts,
      ClinicTime time,
      String notice) {
    return new SessionsPage(
        sessions.stream()
            .map(
                session ->
                    new Row(
                        session.handle(),
                        accounts.apply(session.account()).map(Account::fullName).orElse(""),
                        "/people/" + session.account(),
                        time.words(session.since()),
                        time.words(session.lastSeen()),
                        session.address(),
                        session.browser()))
            .toList(),
        notice);
  }
}
