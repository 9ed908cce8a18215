package rungwise.store.populations;

import static rungwise.store.schema.Tables.ENTRY;
import static rungwise.store.schema.Tables.POPULATION_SIGNED;
import static rungwise.store.schema.Tables.POPULATION_SIGNED_PREPARATION;
import static rungwise.store.schema.Tables.POPULATION_WITHDRAWN;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jooq.TableRecord;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.populations.PopulationShelf;
import rungwise.dosing.known.PreparationId;
import rungwise.store.database.Database;
import rungwise.store.journal.Journal;
import rungwise.store.journal.NewEntry;
import rungwise.store.schema.tables.records.PopulationSignedPreparationRecord;
import rungwise.store.schema.tables.records.PopulationSignedRecord;
import rungwise.store.schema.tables.records.PopulationWithdrawnRecord;

/** The signed populations in the journal. */
public final class SqlPopulationShelf implements PopulationShelf {

  private static final String SIGNED = "population_signed";
  private static final String WITHDRAWN = "population_withdrawn";

  /** What was read, and the last entry that it was read up to. */
  private record Known(Optional<String> last, List<Kept> all) {}

  private final Database database;
  private final Journal journal;

  /** Every course asks for all of them at every look; their entries are few and never change. */
  private volatile Known known = new Known(Optional.empty(), List.of());

  public SqlPopulationShelf(Database database, Journal journal) {
    this.database = database;
    this.journal = journal;
  }

  @Override
  public List<Kept> all() {
    Optional<String> last = last();
    Known before = known;
    if (before.last().equals(last)) {
      return before.all();
    }
    List<Kept> all = read();
    known = new Known(last, all);
    return all;
  }

  /** The id of the last entry about a population: no other entry ever has it again. */
  private Optional<String> last() {
    return database
        .reading()
        .select(ENTRY.ID)
        .from(ENTRY)
        .where(ENTRY.KIND.in(SIGNED, WITHDRAWN))
        .orderBy(ENTRY.SEQ.desc())
        .limit(1)
        .fetchOptional(ENTRY.ID);
  }

  private List<Kept> read() {
    Map<String, List<PreparationId>> preparations =
        database
            .reading()
            .selectFrom(POPULATION_SIGNED_PREPARATION)
            .orderBy(POPULATION_SIGNED_PREPARATION.ENTRY_ID, POPULATION_SIGNED_PREPARATION.LINE)
            .fetchGroups(
                POPULATION_SIGNED_PREPARATION.ENTRY_ID,
                row -> new PreparationId(row.getPreparation()));
    return database
        .reading()
        .select()
        .from(POPULATION_SIGNED)
        .crossJoin(ENTRY) // SQLite keeps its order; else it would walk over the whole journal
        .where(ENTRY.ID.eq(POPULATION_SIGNED.ENTRY_ID))
        .orderBy(ENTRY.SEQ.asc())
        .fetch(
            row -> {
              var signed =
                  new Signed(
                      row.get(POPULATION_SIGNED.NAME),
                      row.get(POPULATION_SIGNED.VERSION),
                      row.get(POPULATION_SIGNED.DOCUMENT),
                      preparations.getOrDefault(row.get(POPULATION_SIGNED.ENTRY_ID), List.of()),
                      new AccountId(row.get(ENTRY.RECORDED_BY)),
                      row.get(ENTRY.RECORDED_AT));
              return new Kept(signed, withdrawn(signed.name(), signed.version()));
            });
  }

  private Optional<Withdrawn> withdrawn(String name, int version) {
    return database
        .reading()
        .select()
        .from(POPULATION_WITHDRAWN)
        .crossJoin(ENTRY)
        .where(ENTRY.ID.eq(POPULATION_WITHDRAWN.ENTRY_ID))
        .and(POPULATION_WITHDRAWN.NAME.eq(name))
        .and(POPULATION_WITHDRAWN.VERSION.eq(version))
        .fetchOptional(
            row ->
                new Withdrawn(
                    new AccountId(row.get(ENTRY.RECORDED_BY)),
                    row.get(ENTRY.RECORDED_AT),
                    Optional.ofNullable(row.get(ENTRY.REASON)).orElse("")));
  }

  private Optional<Kept> find(String name, int version) {
    return all().stream()
        .filter(kept -> kept.signed().name().equals(name) && kept.signed().version() == version)
        .findFirst();
  }

  @Override
  public void append(Signed signed) {
    if (find(signed.name(), signed.version()).isPresent()) {
      throw new IllegalStateException(
          "bug: " + signed.name() + " version " + signed.version() + " is signed already");
    }
    var rows = new ArrayList<TableRecord<?>>();
    var row = new PopulationSignedRecord();
    row.setName(signed.name());
    row.setVersion(signed.version());
    row.setDocument(signed.document());
    rows.add(row);
    for (PreparationId preparation : signed.preparations()) {
      var line = new PopulationSignedPreparationRecord();
      line.setLine(rows.size());
      line.setPreparation(preparation.value());
      rows.add(line);
    }
    journal.append(
        NewEntry.of(SIGNED, signed.at(), signed.by().text()), rows.toArray(TableRecord<?>[]::new));
  }

  @Override
  public void withdraw(String name, int version, Withdrawn withdrawn) {
    if (find(name, version).filter(kept -> kept.withdrawn().isEmpty()).isEmpty()) {
      throw new IllegalStateException(
          "bug: " + name + " version " + version + " is not there or withdrawn already");
    }
    var row = new PopulationWithdrawnRecord();
    row.setName(name);
    row.setVersion(version);
    journal.append(
        NewEntry.of(WITHDRAWN, withdrawn.at(), withdrawn.by().text()).because(withdrawn.reason()),
        row);
  }
}
