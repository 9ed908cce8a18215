package rungwise.store.database;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import com.zaxxer.hikari.pool.HikariPool;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.exception.FlywayValidateException;
import org.jooq.DSLContext;
import org.jooq.SQLDialect;
import org.jooq.conf.Settings;
import org.jooq.exception.DataAccessException;
import org.jooq.impl.DSL;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteConfig.SynchronousMode;
import org.sqlite.SQLiteConfig.TransactionMode;
import org.sqlite.SQLiteDataSource;
import rungwise.clinic.CannotKeep;
import rungwise.clinic.Transactions;

/**
 * One SQLite file with two ways in: a single connection that writes, and a pool that only reads.
 *
 * <p>A write transaction takes the file's lock when it begins, so that nothing it has read can
 * change before it ends; with the usual late lock most of several writers that read first are
 * thrown out. A commit is on the disk before it returns.
 */
public final class Database implements Transactions, AutoCloseable {

  /** The name of the file in a data folder and in a backup. */
  public static final String FILE = "rungwise.db";

  private static final int BUSY_TIMEOUT_MILLISECONDS = 5000;

  /** How many connections read at the same time. */
  public static final int READERS = 4;

  private static final long WAIT_FOR_CONNECTION_MILLISECONDS = 30_000;

  private final HikariDataSource writing;
  private final HikariDataSource reading;
  private final DSLContext writer;
  private final DSLContext reader;
  private final ScopedValue<DSLContext> current = ScopedValue.newInstance();
  private final ScopedValue<Afterwards> afterwards = ScopedValue.newInstance();
  private final ScopedValue<Map<Object, Object>> asked = ScopedValue.newInstance();

  private Database(HikariDataSource writing, HikariDataSource reading) {
    this.writing = writing;
    this.reading = reading;
    this.writer = context(writing);
    this.reader = context(reading);
  }

  /** Whether the database itself found that something does not fit: a key, a check, a trigger. */
  public static boolean isRefusal(DataAccessException failure) {
    return Storage.isRefusal(failure);
  }

  /** Whether the file holds what no SQLite file holds, so that it cannot be read. */
  public static boolean isDamage(Throwable failure) {
    return Storage.isDamage(failure);
  }

  /** Makes every index of a copy anew from its tables, if that can be done. */
  public static boolean isReindexed(Path copy) {
    return Storage.isReindexed(copy);
  }

  /** Whether the folder already holds a database. */
  public static boolean isIn(DataFolder folder) {
    return Files.exists(folder.file(FILE));
  }

  /**
   * Opens the folder's database, makes it first if there is none, and brings its tables up to date.
   *
   * @throws CannotOpenStore if that cannot be done
   */
  public static Database open(DataFolder folder) {
    return open(folder, READERS);
  }

  /** The same with another number of connections that read. */
  public static Database open(DataFolder folder, int readers) {
    Path file = folder.file(FILE);
    try {
      DataFolder.createForOwner(file);
      migrate(source(file, writerConfig()));
    } catch (IOException e) {
      throw new CannotOpenStore("The database " + file + " cannot be created.", e);
    } catch (FlywayValidateException e) {
      throw new CannotOpenStore(
          "The database "
              + file
              + " was written by a newer or a changed Rungwise: start that one, or restore a"
              + " backup.",
          e);
    } catch (FlywayException e) {
      throw new CannotOpenStore(
          Storage.explain(e)
              .map(words -> "The database " + file + " cannot be opened. " + words)
              .orElse(unreadable(file)),
          e);
    } catch (RuntimeException ofDamagedList) {
      // The list of what was brought up to date is believed blindly: a changed row ends in any.
      throw new CannotOpenStore(unreadable(file), ofDamagedList);
    }
    return openTables(file, readers);
  }

  private static String unreadable(Path file) {
    return "The database " + file + " cannot be read or brought up to date: restore a backup.";
  }

  /**
   * The same where it is known that the tables are those of this program: nothing is brought up to
   * date.
   *
   * @throws CannotOpenStore if it cannot be read
   */
  public static Database openKnown(DataFolder folder, int readers) {
    try {
      return openTables(folder.file(FILE), readers);
    } catch (HikariPool.PoolInitializationException e) {
      throw new CannotOpenStore("The database " + folder.file(FILE) + " cannot be read.", e);
    }
  }

  private static Database openTables(Path file, int readers) {
    HikariDataSource writing = pool(source(file, writerConfig()), 1, /* isReadOnly= */ false);
    try {
      return new Database(
          writing, pool(source(file, readerConfig()), readers, /* isReadOnly= */ true));
    } catch (RuntimeException e) {
      writing.close();
      throw e;
    }
  }

  /**
   * Opens a folder's database for reading only; another process may be writing to it.
   *
   * @throws CannotOpenStore if there is none, or its tables are not those of this program
   */
  public static Database openToRead(Path folder) {
    Path file = folder.resolve(FILE);
    if (Files.notExists(file)) {
      throw new CannotOpenStore(
          "The data folder " + folder + " holds no database: name the folder that serve uses.");
    }
    if (!Files.isWritable(folder) && !hasLog(file)) {
      return openFrozen(file); // a write-ahead log cannot be made there, and none is there
    }
    SQLiteDataSource source = source(file, readerConfig());
    validate(source, file);
    HikariDataSource only = pool(source, 1, /* isReadOnly= */ true);
    return new Database(only, only);
  }

  private static boolean hasLog(Path file) {
    return Files.exists(file.resolveSibling(FILE + "-wal"));
  }

  /**
   * Opens a database file that nobody writes to, and leaves no trace beside it.
   *
   * @throws CannotOpenStore if it is none, or its tables are not those of this program
   */
  public static Database openFrozen(Path file) {
    validate(frozen(file), file);
    return openKnown(file);
  }

  /** The same where it is known that the tables are those of this program. */
  public static Database openKnown(Path file) {
    try {
      HikariDataSource only = pool(frozen(file), 1, /* isReadOnly= */ true);
      return new Database(only, only);
    } catch (HikariPool.PoolInitializationException e) {
      throw new CannotOpenStore("The database " + file + " cannot be read.", e);
    }
  }

  private static SQLiteDataSource frozen(Path file) {
    var source = new SQLiteDataSource(frozenConfig());
    source.setUrl("jdbc:sqlite:file:" + file.toUri().getRawPath() + "?immutable=1");
    return source;
  }

  private static void validate(SQLiteDataSource source, Path file) {
    try {
      migrations(source).validate();
    } catch (FlywayValidateException e) {
      throw new CannotOpenStore(
          "The database "
              + file
              + " was written by another version of Rungwise: use that one. Serving the folder once"
              + " with this one brings an older database up to date.",
          e);
    } catch (FlywayException e) {
      throw new CannotOpenStore(
          "The database " + file + " cannot be read. " + Storage.explain(e).orElse(""), e);
    }
  }

  private static void migrate(SQLiteDataSource source) {
    migrations(source).migrate();
  }

  private static Flyway migrations(SQLiteDataSource source) {
    return Flyway.configure()
        .dataSource(source)
        .locations("classpath:db/migration/common", "classpath:db/migration/sqlite")
        .ignoreMigrationPatterns(new String[0])
        .load();
  }

  private static SQLiteConfig config() {
    var config = new SQLiteConfig();
    config.enforceForeignKeys(true);
    config.setBusyTimeout(BUSY_TIMEOUT_MILLISECONDS);
    config.setJournalMode(JournalMode.WAL);
    config.setSynchronous(SynchronousMode.FULL);
    return config;
  }

  private static SQLiteConfig writerConfig() {
    SQLiteConfig config = config();
    config.setTransactionMode(TransactionMode.IMMEDIATE);
    // Otherwise "insert or replace" would remove a row without asking the triggers.
    config.enableRecursiveTriggers(true);
    return config;
  }

  private static SQLiteConfig readerConfig() {
    SQLiteConfig config = config();
    config.setReadOnly(true);
    config.setTransactionMode(TransactionMode.DEFERRED);
    return config;
  }

  /** Without a journal mode: to set one is to write. */
  private static SQLiteConfig frozenConfig() {
    var config = new SQLiteConfig();
    config.setReadOnly(true);
    return config;
  }

  private static SQLiteDataSource source(Path file, SQLiteConfig config) {
    var source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + file);
    return source;
  }

  private static HikariDataSource pool(SQLiteDataSource source, int size, boolean isReadOnly) {
    var config = new HikariConfig();
    config.setDataSource(source);
    config.setMaximumPoolSize(size);
    config.setReadOnly(isReadOnly);
    config.setConnectionTimeout(WAIT_FOR_CONNECTION_MILLISECONDS);
    return new HikariDataSource(config);
  }

  private static DSLContext context(HikariDataSource source) {
    // What is stored is about patients, so no statement reaches a log.
    var settings = new Settings().withExecuteLogging(false);
    return DSL.using(source, SQLDialect.SQLITE, settings);
  }

  /** What is to be done once the transaction is on the disk. */
  private static final class Afterwards {
    private Runnable action = () -> {};
  }

  @Override
  public <T> T reading(Supplier<T> work) {
    return inSnapshot(work);
  }

  @Override
  public <T> T inTransaction(Supplier<T> work) {
    if (current.isBound()) {
      return inner(work);
    }
    var after = new Afterwards();
    T result = ScopedValue.where(afterwards, after).call(() -> transaction(writer, work));
    after.action.run();
    return result;
  }

  /** What an inner transaction that fails wanted done afterwards is not done. */
  private <T> T inner(Supplier<T> work) {
    Runnable before = afterwards.isBound() ? afterwards.get().action : () -> {};
    try {
      return transaction(current.get(), work);
    } catch (RuntimeException | Error e) {
      if (afterwards.isBound()) {
        afterwards.get().action = before;
      }
      throw e;
    }
  }

  private <T> T transaction(DSLContext outer, Supplier<T> work) {
    try {
      return outer.transactionResult(
          inner -> ScopedValue.where(current, inner.dsl()).call(work::get));
    } catch (DataAccessException e) {
      throw Storage.explain(e).<RuntimeException>map(words -> new CannotKeep(words, e)).orElse(e);
    }
  }

  /**
   * Has something done once what is written in this transaction is on the disk; it takes the place
   * of what was to be done before.
   *
   * @throws IllegalStateException outside a transaction
   */
  public void onceCommitted(Runnable action) {
    if (!afterwards.isBound()) {
      throw new IllegalStateException("bug: a write outside a transaction");
    }
    afterwards.get().action = action;
  }

  /** Reads many times from the one state that the database is in now, or the transaction is in. */
  public <T> T inSnapshot(Supplier<T> work) {
    if (current.isBound()) {
      return work.get();
    }
    return reader.transactionResult(
        inner ->
            ScopedValue.where(current, inner.dsl()).where(asked, new HashMap<>()).call(work::get));
  }

  /**
   * Asks a thing once in a snapshot, in which nothing changes; in a transaction, which writes, at
   * every time.
   *
   * @param key stands for the question, and for nothing else
   */
  @SuppressWarnings("unchecked") // only what the same question was answered with is kept under it
  public <T> T onceInSnapshot(Object key, Supplier<T> question) {
    if (!asked.isBound()) {
      return question.get();
    }
    Map<Object, Object> answers = asked.get();
    if (!answers.containsKey(key)) {
      answers.put(key, question.get());
    }
    return (T) answers.get(key);
  }

  /**
   * Writes the one state that the database is in now into a file that must be empty. Others may
   * write meanwhile.
   */
  public void copyTo(Path file) {
    reader.execute("vacuum into ?", file.toString());
  }

  /** What is wrong with the file as a file: a row that is in no index, a page that is cut off. */
  public Optional<String> damage() {
    String found = String.valueOf(reader.fetchValue("pragma integrity_check(1)"));
    return found.equals("ok") ? Optional.empty() : Optional.of(found);
  }

  /** For reading: inside a transaction its own state, outside the last committed one. */
  public DSLContext reading() {
    return current.isBound() ? current.get() : reader;
  }

  /**
   * For writing.
   *
   * @throws IllegalStateException outside a transaction
   */
  public DSLContext writing() {
    if (!current.isBound()) {
      throw new IllegalStateException("bug: a write outside a transaction");
    }
    return current.get();
  }

  @Override
  public void close() {
    reading.close();
    writing.close();
  }
}
