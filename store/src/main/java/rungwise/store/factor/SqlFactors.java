package rungwise.store.factor;

import static rungwise.store.schema.Tables.PASSKEY;
import static rungwise.store.schema.Tables.RECOVERY_CODE;
import static rungwise.store.schema.Tables.TIME_SECRET;

import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jooq.Condition;
import rungwise.clinic.factor.FactorEvent;
import rungwise.clinic.factor.FactorSecret;
import rungwise.clinic.factor.Factors;
import rungwise.clinic.factor.Passkey;
import rungwise.clinic.factor.TimeSecret;
import rungwise.clinic.people.AccountId;
import rungwise.store.database.Database;
import rungwise.store.journal.Journal;
import rungwise.store.journal.JournalKey;
import rungwise.store.journal.NewEntry;
import rungwise.store.schema.tables.records.FactorChangedRecord;
import rungwise.store.schema.tables.records.PasskeyRecord;
import rungwise.store.schema.tables.records.RecoveryCodeRecord;
import rungwise.store.schema.tables.records.TimeSecretRecord;

/** Second factors: what is in use in tables of its own, what happened in the journal. */
public final class SqlFactors implements Factors {

  private static final String PURPOSE = "secrets of authenticator apps";

  private final Database database;
  private final Journal journal;
  private final SealedText sealing;

  public SqlFactors(Database database, Journal journal, JournalKey key) {
    this.database = database;
    this.journal = journal;
    this.sealing = new SealedText(key.derived(PURPOSE));
  }

  @Override
  public Optional<TimeSecret> timeSecret(AccountId holder) {
    return database
        .reading()
        .fetchOptional(TIME_SECRET, TIME_SECRET.HOLDER_ID.eq(holder.text()))
        .map(
            row ->
                new TimeSecret(
                    holder,
                    new FactorSecret(sealing.open(row.getSealedSecret(), holder.text())),
                    row.getLastStep()));
  }

  @Override
  public void put(TimeSecret secret) {
    String holder = secret.holder().text();
    database.writing().deleteFrom(TIME_SECRET).where(TIME_SECRET.HOLDER_ID.eq(holder)).execute();
    var row = new TimeSecretRecord();
    row.setHolderId(holder);
    row.setSealedSecret(sealing.seal(secret.secret().base32(), holder));
    row.setLastStep(secret.lastStep());
    database.writing().executeInsert(row);
  }

  @Override
  public List<String> recoveryCodes(AccountId holder) {
    return database
        .reading()
        .selectFrom(RECOVERY_CODE)
        .where(RECOVERY_CODE.HOLDER_ID.eq(holder.text()))
        .orderBy(RECOVERY_CODE.LINE)
        .fetch(RecoveryCodeRecord::getHash);
  }

  @Override
  public void putRecoveryCodes(AccountId holder, List<String> hashes) {
    removeRecoveryCodes(holder);
    for (int line = 1; line <= hashes.size(); line++) {
      var row = new RecoveryCodeRecord();
      row.setHolderId(holder.text());
      row.setLine(line);
      row.setHash(hashes.get(line - 1));
      database.writing().executeInsert(row);
    }
  }

  private void removeRecoveryCodes(AccountId holder) {
    database
        .writing()
        .deleteFrom(RECOVERY_CODE)
        .where(RECOVERY_CODE.HOLDER_ID.eq(holder.text()))
        .execute();
  }

  @Override
  public List<Passkey> passkeys(AccountId holder) {
    return passkeysWhere(PASSKEY.HOLDER_ID.eq(holder.text()));
  }

  @Override
  public Optional<Passkey> passkey(String id) {
    return passkeysWhere(PASSKEY.PASSKEY_ID.eq(id)).stream().findFirst();
  }

  private List<Passkey> passkeysWhere(Condition condition) {
    return database
        .reading()
        .selectFrom(PASSKEY)
        .where(condition)
        .orderBy(PASSKEY.ADDED_AT, PASSKEY.PASSKEY_ID)
        .fetch(SqlFactors::passkey);
  }

  private static Passkey passkey(PasskeyRecord row) {
    return new Passkey(
        row.getPasskeyId(),
        new AccountId(row.getHolderId()),
        row.getName(),
        row.getPublicPart(),
        row.getSignCount(),
        row.getAddedAt());
  }

  @Override
  public void put(Passkey passkey) {
    removePasskey(passkey.id());
    var row = new PasskeyRecord();
    row.setPasskeyId(passkey.id());
    row.setHolderId(passkey.holder().text());
    row.setName(passkey.name());
    row.setPublicPart(passkey.publicPart());
    row.setSignCount(passkey.signCount());
    row.setAddedAt(passkey.addedAt().truncatedTo(ChronoUnit.MILLIS));
    database.writing().executeInsert(row);
  }

  @Override
  public void removePasskey(String id) {
    database.writing().deleteFrom(PASSKEY).where(PASSKEY.PASSKEY_ID.eq(id)).execute();
  }

  @Override
  public void removeAll(AccountId holder) {
    String id = holder.text();
    database.writing().deleteFrom(TIME_SECRET).where(TIME_SECRET.HOLDER_ID.eq(id)).execute();
    database.writing().deleteFrom(PASSKEY).where(PASSKEY.HOLDER_ID.eq(id)).execute();
    removeRecoveryCodes(holder);
  }

  @Override
  public void append(FactorEvent event) {
    var row = new FactorChangedRecord();
    row.setAccountId(event.account().text());
    String kind = event.kind().name().toLowerCase(Locale.ROOT);
    NewEntry entry = NewEntry.of(kind, event.at(), event.by().text());
    journal.append(event.reason().map(entry::because).orElse(entry), row);
  }
}
