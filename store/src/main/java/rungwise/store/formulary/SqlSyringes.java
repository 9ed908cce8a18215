package rungwise.store.formulary;

import static rungwise.store.schema.Tables.ENTRY;
import static rungwise.store.schema.Tables.SYRINGE;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rungwise.clinic.formulary.Syringes;
import rungwise.clinic.people.AccountId;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.store.database.Database;
import rungwise.store.journal.Journal;
import rungwise.store.journal.NewEntry;
import rungwise.store.schema.tables.records.SyringeRecord;

/**
 * The kept types of syringe in the journal: the last entry about a type says whether it is kept.
 */
public final class SqlSyringes implements Syringes {

  private final Database database;
  private final Journal journal;

  public SqlSyringes(Database database, Journal journal) {
    this.database = database;
    this.journal = journal;
  }

  @Override
  public List<Barrel> kept() {
    Map<String, Boolean> last = new HashMap<>();
    database
        .reading()
        .select(SYRINGE.BARREL, SYRINGE.IS_KEPT)
        .from(SYRINGE)
        .crossJoin(ENTRY) // SQLite keeps its order; else it would walk over the whole journal
        .where(ENTRY.ID.eq(SYRINGE.ENTRY_ID))
        .orderBy(ENTRY.SEQ)
        .forEach(row -> last.put(row.get(SYRINGE.BARREL), row.get(SYRINGE.IS_KEPT)));
    return Barrels.all().stream()
        .filter(barrel -> last.getOrDefault(barrel.token(), /* never kept */ false))
        .toList();
  }

  @Override
  public void append(Barrel barrel, Change change, AccountId by, Instant at) {
    String kind =
        switch (change) {
          case ADDED -> "syringe_added";
          case WITHDRAWN -> "syringe_withdrawn";
        };
    var row = new SyringeRecord();
    row.setBarrel(barrel.token());
    row.setIsKept(change == Change.ADDED);
    journal.append(NewEntry.of(kind, at, by.text()), row);
  }
}
