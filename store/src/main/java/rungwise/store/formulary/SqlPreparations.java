package rungwise.store.formulary;

import static rungwise.store.schema.Tables.ENTRY;
import static rungwise.store.schema.Tables.PREPARATION;
import static rungwise.store.schema.Tables.PREPARATION_INGREDIENT;
import static rungwise.store.schema.Tables.PREPARATION_WITHDRAWN;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jooq.Condition;
import org.jooq.Result;
import org.jooq.impl.DSL;
import rungwise.clinic.formulary.ClinicPreparation;
import rungwise.clinic.formulary.Preparations;
import rungwise.clinic.people.AccountId;
import rungwise.dosing.known.PreparationId;
import rungwise.store.database.Database;
import rungwise.store.journal.Journal;
import rungwise.store.journal.NewEntry;
import rungwise.store.schema.tables.records.PreparationIngredientRecord;
import rungwise.store.schema.tables.records.PreparationRecord;
import rungwise.store.schema.tables.records.PreparationWithdrawnRecord;

/** The versions of preparations in the journal. */
public final class SqlPreparations implements Preparations {

  private final Database database;
  private final Journal journal;

  public SqlPreparations(Database database, Journal journal) {
    this.database = database;
    this.journal = journal;
  }

  @Override
  public List<ClinicPreparation> inUse() {
    return where(isInUse());
  }

  @Override
  public Optional<ClinicPreparation> find(PreparationId id) {
    return where(PREPARATION.PREPARATION_ID.eq(id.value())).stream().findFirst();
  }

  @Override
  public Optional<Instant> withdrawnAt(PreparationId id) {
    String last = id.value();
    Optional<String> later = replacedBy(last);
    while (later.isPresent()) {
      last = later.get();
      later = replacedBy(last);
    }
    return database
        .reading()
        .select(ENTRY.RECORDED_AT)
        .from(PREPARATION_WITHDRAWN)
        .join(ENTRY)
        .on(ENTRY.ID.eq(PREPARATION_WITHDRAWN.ENTRY_ID))
        .where(PREPARATION_WITHDRAWN.PREPARATION_ID.eq(last))
        .fetchOptional(ENTRY.RECORDED_AT);
  }

  private Optional<String> replacedBy(String id) {
    return database
        .reading()
        .select(PREPARATION.PREPARATION_ID)
        .from(PREPARATION)
        .where(PREPARATION.REPLACES.eq(id))
        .fetchOptional(PREPARATION.PREPARATION_ID);
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
    String kind = added.replaces().isPresent() ? "preparation_changed" : "preparation_added";
    journal.append(NewEntry.of(kind, at, by.text()), PreparationRows.of(added));
  }

  @Override
  public void withdraw(PreparationId id, AccountId by, Instant at, String reason) {
    refuseUnlessInUse(id);
    var row = new PreparationWithdrawnRecord();
    row.setPreparationId(id.value());
    journal.append(NewEntry.of("preparation_withdrawn", at, by.text()).because(reason), row);
  }

  private void refuseUnlessInUse(PreparationId id) {
    if (where(isInUse().and(PREPARATION.PREPARATION_ID.eq(id.value()))).isEmpty()) {
      throw new IllegalStateException("bug: " + id + " is not in use");
    }
  }
}
