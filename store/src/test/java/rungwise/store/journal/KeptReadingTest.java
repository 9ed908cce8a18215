package rungwise.store.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.formulary.ClinicPreparation;
import rungwise.clinic.formulary.Preparations;
import rungwise.clinic.people.AccountId;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.supply.InUseRule;
import rungwise.store.RawDatabase;
import rungwise.store.SampleEntries;
import rungwise.store.SqliteStore;

/** What is kept of the preparations while another program changes the database. */
final class KeptReadingTest {

  @TempDir Path folder;
  private SqliteStore store;
  private RawDatabase raw;
  private PreparationId id;

  @BeforeEach
  void fill() throws SQLException {
    store = SqliteStore.open(folder);
    SampleEntries.append(store);
    SampleEntries.appendFormulary(store);
    raw = RawDatabase.withoutTriggers(folder);
    id = new PreparationId(text("preparation_id"));
  }

  @AfterEach
  void close() throws SQLException {
    raw.close();
    store.close();
  }

  private String name() {
    return store.preparations().find(id).map(one -> one.preparation().name()).orElseThrow();
  }

  private String text(String column) throws SQLException {
    return String.valueOf(
        raw.column("select " + column + " from preparation order by preparation_id").getFirst());
  }

  private void rename(String name) throws SQLException {
    raw.run(
        "update preparation set name = '%s' where preparation_id = '%s'"
            .formatted(name, id.value()));
  }

  @Test
  void what_was_read_as_it_was_sealed_stays_whatever_is_written_over_it() throws SQLException {
    String sealed = name();

    rename("Another");

    assertThat(name()).isEqualTo(sealed);
  }

  @Test
  void what_was_not_as_it_was_sealed_is_never_kept() throws SQLException {
    String sealed = text("name");
    rename("Another");
    assertThat(name()).isEqualTo("Another");
    store.watch().lookAtFoundation();
    assertThat(store.watch().flaws()).as("and it is told").isNotEmpty();

    rename(sealed);

    assertThat(name()).isEqualTo(sealed);
  }

  @Test
  void what_a_transaction_wrote_and_took_back_is_not_kept() {
    var other =
        new ClinicPreparation(
            SamplePreparations.ALPROSTADIL_40, new InUseRule.SingleUse(), Optional.empty());
    Preparations preparations = store.preparations();
    assertThat(preparations.find(other.id())).isEmpty();

    assertThatThrownBy(
            () ->
                store
                    .transactions()
                    .inTransaction(
                        () -> {
                          preparations.append(other, AccountId.PROGRAM, Instant.EPOCH);
                          assertThat(preparations.find(other.id())).contains(other);
                          throw new IllegalStateException("taken back");
                        }))
        .hasMessage("taken back");

    assertThat(preparations.find(other.id())).isEmpty();
  }
}
