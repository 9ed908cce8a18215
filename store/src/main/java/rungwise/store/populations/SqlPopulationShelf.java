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
import rungwise.store.journal.KeptReading;
import rungwise.store.journal.NewEntry;
import rungwise.store.schema.tables.records.PopulationSignedPreparationRecord;
import rungwise.store.schema.tables.records.PopulationSignedRecord;
import rungwise.store.schema.tables.records.PopulationWithdrawnRecord;

/** The signed populations in the journal. */
public final class SqlPopulationShelf implements PopulationShelf {

  private static final String SIGNED = "population_signed";
  private static final String WITHDRAWN = "population_withdrawn";

  private final Database database;
  private final Journal journal;

  private final KeptReading<List<Kept>> all;

  public SqlPopulationShelf(Database database, Journal journal) {
    this.database = database;
    this.journal = journal;
    this.all = new KeptReading<>(database, journal, List.of(SIGNED, WITHDRAWN), this::read);
  }

  @Override
  public List<Kept> all() {
    return all.get();
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
    Map<List<Object>, Withdrawn> withdrawn = withdrawn();
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
              return new Kept(
                  signed,
                  Optional.ofNullable(withdrawn.get(List.of(signed.name(), signed.version()))));
            });
  }

  /** By name and version. */
  private Map<List<Object>, Withdrawn> withdrawn() {
    return database
        .reading()
        .select()
        .from(POPULATION_WITHDRAWN)
        .crossJoin(ENTRY)
        .where(ENTRY.ID.eq(POPULATION_WITHDRAWN.ENTRY_ID))
        .fetchMap(
            row ->
                List.of(row.get(POPULATION_WITHDRAWN.NAME), row.get(POPULATION_WITHDRAWN.VERSION)),
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
