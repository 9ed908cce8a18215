package rungwise.store.people;

import static org.jooq.impl.DSL.max;
import static org.jooq.impl.DSL.noCondition;
import static org.jooq.impl.DSL.select;
import static rungwise.store.schema.Tables.ACCOUNT;
import static rungwise.store.schema.Tables.ACCOUNT_STANDING;
import static rungwise.store.schema.Tables.ENTRY;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jooq.Condition;
import org.jooq.Record;
import org.jooq.Record1;
import org.jooq.Select;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountEvent;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.AccountState;
import rungwise.clinic.people.Accounts;
import rungwise.clinic.people.Role;
import rungwise.clinic.people.SignInAttempt;
import rungwise.clinic.people.SignInName;
import rungwise.store.database.Database;
import rungwise.store.journal.Journal;
import rungwise.store.journal.NewEntry;
import rungwise.store.schema.tables.records.AccountRecord;
import rungwise.store.schema.tables.records.AccountStandingRecord;
import rungwise.store.schema.tables.records.SignInRecord;

/** The accounts in the journal: each event carries the account as it is from then on. */
public final class SqlAccounts implements Accounts {

  private static final String SPACE = " ";

  private final Database database;
  private final Journal journal;

  public SqlAccounts(Database database, Journal journal) {
    this.database = database;
    this.journal = journal;
  }

  @Override
  public List<Account> all() {
    return where(noCondition());
  }

  @Override
  public Optional<Account> find(AccountId id) {
    return where(ACCOUNT.ACCOUNT_ID.eq(id.text())).stream().findFirst();
  }

  @Override
  public Optional<Account> named(SignInName name) {
    return where(ACCOUNT.SIGN_IN_NAME.eq(name.text())).stream().findFirst();
  }

  private List<Account> where(Condition condition) {
    return database
        .reading()
        .select(
            ACCOUNT.ACCOUNT_ID,
            ACCOUNT.SIGN_IN_NAME,
            ACCOUNT_STANDING.FULL_NAME,
            ACCOUNT_STANDING.ROLES,
            ACCOUNT_STANDING.STATE)
        .from(ACCOUNT)
        .join(ACCOUNT_STANDING)
        .on(ACCOUNT_STANDING.ACCOUNT_ID.eq(ACCOUNT.ACCOUNT_ID))
        .join(ENTRY)
        .on(ENTRY.ID.eq(ACCOUNT_STANDING.ENTRY_ID))
        .where(condition)
        .and(ENTRY.SEQ.eq(lastStanding()))
        .orderBy(ACCOUNT.SIGN_IN_NAME)
        .fetch(SqlAccounts::account);
  }

  /** The number of the account's last entry; correlated with the outer query's account. */
  private static Select<Record1<Long>> lastStanding() {
    var standing = ACCOUNT_STANDING.as("any_standing");
    var entry = ENTRY.as("any_entry");
    return select(max(entry.SEQ))
        .from(standing)
        .join(entry)
        .on(entry.ID.eq(standing.ENTRY_ID))
        .where(standing.ACCOUNT_ID.eq(ACCOUNT.ACCOUNT_ID));
  }

  private static Account account(Record row) {
    return new Account(
        new AccountId(row.get(ACCOUNT.ACCOUNT_ID)),
        new SignInName(row.get(ACCOUNT.SIGN_IN_NAME)),
        row.get(ACCOUNT_STANDING.FULL_NAME),
        Arrays.stream(row.get(ACCOUNT_STANDING.ROLES).split(SPACE))
            .map(Role::ofToken)
            .collect(Collectors.toSet()),
        AccountState.ofToken(row.get(ACCOUNT_STANDING.STATE)));
  }

  @Override
  public void append(AccountEvent event) {
    Account account = event.account();
    Optional<Account> before = find(account.id());
    if (!named(account.signInName()).map(Account::id).equals(before.map(Account::id))) {
      throw new IllegalStateException("bug: the sign-in name belongs to another account");
    }
    var entry = NewEntry.of(token(event.kind()), event.at(), event.by().text());
    if (before.isPresent()) {
      journal.append(entry, standing(account));
    } else {
      journal.append(entry, identity(account), standing(account));
    }
  }

  @Override
  public void append(SignInAttempt attempt) {
    String kind =
        switch (attempt.outcome()) {
          case SIGNED_IN -> "signed_in";
          case REFUSED -> "sign_in_refused";
        };
    boolean isProven = attempt.outcome() == SignInAttempt.Outcome.SIGNED_IN;
    AccountId by = isProven ? attempt.account().orElse(AccountId.PROGRAM) : AccountId.PROGRAM;
    var row = new SignInRecord();
    row.setAccountId(attempt.account().map(AccountId::text).orElse(null));
    row.setOutcome(token(attempt.outcome()));
    journal.append(NewEntry.of(kind, attempt.at(), by.text()), row);
  }

  private static AccountRecord identity(Account account) {
    var row = new AccountRecord();
    row.setAccountId(account.id().text());
    row.setSignInName(account.signInName().text());
    return row;
  }

  private static AccountStandingRecord standing(Account account) {
    var row = new AccountStandingRecord();
    row.setAccountId(account.id().text());
    row.setFullName(account.fullName());
    row.setRoles(account.roles().stream().map(Role::token).collect(Collectors.joining(SPACE)));
    row.setState(account.state().token());
    return row;
  }

  private static String token(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }
}
