package rungwise.store.protocols;

import static org.jooq.impl.DSL.noCondition;
import static rungwise.store.schema.Tables.ENTRY;
import static rungwise.store.schema.Tables.PROTOCOL_SIGNED;

import java.util.List;
import java.util.Optional;
import org.jooq.Condition;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.protocols.ProtocolShelf;
import rungwise.store.database.Database;
import rungwise.store.journal.Journal;
import rungwise.store.journal.NewEntry;
import rungwise.store.schema.tables.records.ProtocolSignedRecord;

/** The signed protocols in the journal. */
public final class SqlProtocolShelf implements ProtocolShelf {

  private static final String KIND = "protocol_signed";

  private final Database database;
  private final Journal journal;

  public SqlProtocolShelf(Database database, Journal journal) {
    this.database = database;
    this.journal = journal;
  }

  @Override
  public List<Signed> all() {
    return where(noCondition());
  }

  @Override
  public Optional<Signed> find(String name, int version) {
    return where(PROTOCOL_SIGNED.NAME.eq(name).and(PROTOCOL_SIGNED.VERSION.eq(version))).stream()
        .findFirst();
  }

  private List<Signed> where(Condition condition) {
    return database
        .reading()
        .select(
            PROTOCOL_SIGNED.NAME,
            PROTOCOL_SIGNED.VERSION,
            PROTOCOL_SIGNED.DOCUMENT,
            ENTRY.RECORDED_BY,
            ENTRY.RECORDED_AT)
        .from(PROTOCOL_SIGNED)
        .crossJoin(ENTRY) // SQLite keeps its order; else it would walk over the whole journal
        .where(ENTRY.ID.eq(PROTOCOL_SIGNED.ENTRY_ID))
        .and(condition)
        .orderBy(ENTRY.SEQ.asc())
        .fetch(
            row ->
                new Signed(
                    row.value1(),
                    row.value2(),
                    row.value3(),
                    new AccountId(row.value4()),
                    row.value5()));
  }

  @Override
  public void append(Signed signed) {
    if (find(signed.name(), signed.version()).isPresent()) {
      throw new IllegalStateException(
          "bug: " + signed.name() + " version " + signed.version() + " is signed already");
    }
    var row = new ProtocolSignedRecord();
    row.setName(signed.name());
    row.setVersion(signed.version());
    row.setDocument(signed.document());
    journal.append(NewEntry.of(KIND, signed.at(), signed.by().text()), row);
  }
}
