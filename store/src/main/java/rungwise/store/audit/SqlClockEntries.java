package rungwise.store.audit;

import static rungwise.store.schema.Tables.ENTRY;

import java.time.Instant;
import java.util.Optional;
import rungwise.clinic.clock.ClockBelief;
import rungwise.clinic.clock.ClockEntries;
import rungwise.clinic.people.AccountId;
import rungwise.store.database.Database;
import rungwise.store.journal.Journal;
import rungwise.store.journal.NewEntry;

/** What the journal says of the clock. A confirmation is an entry without facts of its own. */
public final class SqlClockEntries implements ClockEntries {

  private static final String KIND = "clock_confirmed";

  private final Database database;
  private final Journal journal;

  public SqlClockEntries(Database database, Journal journal) {
    this.database = database;
    this.journal = journal;
  }

  @Override
  public Optional<Instant> newest() {
    return database
        .reading()
        .select(ENTRY.RECORDED_AT)
        .from(ENTRY)
        .where(ENTRY.CLOCK_BELIEVED.isNull().or(ENTRY.CLOCK_BELIEVED.ne(ClockBelief.WRONG)))
        .orderBy(ENTRY.SEQ.desc())
        .limit(1)
        .fetchOptional(ENTRY.RECORDED_AT);
  }

  @Override
  public void confirmed(AccountId by, Instant at, String words) {
    journal.append(NewEntry.of(KIND, at, by.text()).because(words));
  }
}
