package rungwise.store.backup;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.jooq.exception.DataAccessException;
import rungwise.store.RecordCheck;
import rungwise.store.database.CannotOpenStore;
import rungwise.store.database.DataFolder;
import rungwise.store.database.Database;
import rungwise.store.journal.EndFile;
import rungwise.store.journal.Inspected;
import rungwise.store.journal.JournalKey;

/**
 * Takes a copy of a data folder while another process may be writing to it: the database as it was
 * at one moment, and its head. The copy appears under its name only when it has been read again.
 */
public final class Backup {

  /** Whether the key that seals the record goes into the copy. */
  public enum Key {
    LEFT_OUT,
    PUT_IN
  }

  private Backup() {}

  /**
   * Takes a copy.
   *
   * @param target the folder of the copy; it must not exist yet, or be empty
   * @throws CannotOpenStore if there is no record to be copied, or the copy cannot be written; then
   *     nothing is left behind
   */
  public static Copied take(Path dataFolder, Path target, Key key, Instant now) {
    DataFolder.requireExists(dataFolder);
    JournalKey secret = JournalKey.keptIn(dataFolder);
    Path whole = target.toAbsolutePath().normalize();
    requireFree(whole);
    Path draft = draftOf(whole);
    try {
      return taken(dataFolder, draft, whole, new Sealed(secret, key, now));
    } catch (IOException | DataAccessException e) {
      throw new CannotOpenStore(
          "The backup "
              + target
              + " cannot be written, and nothing was left there: see whether the disk is full or"
              + " may not be written to.",
          e);
    } finally {
      removeQuietly(draft);
    }
  }

  private record Sealed(JournalKey secret, Key key, Instant now) {}

  private static Copied taken(Path dataFolder, Path draft, Path target, Sealed sealed)
      throws IOException {
    Path file = draft.resolve(Database.FILE);
    DataFolder.createForOwner(file);
    var end = EndFile.in(dataFolder, sealed.secret()).readToCompare();
    try (Database database = Database.openToRead(dataFolder)) {
      database.copyTo(file);
    }
    Folders.force(file);
    Inspected copied = RecordCheck.ofCopy(file, sealed.secret(), end);
    if (copied instanceof Inspected.Broken && Database.isReindexed(file)) {
      // A damaged index is copied as it is; the rows of the tables decide.
      copied = RecordCheck.ofCopy(file, sealed.secret(), end);
    }
    return switch (copied) {
      case Inspected.Broken broken -> new Copied.Refused(broken);
      case Inspected.Whole found -> {
        var head = headOf(found, file, sealed);
        Folders.write(draft.resolve(Head.FILE), head.text().getBytes(StandardCharsets.US_ASCII));
        if (sealed.key() == Key.PUT_IN) {
          Folders.copy(dataFolder.resolve(JournalKey.FILE), draft.resolve(JournalKey.FILE));
        }
        Folders.force(draft);
        Files.deleteIfExists(target);
        Files.move(draft, target);
        Folders.force(parentOf(target));
        yield new Copied.Kept(head, sealed.key() == Key.PUT_IN);
      }
    };
  }

  private static Head headOf(Inspected.Whole found, Path file, Sealed sealed) throws IOException {
    return new Head(
        found.entries(),
        found.lastSeal(),
        found.lastAt(),
        sealed.now(),
        Folders.hash(file),
        sealed.secret().mark());
  }

  private static void requireFree(Path target) {
    try {
      if ((Files.notExists(target) || Files.isDirectory(target))
          && Folders.isEmptyBut(target, List.of())) {
        return;
      }
    } catch (IOException e) {
      throw new CannotOpenStore("The folder " + target + " cannot be read.", e);
    }
    throw new CannotOpenStore(
        "There is something at " + target + " already: name a folder that does not exist yet.");
  }

  /** A folder beside the target, so that the last step is a change of name. */
  private static Path draftOf(Path target) {
    try {
      return Files.createTempDirectory(parentOf(target), target.getFileName() + ".part-");
    } catch (IOException e) {
      throw new CannotOpenStore(
          "The folder "
              + parentOf(target)
              + " cannot be written: it must exist, and the account that runs this program must"
              + " have the right to write there.",
          e);
    }
  }

  private static Path parentOf(Path target) {
    Path parent = target.getParent();
    if (parent == null || target.getFileName() == null) {
      throw new CannotOpenStore(target + " cannot be a backup: name a folder.");
    }
    return parent;
  }

  private static void removeQuietly(Path draft) {
    try {
      Folders.remove(draft);
    } catch (IOException e) {
      // What is left bears the name of a part, so nobody takes it for a backup.
      return;
    }
  }
}
