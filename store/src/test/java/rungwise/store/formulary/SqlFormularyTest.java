package rungwise.store.formulary;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.Transactions;
import rungwise.clinic.formulary.FormularyContract;
import rungwise.clinic.formulary.Preparations;
import rungwise.clinic.formulary.Syringes;
import rungwise.store.SqliteStore;

final class SqlFormularyTest extends FormularyContract {

  @TempDir Path folder;
  private SqliteStore store;

  @BeforeEach
  void open() {
    store = SqliteStore.open(folder);
  }

  @AfterEach
  void the_journal_is_whole_after_each_test() {
    assertThat(store.journal().firstBroken()).isEmpty();
    store.close();
  }

  @Override
  protected Preparations preparations() {
    return store.preparations();
  }

  @Override
  protected Syringes syringes() {
    return store.syringes();
  }

  @Override
  protected Transactions transactions() {
    return store.transactions();
  }
}
