package rungwise.store.database;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.jooq.exception.DataTypeException;
import org.sqlite.SQLiteDataSource;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** What a failure says about the disk under the database. */
final class Storage {

  private static final int BASIC_CODE = 0xff;

  private Storage() {}

  /**
   * Makes every index of a file that nobody uses anew from its tables.
   *
   * @return whether that could be done: two rows may have one key by now
   */
  static boolean isReindexed(Path file) {
    var source = new SQLiteDataSource();
    source.setUrl("jdbc:sqlite:" + file);
    try (Connection connection = source.getConnection();
        Statement statement = connection.createStatement()) {
      statement.execute("reindex");
      return true;
    } catch (SQLException notDone) {
      return false;
    }
  }

  /** For the person who looks after the machine; empty if it is not about the disk. */
  static Optional<String> explain(Throwable failure) {
    return sqlite(failure).flatMap(found -> words(found.getResultCode()));
  }

  /** Whether the database found that something does not fit: a key, a check, a trigger. */
  static boolean isRefusal(Throwable failure) {
    return sqlite(failure)
        .map(found -> found.getResultCode().code & BASIC_CODE)
        .filter(basic -> basic == SQLiteErrorCode.SQLITE_CONSTRAINT.code)
        .isPresent();
  }

  /** Whether the file is damaged as a file, or holds a value that is none. */
  static boolean isDamage(Throwable failure) {
    return sqlite(failure)
        .map(found -> found.getResultCode().code & BASIC_CODE)
        .map(
            basic ->
                basic == SQLiteErrorCode.SQLITE_CORRUPT.code
                    || basic == SQLiteErrorCode.SQLITE_ERROR.code // a table that is not there
                    || basic == SQLiteErrorCode.SQLITE_NOTADB.code
                    || basic == SQLiteErrorCode.SQLITE_IOERR.code)
        .orElseGet(() -> chain(failure).anyMatch(DataTypeException.class::isInstance));
  }

  private static Stream<Throwable> chain(Throwable failure) {
    return Stream.iterate(failure, Objects::nonNull, Throwable::getCause);
  }

  private static Optional<SQLiteException> sqlite(Throwable failure) {
    return chain(failure)
        .filter(SQLiteException.class::isInstance)
        .map(SQLiteException.class::cast)
        .findFirst();
  }

  private static Optional<String> words(SQLiteErrorCode code) {
    int basic = code.code & BASIC_CODE;
    if (basic == SQLiteErrorCode.SQLITE_FULL.code) {
      return Optional.of(
          "The disk that holds the record is full, so nothing was saved and nothing was lost. Make"
              + " room on it, then do it again.");
    }
    if (basic == SQLiteErrorCode.SQLITE_READONLY.code
        || basic == SQLiteErrorCode.SQLITE_CANTOPEN.code
        || basic == SQLiteErrorCode.SQLITE_PERM.code) {
      return Optional.of(
          "The record may not be written to, so nothing was saved and nothing was lost. Give the"
              + " account that runs this program the right to write into its data folder.");
    }
    if (basic == SQLiteErrorCode.SQLITE_IOERR.code) {
      return Optional.of(
          "The disk that holds the record reports a fault, so nothing was saved. Stop the program,"
              + " copy its data folder elsewhere, and run verify on the copy.");
    }
    return Optional.empty();
  }
}
