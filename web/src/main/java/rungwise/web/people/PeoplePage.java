package rungwise.web.people;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;

/** The list of accounts as shown: who can work first, who cannot any more last. */
public record PeoplePage(List<Row> rows) {

  /** One account. */
  public record Row(String path, String fullName, String signInName, String roles, String state) {}

  public PeoplePage {
    rows = List.copyOf(rows);
  }

  static PeoplePage of(List<Account> accounts) {
    return new PeoplePage(
        accounts.stream()
            .sorted(Comparator.comparing(Account::state).thenComparing(Account::fullName))
            .map(PeoplePage::row)
            .toList());
  }

  private static Row row(Account account) {
    return new Row(
        AccountPage.pathOf(account),
        account.fullName(),
        account.signInName().text(),
        account.roles().stream().map(Role::words).collect(Collectors.joining(", ")),
        account.state().words());
  }
}
