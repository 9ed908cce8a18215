package rungwise.store.formulary;

import static rungwise.store.schema.Tables.ENTRY;
import static rungwise.store.schema.Tables.PREPARATION;
import static rungwise.store.schema.Tables.PREPARATION_INGREDIENT;
import static rungwise.store.schema.Tables.PREPARATION_WITHDRAWN;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jooq.Condition;
import org.jooq.Result;
import org.jooq.impl.DSL;
import rungwise.clinic.formulary.ClinicPreparation;
import rungwise.clinic.formulary.Preparations;
import rungwise.clinic.people.AccountId;
import rungwise.dosing.known.PreparationId;
import rungwise.store.database.Database;
import rungwise.store.journal.Journal;
import rungwise.store.journal.KeptReading;
import rungwise.store.journal.NewEntry;
import rungwise.store.schema.tables.records.PreparationIngredientRecord;
import rungwise.store.schema.tables.records.PreparationRecord;
import rungwise.store.schema.tables.records.PreparationWithdrawnRecord;

/** The versions of preparations in the journal. */
public final class SqlPreparations implements Preparations {

  private static final String ADDED = "preparation_added";
  private static final String CHANGED = "preparation_changed";
  private static final String WITHDRAWN = "preparation_withdrawn";

  /**
   * Every version.
   *
   * @param replacedBy the next version of each that has one
   * @param withdrawn when those that were taken out of use were
   */
  private record Shelf(
      Map<PreparationId, ClinicPreparation> versions,
      Map<PreparationId, PreparationId> replacedBy,
      Map<PreparationId, Instant> withdrawn) {}

  private final Database database;
  private final Journal journal;
  private final KeptReading<Shelf> shelf;

  public SqlPreparations(Database database, Journal journal) {
    this.database = database;
    this.journal = journal;
    this.shelf =
        new KeptReading<>(database, journal, List.of(ADDED, CHANGED, WITHDRAWN), this::read);
  }

  private Shelf read() {
    List<ClinicPreparation> all = where(DSL.noCondition());
    return new Shelf(
        all.stream()
            .collect(
                Collectors.toUnmodifiableMap(
                    ClinicPreparation::id, one -> one, (one, same) -> one)),
        all.stream()
            .filter(one -> one.replaces().isPresent())
            .collect(
                Collectors.toUnmodifiableMap(
                    one -> one.replaces().orElseThrow(),
                    ClinicPreparation::id,
                    (one, same) -> one)),
        database
            .reading()
            .select(PREPARATION_WITHDRAWN.PREPARATION_ID, ENTRY.RECORDED_AT)
            .from(PREPARATION_WITHDRAWN)
            .crossJoin(ENTRY) // SQLite keeps its order
            .where(ENTRY.ID.eq(PREPARATION_WITHDRAWN.ENTRY_ID))
            .fetchMap(row -> new PreparationId(row.value1()), row -> row.get(ENTRY.RECORDED_AT)));
  }

  @Override
  public List<ClinicPreparation> inUse() {
    return where(isInUse());
  }

  @Override
  public Optional<ClinicPreparation> find(PreparationId id) {
    return Optional.ofNullable(shelf.get().versions().get(id));
  }

  @Override
  public Optional<Instant> withdrawnAt(PreparationId id) {
    Shelf all = shelf.get();
    PreparationId last = id;
    while (all.replacedBy().containsKey(last)) {
      last = all.replacedBy().get(last);
    }
    return Optional.ofNullable(all.withdrawn().get(last));
  }

  private static Condition isInUse() {
    var later = PREPARATION.as("later");
    return DSL.notExists(
            DSL.selectOne().from(later).where(later.REPLACES.eq(PREPARATION.PREPARATION_ID)))
        .andNotExists(
            DSL.selectOne()
                .from(PREPARATION_WITHDRAWN)
                .where(PREPARATION_WITHDRAWN.PREPARATION_ID.eq(PREPARATION.PREPARATION_ID)));
  }

  private List<ClinicPreparation> where(Condition condition) {
    Result<PreparationRecord> versions =
        database
            .reading()
            .selectFrom(PREPARATION)
            .where(condition)
            .orderBy(PREPARATION.NAME, PREPARATION.PREPARATION_ID)
            .fetch();
    return versions.stream()
        .map(version -> PreparationRows.read(version, ingredientsOf(version)))
        .toList();
  }

  private List<PreparationIngredientRecord> ingredientsOf(PreparationRecord version) {
    return database
        .reading()
        .selectFrom(PREPARATION_INGREDIENT)
        .where(PREPARATION_INGREDIENT.ENTRY_ID.eq(version.getEntryId()))
        .orderBy(PREPARATION_INGREDIENT.LINE)
        .fetch();
  }

  @Override
  public void append(ClinicPreparation added, AccountId by, Instant at) {
    if (find(added.id()).isPresent()) {
      throw new IllegalStateException("bug: " + added.id() + " is there already");
    }
    added.replaces().ifPresent(this::refuseUnlessInUse);
    String kind = added.replaces().isPresent() ? CHANGED : ADDED;
    journal.append(NewEntry.of(kind, at, by.text()), PreparationRows.of(added));
  }

  @Override
  public void withdraw(PreparationId id, AccountId by, Instant at, String reason) {
    refuseUnlessInUse(id);
    var row = new PreparationWithdrawnRecord();
    row.setPreparationId(id.value());
    journal.append(NewEntry.of(WITHDRAWN, at, by.text()).because(reason), row);
  }

  private void refuseUnlessInUse(PreparationId id) {
    if (where(isInUse().and(PREPARATION.PREPARATION_ID.eq(id.value()))).isEmpty()) {
      throw new IllegalStateException("bug: " + id + " is not in use");
    }
  }
}
