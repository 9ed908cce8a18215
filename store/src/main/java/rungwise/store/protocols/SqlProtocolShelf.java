package rungwise.store.protocols;

import static rungwise.store.schema.Tables.ENTRY;
import static rungwise.store.schema.Tables.PROTOCOL_SIGNED;
import static rungwise.store.schema.Tables.PROTOCOL_SIGNED_CONFIRMED;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jooq.Record;
import org.jooq.Result;
import org.jooq.TableRecord;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.protocols.ProtocolShelf;
import rungwise.store.database.Database;
import rungwise.store.journal.Journal;
import rungwise.store.journal.KeptReading;
import rungwise.store.journal.NewEntry;
import rungwise.store.schema.tables.records.ProtocolSignedConfirmedRecord;
import rungwise.store.schema.tables.records.ProtocolSignedRecord;

/** The signed protocols in the journal. */
public final class SqlProtocolShelf implements ProtocolShelf {

  private static final String KIND = "protocol_signed";

  private final Database database;
  private final Journal journal;
  private final KeptReading<List<Signed>> all;

  public SqlProtocolShelf(Database database, Journal journal) {
    this.database = database;
    this.journal = journal;
    this.all = new KeptReading<>(database, journal, List.of(KIND), this::read);
  }

  @Override
  public List<Signed> all() {
    return all.get();
  }

  @Override
  public Optional<Signed> find(String name, int version) {
    return all().stream()
        .filter(signed -> signed.name().equals(name) && signed.version() == version)
        .findFirst();
  }

  private List<Signed> read() {
    return database
        .reading()
        .select(
            PROTOCOL_SIGNED.ENTRY_ID,
            PROTOCOL_SIGNED.NAME,
            PROTOCOL_SIGNED.VERSION,
            PROTOCOL_SIGNED.DOCUMENT,
            ENTRY.RECORDED_BY,
            ENTRY.RECORDED_AT,
            PROTOCOL_SIGNED_CONFIRMED.NUMBER)
        .from(PROTOCOL_SIGNED)
        .crossJoin(ENTRY) // SQLite keeps its order; else it would walk over the whole journal
        .leftJoin(PROTOCOL_SIGNED_CONFIRMED)
        .on(PROTOCOL_SIGNED_CONFIRMED.ENTRY_ID.eq(PROTOCOL_SIGNED.ENTRY_ID))
        .where(ENTRY.ID.eq(PROTOCOL_SIGNED.ENTRY_ID))
        .orderBy(ENTRY.SEQ.asc(), PROTOCOL_SIGNED_CONFIRMED.LINE.asc())
        .fetchGroups(PROTOCOL_SIGNED.ENTRY_ID)
        .values()
        .stream()
        .map(SqlProtocolShelf::signed)
        .toList();
  }

  /** One signature: the same row for each number that was confirmed, or once without any. */
  private static Signed signed(Result<? extends Record> rows) {
    Record first = rows.getFirst();
    return new Signed(
        first.get(PROTOCOL_SIGNED.NAME),
        first.get(PROTOCOL_SIGNED.VERSION),
        first.get(PROTOCOL_SIGNED.DOCUMENT),
        rows.stream()
            .map(row -> row.get(PROTOCOL_SIGNED_CONFIRMED.NUMBER))
            .filter(Objects::nonNull)
            .toList(),
        new AccountId(first.get(ENTRY.RECORDED_BY)),
        first.get(ENTRY.RECORDED_AT));
  }

  @Override
  public void append(Signed signed) {
    if (find(signed.name(), signed.version()).isPresent()) {
      throw new IllegalStateException(
          "bug: " + signed.name() + " version " + signed.version() + " is signed already");
    }
    var rows = new ArrayList<TableRecord<?>>();
    var row = new ProtocolSignedRecord();
    row.setName(signed.name());
    row.setVersion(signed.version());
    row.setDocument(signed.document());
    rows.add(row);
    for (String number : signed.confirmed()) {
      var line = new ProtocolSignedConfirmedRecord();
      line.setLine(rows.size());
      line.setNumber(number);
      rows.add(line);
    }
    journal.append(
        NewEntry.of(KIND, signed.at(), signed.by().text()), rows.toArray(TableRecord<?>[]::new));
  }
}
