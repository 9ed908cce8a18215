package rungwise.store.people;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.Transactions;
import rungwise.clinic.people.Accounts;
import rungwise.clinic.people.AccountsContract;
import rungwise.clinic.people.Credentials;
import rungwise.store.SqliteStore;

final class SqlAccountsTest extends AccountsContract {

  @TempDir Path folder;
  private SqliteStore store;

  @BeforeEach
  void open() {
    store = SqliteStore.open(folder);
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Override
  protected Accounts accounts() {
    return store.accounts();
  }

  @Override
  protected Credentials credentials() {
    return store.credentials();
  }

  @Override
  protected Transactions transactions() {
    return store.transactions();
  }
}
