package rungwise.store;

import static rungwise.store.schema.Tables.ACCOUNT;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Function;
import org.jooq.exception.DataAccessException;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.soundness.Flaw;
import rungwise.store.database.DataFolder;
import rungwise.store.database.Database;
import rungwise.store.journal.BrokenEntry;
import rungwise.store.journal.EndFile;
import rungwise.store.journal.Inspected;
import rungwise.store.journal.Journal;
import rungwise.store.journal.JournalKey;

/**
 * Checks the record of a data folder from outside: changes nothing in it and takes no lock, so that
 * another process may be using the folder at the same time.
 */
public final class RecordCheck {

  private static final String PROGRAM = "the program";

  private final Database database;
  private final Journal journal;
  private final Function<Journal, Optional<Flaw>> end;

  private RecordCheck(Database database, JournalKey key, Function<Journal, Optional<Flaw>> end) {
    this.database = database;
    this.journal = new Journal(database, key);
    this.end = end;
  }

  /**
   * Walks over the whole record as it is at this moment.
   *
   * @param keptSeal the seal of an entry, kept outside of the folder, that must be in the record
   * @throws rungwise.store.database.CannotOpenStore if there is no record to be checked: no folder,
   *     no database, no key, or one of another version
   */
  public static Inspected of(Path dataFolder, Optional<String> keptSeal) {
    DataFolder.requireExists(dataFolder);
    JournalKey key = JournalKey.keptIn(dataFolder);
    var end = EndFile.in(dataFolder, key).readToCompare();
    try (Database database = Database.openToRead(dataFolder)) {
      return new RecordCheck(database, key, end).inspect(keptSeal);
    }
  }

  /**
   * Walks over the record in a database file that nobody writes to.
   *
   * @param end what was kept of the end of the record that was copied
   * @throws rungwise.store.database.CannotOpenStore if it is none, or one of another version
   */
  public static Inspected ofCopy(Path file, JournalKey key, Function<Journal, Optional<Flaw>> end) {
    try (Database database = Database.openFrozen(file)) {
      return new RecordCheck(database, key, end).inspect(Optional.empty());
    }
  }

  private Inspected inspect(Optional<String> keptSeal) {
    return switch (journal.inspect(keptSeal)) {
      case Inspected.Whole whole -> toTheEnd(asFile(whole));
      case Inspected.Broken broken ->
          new Inspected.Broken(
              broken.first(), broken.standing().map(head -> head.namedAs(nameOf(head.by()))));
    };
  }

  /** A record that lost its last entries is whole in itself. */
  private Inspected toTheEnd(Inspected found) {
    return found instanceof Inspected.Broken
        ? found
        : end.apply(journal).<Inspected>map(RecordCheck::cut).orElse(found);
  }

  private static Inspected cut(Flaw flaw) {
    String what =
        flaw.what() == Flaw.What.END_NOT_KNOWN
            ? "It is not known whether entry %d is the last: the file %s is damaged."
            : "Entry %d is missing, though it had been saved: the record ends before it, or is an"
                + " older copy, as the file %s says.";
    return new Inspected.Broken(
        new BrokenEntry(flaw.entry(), what.formatted(flaw.entry(), EndFile.NAME)),
        Optional.empty());
  }

  /** A file whose rows are right may still lead a reader past them, by a damaged index. */
  private Inspected asFile(Inspected.Whole whole) {
    Optional<String> damage;
    try {
      damage = database.damage();
    } catch (DataAccessException unreadable) {
      damage = Optional.of("it cannot be read to its end");
    }
    return damage
        .<Inspected>map(
            found ->
                new Inspected.Broken(
                    new BrokenEntry(
                        whole.entries() + 1,
                        "The %d entries are as they were sealed, but the file is damaged: %s."
                            .formatted(whole.entries(), found)),
                    Optional.empty()))
        .orElse(whole);
  }

  /** The sign-in name of an account, or the id itself where the record has none. */
  private String nameOf(String account) {
    if (account.equals(AccountId.PROGRAM.text())) {
      return PROGRAM;
    }
    try {
      return database
          .reading()
          .select(ACCOUNT.SIGN_IN_NAME)
          .from(ACCOUNT)
          .where(ACCOUNT.ACCOUNT_ID.eq(account))
          .fetchOptional(ACCOUNT.SIGN_IN_NAME)
          .orElse(account);
    } catch (DataAccessException damaged) {
      return account;
    }
  }
}
