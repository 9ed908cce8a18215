package rungwise.store.backup;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rungwise.store.database.CannotOpenStore;
import rungwise.store.journal.Inspected;

/**
 * What a backup says of itself in a file of a few lines, which can also be kept on paper.
 *
 * @param entries how many entries the record had
 * @param lastSeal the seal of the last one, 64 hexadecimal digits
 * @param lastAt when the last one was recorded; empty if there was none
 * @param madeAt when the backup was taken
 * @param databaseHash SHA-256 of the database file of the backup
 * @param keyMark tells whether a key is the one that the record is sealed with; does not hold it
 */
public record Head(
    long entries,
    String lastSeal,
    Optional<Instant> lastAt,
    Instant madeAt,
    String databaseHash,
    String keyMark) {

  /** The name of the file. */
  public static final String FILE = "head.txt";

  private static final String FIRST_LINE = "Head of a Rungwise backup, form 1";
  private static final String ENTRIES = "entries";
  private static final String LAST_SEAL = "last_seal";
  private static final String LAST_AT = "last_at";
  private static final String MADE_AT = "made_at";
  private static final String DATABASE_HASH = "database_sha256";
  private static final String KEY_MARK = "key_mark";

  /** Whether a record that was walked over is the one that was copied, to its last entry. */
  boolean isOf(Inspected.Whole whole) {
    return whole.entries() == entries && whole.lastSeal().equals(lastSeal);
  }

  /** Whether there was an entry whose seal can be looked for. */
  public Optional<String> seal() {
    return entries == 0 ? Optional.empty() : Optional.of(lastSeal);
  }

  String text() {
    return String.join(
        "\n",
        FIRST_LINE,
        ENTRIES + "=" + entries,
        LAST_SEAL + "=" + lastSeal,
        LAST_AT + "=" + lastAt.map(Instant::toString).orElse(""),
        MADE_AT + "=" + madeAt,
        DATABASE_HASH + "=" + databaseHash,
        KEY_MARK + "=" + keyMark,
        "");
  }

  /**
   * The head that a file holds.
   *
   * @throws CannotOpenStore if there is none, or it is not in the form in which it was written
   */
  public static Head read(Path file) {
    try {
      List<String> lines = Files.readAllLines(file);
      if (!lines.isEmpty() && lines.getFirst().equals(FIRST_LINE)) {
        return of(values(lines));
      }
    } catch (IOException e) {
      throw new CannotOpenStore(
          "The head " + file + " cannot be read: name the file " + FILE + " of a backup.", e);
    } catch (IllegalArgumentException | DateTimeException e) {
      throw isDamaged(file, e);
    }
    throw isDamaged(file, new IllegalArgumentException("another first line"));
  }

  private static CannotOpenStore isDamaged(Path file, Exception cause) {
    return new CannotOpenStore(
        "The head " + file + " is not as backup wrote it: take it from another copy.", cause);
  }

  private static Map<String, String> values(List<String> lines) {
    var values = new HashMap<String, String>();
    for (String line : lines.subList(1, lines.size())) {
      String[] parts = line.split("=", 2);
      if (parts.length == 2) {
        values.put(parts[0], parts[1]);
      }
    }
    return values;
  }

  private static Head of(Map<String, String> values) {
    String at = value(values, LAST_AT);
    return new Head(
        Long.parseLong(value(values, ENTRIES)),
        value(values, LAST_SEAL),
        at.isEmpty() ? Optional.empty() : Optional.of(Instant.parse(at)),
        Instant.parse(value(values, MADE_AT)),
        value(values, DATABASE_HASH),
        value(values, KEY_MARK));
  }

  private static String value(Map<String, String> values, String name) {
    String value = values.get(name);
    if (value == null) {
      throw new IllegalArgumentException(name + " is missing");
    }
    return value;
  }
}
