package rungwise.store.audit;

import static rungwise.store.schema.Tables.ENTRY;
import static rungwise.store.schema.Tables.WORDS_SIGNED;

import java.time.Instant;
import java.util.Optional;
import rungwise.clinic.handout.SignedWords;
import rungwise.clinic.people.AccountId;
import rungwise.store.database.Database;
import rungwise.store.journal.Journal;
import rungwise.store.journal.NewEntry;
import rungwise.store.schema.tables.records.WordsSignedRecord;

/** Which version of the patients' words was signed, as entries of the journal. */
public final class SqlSignedWords implements SignedWords {

  private static final String KIND = "words_signed";

  private final Database database;
  private final Journal journal;

  public SqlSignedWords(Database database, Journal journal) {
    this.database = database;
    this.journal = journal;
  }

  @Override
  public Optional<Signature> signed(int version) {
    return database
        .reading()
        .select(ENTRY.RECORDED_BY, ENTRY.RECORDED_AT)
        .from(WORDS_SIGNED)
        .join(ENTRY)
        .on(ENTRY.ID.eq(WORDS_SIGNED.ENTRY_ID))
        .where(WORDS_SIGNED.VERSION.eq(version))
        .orderBy(ENTRY.SEQ.asc())
        .limit(1)
        .fetchOptional(row -> new Signature(new AccountId(row.value1()), row.value2()));
  }

  @Override
  public void sign(int version, AccountId by, Instant at) {
    var row = new WordsSignedRecord();
    row.setVersion(version);
    journal.append(NewEntry.of(KIND, at, by.text()), row);
  }
}
