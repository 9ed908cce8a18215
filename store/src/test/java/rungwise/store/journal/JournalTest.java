package rungwise.store.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import java.util.TimeZone;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.people.Credential;
import rungwise.clinic.people.SignInAttempt;
import rungwise.store.RawDatabase;
import rungwise.store.SampleEntries;
import rungwise.store.SqliteStore;
import rungwise.store.schema.tables.records.SignInRecord;

final class JournalTest {

  private static final String BY = new UUID(0, 0).toString();
  private static final Instant NOW = SampleEntries.NOW;

  @TempDir Path folder;

  private static SignInRecord fact() {
    var fact = new SignInRecord();
    fact.setOutcome("refused");
    return fact;
  }

  @Test
  void entries_are_counted_from_one_without_a_gap_over_failed_writes() throws SQLException {
    try (var store = SqliteStore.open(folder);
        var raw = RawDatabase.in(folder)) {
      SampleEntries.append(store);
      assertThatThrownBy(
              () ->
                  SampleEntries.run(
                      store,
                      () -> {
                        store.journal().append(NewEntry.of("sign_in_refused", NOW, BY), fact());
                        throw new IllegalArgumentException("on purpose");
                      }))
          .hasMessage("on purpose");
      SampleEntries.run(
          store,
          () -> SampleEntries.signIn(store, Optional.empty(), SignInAttempt.Outcome.REFUSED));

      assertThat(raw.column("select seq from entry order by seq"))
          .containsExactly(1, 2, 3, 4, 5, 6);
      assertThat(store.journal().firstBroken()).isEmpty();
    }
  }

  @Test
  void an_entry_whose_fact_cannot_be_written_is_not_written_either() throws SQLException {
    try (var store = SqliteStore.open(folder);
        var raw = RawDatabase.in(folder)) {
      var withoutOutcome = new SignInRecord();

      assertThatThrownBy(
              () ->
                  SampleEntries.run(
                      store,
                      () ->
                          store
                              .journal()
                              .append(NewEntry.of("sign_in_refused", NOW, BY), withoutOutcome)))
          .hasMessageContaining("NOT NULL");

      assertThat(raw.column("select seq from entry")).isEmpty();
      assertThat(raw.column("select seq from journal_head")).isEmpty();
    }
  }

  @Test
  void nothing_is_appended_outside_a_transaction() {
    try (var store = SqliteStore.open(folder)) {
      assertThatThrownBy(
              () -> store.journal().append(NewEntry.of("sign_in_refused", NOW, BY), fact()))
          .isInstanceOf(IllegalStateException.class)
          .hasMessageContaining("outside a transaction");
    }
  }

  @Test
  void every_part_of_an_entry_is_kept_and_sealed() throws SQLException {
    try (var store = SqliteStore.open(folder);
        var raw = RawDatabase.withoutTriggers(folder)) {
      String first = UUID.randomUUID().toString();
      SampleEntries.run(
          store,
          () -> {
            store.journal().append(NewEntry.of("sign_in_refused", NOW, BY).withId(first), fact());
            store
                .journal()
                .append(
                    NewEntry.of("sign_in_refused", NOW, BY)
                        .inCourse("a course")
                        .onBehalfOf("somebody")
                        .correcting(first, "two\nlines \\ and a backslash"),
                    fact());
          });

      assertThat(store.journal().firstBroken()).isEmpty();
      for (String column : new String[] {"course_id", "on_behalf_of", "corrects", "reason"}) {
        Object before = raw.column("select " + column + " from entry where seq = 2").getFirst();
        raw.run("update entry set " + column + " = null where seq = 2");
        assertThat(store.journal().firstBroken()).as(column).map(BrokenEntry::seq).contains(2L);
        raw.run("update entry set " + column + " = ? where seq = 2", before);
      }
      assertThat(store.journal().firstBroken()).isEmpty();
    }
  }

  @Test
  void a_reason_that_looks_like_another_column_has_a_seal_of_its_own() throws SQLException {
    try (var store = SqliteStore.open(folder);
        var raw = RawDatabase.withoutTriggers(folder)) {
      SampleEntries.run(
          store, () -> store.journal().append(NewEntry.of("k\ncourse_id=a", NOW, BY), fact()));
      raw.run("update entry set kind = 'k', course_id = 'a'");

      assertThat(store.journal().firstBroken()).isPresent();
    }
  }

  @Test
  void instants_are_the_same_in_a_java_of_another_time_zone() throws SQLException {
    Instant inTheSpringGap = Instant.parse("2026-03-08T07:30:00.789Z");
    Instant inTheAutumnHour = Instant.parse("2026-11-01T05:30:00Z");
    TimeZone before = TimeZone.getDefault();
    try {
      TimeZone.setDefault(TimeZone.getTimeZone("America/New_York"));
      try (var store = SqliteStore.open(folder)) {
        SampleEntries.append(store);
        put(store, 1, inTheSpringGap);
        put(store, 2, inTheAutumnHour);
      }
      TimeZone.setDefault(TimeZone.getTimeZone("Asia/Kolkata"));
      try (var store = SqliteStore.open(folder);
          var raw = RawDatabase.in(folder)) {
        assertThat(store.journal().firstBroken()).isEmpty();
        assertThat(goodUntil(store, 1)).contains(inTheSpringGap);
        assertThat(goodUntil(store, 2)).contains(inTheAutumnHour);
        assertThat(raw.column("select recorded_at from entry").getFirst())
            .asString()
            .startsWith("2026-03-02 09:00:00.123")
            .endsWith("+00:00");
      }
    } finally {
      TimeZone.setDefault(before);
    }
  }

  private static void put(SqliteStore store, int holder, Instant end) {
    SampleEntries.run(
        store,
        () ->
            store
                .credentials()
                .put(
                    new Credential(
                        SampleEntries.account(holder, "ana.ruiz").id(),
                        Credential.Kind.CODE,
                        "hash",
                        Optional.of(end))));
  }

  private static Optional<Instant> goodUntil(SqliteStore store, int holder) {
    return store
        .credentials()
        .find(SampleEntries.account(holder, "ana.ruiz").id(), Credential.Kind.CODE)
        .flatMap(Credential::goodUntil);
  }
}
