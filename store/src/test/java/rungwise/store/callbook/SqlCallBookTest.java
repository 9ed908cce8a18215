package rungwise.store.callbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.callbook.CallBooks;
import rungwise.clinic.callbook.CallProtocol;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.AccountState;
import rungwise.clinic.people.Role;
import rungwise.clinic.people.SignInName;
import rungwise.dosing.urgent.CallStep.Shown;
import rungwise.dosing.urgent.Elapsed;
import rungwise.dosing.urgent.rescue.RescueLimits;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;
import rungwise.store.SqliteStore;

/** What the clinic keeps for calls, in the journal. */
final class SqlCallBookTest {

  private static final Instant NOW = Instant.parse("2026-03-04T20:00:00Z");
  private static final Account PRESCRIBER = account(Role.PRESCRIBER);
  private static final Account ADMINISTRATOR = account(Role.ADMINISTRATOR);

  @TempDir Path folder;
  private SqliteStore store;
  private CallBooks books;

  private static Account account(Role role) {
    return new Account(
        AccountId.of(new UUID(5, 1)),
        new SignInName("some.body"),
        "Some Body",
        Set.of(role),
        AccountState.ACTIVE);
  }

  @BeforeEach
  void open() {
    store = SqliteStore.open(folder);
    books = new CallBooks(store.callBook(), store.transactions(), InstantSource.fixed(NOW));
  }

  @AfterEach
  void close() {
    store.close();
  }

  private static Map<String, String> protocol() {
    var typed = new HashMap<String, String>();
    typed.put(CallBooks.NUMBER, "555 0100");
    typed.put(CallBooks.IN_AN_HOUR, "600 mcg");
    typed.put(CallBooks.INTERVAL, "5");
    step(typed, 1, "he", Shown.BEFORE_FOUR_HOURS, "He walks about.");
    step(typed, 2, "on_call", Shown.ALWAYS, "The man's partner is asked to drive.");
    return typed;
  }

  private static void step(
      Map<String, String> typed, int line, String asks, Shown shown, String words) {
    typed.put(CallBooks.ASKS + line, asks);
    typed.put(CallBooks.SHOWN + line, shown.name());
    typed.put(CallBooks.STEP + line, words);
  }

  private static List<String> fields(Reading<?> read) {
    return read.placed().stream().map(Fault::field).toList();
  }

  @Test
  void the_sample_stands_until_a_prescriber_signs_and_each_version_stays() {
    assertThat(books.signed()).isEmpty();
    assertThat(books.protocol()).isEqualTo(CallProtocol.SAMPLE);
    assertThat(books.sign(ADMINISTRATOR, protocol()).found()).isEmpty();

    assertThat(books.sign(PRESCRIBER, protocol()).orThrow()).isEqualTo(1);
    var second = protocol();
    second.put(CallBooks.NUMBER, "555 0199");
    assertThat(books.sign(PRESCRIBER, second).orThrow()).isEqualTo(2);

    assertThat(books.protocol().number()).isEqualTo("555 0199");
    assertThat(books.protocol().limits().interval()).isEqualTo(TimeSpan.ofMinutes(5));
    assertThat(store.callBook().signed()).hasSize(2);
  }

  /** 4 h: US syringe label, 5.1 and 17. */
  @Test
  void home_measures_end_at_four_hours_whatever_is_signed() {
    for (Shown shown : List.of(Shown.ALWAYS, Shown.FROM_FOUR_HOURS)) {
      var typed = protocol();
      typed.put(CallBooks.SHOWN + 1, shown.name());
      assertThat(fields(books.sign(PRESCRIBER, typed))).containsExactly(CallBooks.SHOWN + 1);
    }
    books.sign(PRESCRIBER, protocol()).orThrow();

    CallProtocol.Step walk = books.protocol().steps().getFirst();
    assertThat(walk.isDue(new Elapsed.Known(TimeSpan.ofMinutes(239)))).isTrue();
    assertThat(walk.isDue(new Elapsed.Known(TimeSpan.ofMinutes(240)))).isFalse();
    assertThat(walk.isDue(new Elapsed.Unknown(Optional.empty()))).isFalse();
  }

  /** At most 1,000 mcg in an hour: EAU, row B003; 3 min: rows B003 and B004. */
  @Test
  void nothing_beyond_what_is_published_is_signed_and_all_faults_are_told_at_once() {
    var typed = protocol();
    typed.put(CallBooks.IN_AN_HOUR, "1001 mcg");
    typed.put(CallBooks.INTERVAL, "2");
    typed.put(CallBooks.NUMBER, "");
    typed.put(CallBooks.ASKS + 2, "");

    assertThat(fields(books.sign(PRESCRIBER, typed)))
        .containsExactlyInAnyOrder(
            CallBooks.ASKS + 2, CallBooks.NUMBER, CallBooks.IN_AN_HOUR, CallBooks.INTERVAL);
    assertThat(books.protocol().limits()).isEqualTo(RescueLimits.SAMPLE.value());
  }

  private static Map<String, String> department(String name, String telephone) {
    var typed = new HashMap<String, String>();
    typed.put(CallBooks.NAME, name);
    typed.put(CallBooks.TOWN, "Sampletown");
    typed.put(CallBooks.TELEPHONE, telephone);
    return typed;
  }

  @Test
  void departments_are_kept_changed_and_taken_off_by_who_keeps_the_list() {
    assertThat(books.keep(PRESCRIBER, department("Sample Hospital", "555 0100")).found()).isEmpty();
    assertThat(fields(books.keep(ADMINISTRATOR, department("", ""))))
        .containsExactly(CallBooks.NAME, CallBooks.TELEPHONE);
    books.keep(ADMINISTRATOR, department("Sample Hospital", "555 0100")).orThrow();
    var changed = department("Sample Hospital", "555 0111");
    changed.put(CallBooks.ENTRY, books.departments().getFirst().entry().text());
    books.keep(ADMINISTRATOR, changed).orThrow();

    assertThat(books.departments())
        .singleElement()
        .satisfies(kept -> assertThat(kept.department().telephone()).isEqualTo("555 0111"));
    assertThat(books.keep(ADMINISTRATOR, changed).found()).isEmpty();

    var gone =
        new HashMap<>(Map.of(CallBooks.ENTRY, books.departments().getFirst().entry().text()));
    assertThat(fields(books.remove(ADMINISTRATOR, gone))).containsExactly(CallBooks.REASON);
    gone.put(CallBooks.REASON, "it closed");
    books.remove(ADMINISTRATOR, gone).orThrow();
    assertThat(books.departments()).isEmpty();
  }

  @Test
  void each_change_asks_for_a_print_until_somebody_has_printed_it() {
    assertThat(books.isToPrint()).isTrue();
    books.print(PRESCRIBER, books.edition()).orThrow();
    assertThat(books.isToPrint()).isFalse();

    books.keep(ADMINISTRATOR, department("Sample Hospital", "555 0100")).orThrow();
    assertThat(books.isToPrint()).isTrue();
    assertThat(books.print(PRESCRIBER, 0).found()).isEmpty();
    books.print(PRESCRIBER, books.edition()).orThrow();

    assertThat(books.isToPrint()).isFalse();
    assertThat(books.printed()).hasSize(2);
  }
}
