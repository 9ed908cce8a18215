package rungwise.store.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.clock.ClockEntries;
import rungwise.clinic.people.AccountId;
import rungwise.store.RawDatabase;
import rungwise.store.SqliteStore;
import rungwise.store.journal.BrokenEntry;

final class SqlClockEntriesTest {

  private static final Instant NOON = Instant.parse("2026-03-02T12:00:00Z");

  @TempDir Path folder;
  private SqliteStore store;
  private ClockEntries entries;
  private Optional<String> believed = Optional.empty();

  @BeforeEach
  void open() {
    store = SqliteStore.open(folder);
    entries = store.clockEntries();
    store.journal().keepClock(() -> believed);
  }

  @AfterEach
  void close() {
    store.close();
  }

  private void write(Instant at, Optional<String> word) {
    believed = word;
    store
        .transactions()
        .inTransaction(
            () -> {
              entries.confirmed(AccountId.PROGRAM, at, "The server said noon; written: noon");
              return true;
            });
  }

  @Test
  void an_empty_record_has_no_newest_entry() {
    assertThat(entries.newest()).isEmpty();
  }

  @Test
  void the_newest_entry_is_the_last_one_that_no_wrong_clock_has_written() {
    write(NOON, Optional.empty());
    write(NOON.plus(Duration.ofHours(1)), Optional.of("confirmed"));
    write(NOON.plus(Duration.ofDays(9)), Optional.of("wrong"));

    assertThat(entries.newest()).contains(NOON.plus(Duration.ofHours(1)));

    write(NOON.plus(Duration.ofHours(2)), Optional.of("not_compared"));
    assertThat(entries.newest()).contains(NOON.plus(Duration.ofHours(2)));
  }

  @Test
  void what_was_believed_is_sealed() throws SQLException {
    write(NOON, Optional.of("wrong"));
    write(NOON, Optional.empty());
    assertThat(store.journal().firstBroken()).isEmpty();

    try (RawDatabase raw = RawDatabase.withoutTriggers(folder)) {
      raw.run("update entry set clock_believed = 'compared' where seq = 1");
      assertThat(store.journal().firstBroken()).map(BrokenEntry::seq).contains(1L);
      raw.run("update entry set clock_believed = 'wrong' where seq = 1");
      raw.run("update entry set clock_believed = 'compared' where seq = 2");
      assertThat(store.journal().firstBroken()).map(BrokenEntry::seq).contains(2L);
    }
  }
}
