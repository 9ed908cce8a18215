package rungwise.store.course;

import static rungwise.store.schema.Tables.ENTRY;
import static rungwise.store.schema.Tables.VIAL_RECEIVED;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jooq.Record;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.Vial;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.supply.ClinicVial;
import rungwise.clinic.supply.ClinicVialShelf;
import rungwise.store.database.Database;
import rungwise.store.journal.Journal;
import rungwise.store.journal.NewEntry;

/**
 * The vials of the clinic in the journal: entries of no course. An addendum and the end of a vial
 * correct the entry that wrote it down first.
 */
public final class SqlClinicVials implements ClinicVialShelf {

  private static final String KEPT = "clinic_vial_kept";
  private static final String FINISHED = "clinic_vial_finished";

  private final Database database;
  private final Journal journal;

  public SqlClinicVials(Database database, Journal journal) {
    this.database = database;
    this.journal = journal;
  }

  @Override
  public List<ClinicVial> kept() {
    Map<String, ClinicVial> kept = new LinkedHashMap<>();
    database
        .reading()
        .select()
        .from(ENTRY)
        .leftJoin(VIAL_RECEIVED)
        .on(VIAL_RECEIVED.ENTRY_ID.eq(ENTRY.ID))
        .where(ENTRY.KIND.in(KEPT, FINISHED))
        .orderBy(ENTRY.SEQ)
        .forEach(row -> take(row, kept));
    return List.copyOf(kept.values());
  }

  private static void take(Record row, Map<String, ClinicVial> kept) {
    String id = Optional.ofNullable(row.get(ENTRY.CORRECTS)).orElse(row.get(ENTRY.ID));
    if (row.get(ENTRY.KIND).equals(FINISHED)) {
      kept.remove(id);
    } else {
      kept.put(id, new ClinicVial(new EntryId(id), VialRows.read(row.into(VIAL_RECEIVED))));
    }
  }

  @Override
  public void add(Vial vial, AccountId by, Instant at) {
    journal.append(NewEntry.of(KEPT, at, by.text()), VialRows.row(vial));
  }

  @Override
  public void amend(ClinicVial vial, AccountId by, Instant at, String reason) {
    journal.append(
        NewEntry.of(KEPT, at, by.text()).correcting(vial.id().text(), reason),
        VialRows.row(vial.vial()));
  }

  @Override
  public void finish(EntryId vial, AccountId by, Instant at, String reason) {
    journal.append(NewEntry.of(FINISHED, at, by.text()).correcting(vial.text(), reason));
  }
}
