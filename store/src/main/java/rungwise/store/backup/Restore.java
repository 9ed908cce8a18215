package rungwise.store.backup;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;
import rungwise.store.RecordCheck;
import rungwise.store.SqliteStore;
import rungwise.store.database.CannotOpenStore;
import rungwise.store.database.DataFolder;
import rungwise.store.database.Database;
import rungwise.store.journal.BrokenEntry;
import rungwise.store.journal.Inspected;
import rungwise.store.journal.JournalKey;

/**
 * Puts a backup into an empty data folder. It is unpacked, brought up to date and checked in a room
 * of its own; the folder gets it only when every seal is right.
 */
public final class Restore {

  private static final String ROOM = "restoring";

  private Restore() {}

  /**
   * Puts a backup back.
   *
   * @param key the key that the record is sealed with; empty if it lies in the backup
   * @param keptSeal the seal of an entry, kept elsewhere, that must be in the record
   * @throws CannotOpenStore if the backup or the key cannot be used, or the folder is not empty
   */
  public static Copied into(
      Path dataFolder, Path backup, Optional<Path> key, Optional<String> keptSeal) {
    Head head = Head.read(backup.resolve(Head.FILE));
    Path keyFile = key.orElse(backup.resolve(JournalKey.FILE));
    requireKey(keyFile, key.isPresent(), head);
    try (DataFolder folder = DataFolder.take(dataFolder)) {
      requireEmpty(folder, dataFolder);
      requireSame(backup.resolve(Database.FILE), head);
      Path room = folder.file(ROOM);
      try {
        return unpacked(folder, room, new Source(backup, keyFile, head, keptSeal));
      } finally {
        Folders.remove(room);
      }
    } catch (IOException e) {
      throw new CannotOpenStore(
          "The backup "
              + backup
              + " cannot be put into "
              + dataFolder
              + ", and nothing was put there: see whether the disk is full or may not be written"
              + " to.",
          e);
    }
  }

  private record Source(Path backup, Path key, Head head, Optional<String> keptSeal) {}

  private static Copied unpacked(DataFolder folder, Path room, Source from) throws IOException {
    Folders.remove(room);
    Files.createDirectory(room);
    Folders.copy(from.key(), room.resolve(JournalKey.FILE));
    Folders.copy(from.backup().resolve(Database.FILE), room.resolve(Database.FILE));
    try (SqliteStore store = SqliteStore.open(room)) { // brings an older one's tables up to date
      store.dayRows().forget();
    }
    Inspected found = RecordCheck.of(room, from.keptSeal());
    if (found instanceof Inspected.Whole whole && !from.head().isOf(whole)) {
      found = isAnother(whole);
    }
    return switch (found) {
      case Inspected.Broken broken -> new Copied.Refused(broken);
      case Inspected.Whole whole -> {
        requireOneFile(room);
        move(room, folder, JournalKey.FILE);
        move(room, folder, Database.FILE);
        yield new Copied.Kept(from.head(), /* hasKey= */ true);
      }
    };
  }

  private static Inspected isAnother(Inspected.Whole whole) {
    long next = whole.entries() + 1;
    return new Inspected.Broken(
        new BrokenEntry(
            next, "Entry " + next + " is not the one after which the head was written."),
        Optional.empty());
  }

  /** All must be in the one file, as nothing else is moved. */
  private static void requireOneFile(Path room) throws IOException {
    Path log = room.resolve(Database.FILE + "-wal");
    if (Files.exists(log) && Files.size(log) > 0) {
      throw new IOException("the write-ahead log was not folded into the database");
    }
  }

  private static void move(Path room, DataFolder folder, String name) throws IOException {
    Folders.force(room.resolve(name));
    Files.move(room.resolve(name), folder.file(name), StandardCopyOption.ATOMIC_MOVE);
    Folders.force(room);
  }

  private static void requireKey(Path file, boolean isNamed, Head head) {
    if (!isNamed && Files.notExists(file)) {
      throw new CannotOpenStore(
          "The key is not in the backup: name its file, which is kept apart from backups.");
    }
    if (!JournalKey.at(file).mark().equals(head.keyMark())) {
      throw new CannotOpenStore(
          "The key " + file + " is not the one that this backup is sealed with: name that one.");
    }
  }

  private static void requireEmpty(DataFolder folder, Path dataFolder) throws IOException {
    if (!Folders.isEmptyBut(dataFolder, List.of(DataFolder.LOCK, ROOM))) {
      throw new CannotOpenStore(
          "The data folder "
              + folder
              + " is not empty: nothing is ever put in place of a record. Name an empty folder.");
    }
  }

  private static void requireSame(Path database, Head head) throws IOException {
    if (Files.notExists(database)) {
      throw new CannotOpenStore("The backup has no " + database + ": use another one.");
    }
    if (!Folders.hash(database).equals(head.databaseHash())) {
      throw new CannotOpenStore(
          "The backup "
              + database
              + " is not as it was written, nothing was put back: use another one.");
    }
  }
}
