package rungwise.store.room;

import static rungwise.store.schema.Tables.ROOM_DAY_CLOSED;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.jooq.impl.DSL;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.room.RoomDays;
import rungwise.store.database.Database;
import rungwise.store.journal.Journal;
import rungwise.store.journal.NewEntry;
import rungwise.store.schema.tables.records.RoomDayClosedRecord;

/** The days of the room in the journal: each is an entry of its own, of no course. */
public final class SqlRoomDays implements RoomDays {

  private static final String KIND = "room_day_closed";

  private final Database database;
  private final Journal journal;

  public SqlRoomDays(Database database, Journal journal) {
    this.database = database;
    this.journal = journal;
  }

  @Override
  public Optional<LocalDate> lastClosed() {
    return Optional.ofNullable(
        database
            .reading()
            .select(DSL.max(ROOM_DAY_CLOSED.CLOSED_DAY))
            .from(ROOM_DAY_CLOSED)
            .fetchSingle()
            .value1());
  }

  @Override
  public void close(LocalDate day, AccountId by, Instant at) {
    var row = new RoomDayClosedRecord();
    row.setClosedDay(day);
    var head =
        new NewEntry(
            UUID.randomUUID().toString(),
            KIND,
            Optional.empty(),
            at,
            by.text(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());
    journal.append(head, row);
  }
}
