package rungwise.store.people;

import static rungwise.store.schema.Tables.CREDENTIAL;

import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.Optional;
import org.jooq.Condition;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.Credential;
import rungwise.clinic.people.Credentials;
import rungwise.store.database.Database;
import rungwise.store.schema.tables.records.CredentialRecord;

/** The credentials in a table of their own, outside the journal, where they can be forgotten. */
public final class SqlCredentials implements Credentials {

  private final Database database;

  public SqlCredentials(Database database) {
    this.database = database;
  }

  @Override
  public Optional<Credential> find(AccountId holder, Credential.Kind kind) {
    return database
        .reading()
        .fetchOptional(CREDENTIAL, is(holder, kind))
        .map(
            row ->
                new Credential(
                    holder, kind, row.getHash(), Optional.ofNullable(row.getGoodUntil())));
  }

  @Override
  public void put(Credential credential) {
    remove(credential.holder(), credential.kind());
    var row = new CredentialRecord();
    row.setHolderId(credential.holder().text());
    row.setKind(token(credential.kind()));
    row.setHash(credential.hash());
    row.setGoodUntil(
        credential.goodUntil().map(end -> end.truncatedTo(ChronoUnit.MILLIS)).orElse(null));
    database.writing().executeInsert(row);
  }

  @Override
  public void remove(AccountId holder, Credential.Kind kind) {
    database.writing().deleteFrom(CREDENTIAL).where(is(holder, kind)).execute();
  }

  private static Condition is(AccountId holder, Credential.Kind kind) {
    return CREDENTIAL.HOLDER_ID.eq(holder.text()).and(CREDENTIAL.KIND.eq(token(kind)));
  }

  private static String token(Credential.Kind kind) {
    return kind.name().toLowerCase(Locale.ROOT);
  }
}
