package rungwise.store.factor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.Transactions;
import rungwise.clinic.factor.FactorSecret;
import rungwise.clinic.factor.Factors;
import rungwise.clinic.factor.FactorsContract;
import rungwise.clinic.factor.TimeSecret;
import rungwise.store.RawDatabase;
import rungwise.store.SampleEntries;
import rungwise.store.SqliteStore;

final class SqlFactorsTest extends FactorsContract {

  private static final FactorSecret SECRET = new FactorSecret("GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ");

  @TempDir Path folder;
  private SqliteStore store;

  @BeforeEach
  void open() {
    store = SqliteStore.open(folder);
    SampleEntries.run(store, () -> SampleEntries.invite(store, ANA));
    SampleEntries.run(store, () -> SampleEntries.invite(store, BEN));
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Override
  protected Factors factors() {
    return store.factors();
  }

  @Override
  protected Transactions transactions() {
    return store.transactions();
  }

  private void keepSecret() {
    SampleEntries.run(store, () -> factors().put(new TimeSecret(ANA.id(), SECRET, 1)));
  }

  @Test
  void a_secret_is_stored_encrypted_and_differently_each_time() throws SQLException {
    keepSecret();
    try (RawDatabase raw = RawDatabase.in(folder)) {
      List<@Nullable Object> first = raw.column("select sealed_secret from time_secret");
      keepSecret();
      List<@Nullable Object> second = raw.column("select sealed_secret from time_secret");

      assertThat(first).hasSize(1).isNotEqualTo(second);
      assertThat(String.valueOf(first.getFirst())).doesNotContain(SECRET.base32());
    }
  }

  @Test
  void a_secret_that_was_changed_or_moved_to_another_account_is_not_taken() throws SQLException {
    keepSecret();
    try (RawDatabase raw = RawDatabase.in(folder)) {
      raw.run("update time_secret set holder_id = '" + BEN.id() + "'");
    }

    assertThatThrownBy(() -> factors().timeSecret(BEN.id()))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("cannot be opened");
  }

  @Test
  void a_secret_is_there_after_the_store_was_closed() {
    keepSecret();
    store.close();
    store = SqliteStore.open(folder);

    assertThat(factors().timeSecret(ANA.id())).contains(new TimeSecret(ANA.id(), SECRET, 1));
  }
}
