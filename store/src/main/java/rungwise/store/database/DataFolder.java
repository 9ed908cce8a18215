package rungwise.store.database;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;

/** The folder that holds all data, while it is this process's own. */
public final class DataFolder implements AutoCloseable {

  /** The name of the file by which a process holds the folder. */
  public static final String LOCK = "lock";

  private final Path folder;
  private final FileChannel lock;

  private DataFolder(Path folder, FileChannel lock) {
    this.folder = folder;
    this.lock = lock;
  }

  /**
   * Takes the folder for this process, until it is closed or the process ends in any way.
   *
   * @throws CannotOpenStore if it is missing, cannot be written, or is another process's
   */
  public static DataFolder take(Path folder) {
    requireExists(folder);
    FileChannel channel = openLock(folder);
    try {
      if (isLocked(channel)) {
        return new DataFolder(folder, channel);
      }
      channel.close();
    } catch (IOException e) {
      throw new CannotOpenStore(
          "The data folder " + folder + " cannot be locked: keep it on a local disk.", e);
    }
    throw new CannotOpenStore(
        "The data folder "
            + folder
            + " is in use by another running Rungwise: stop that one first, or name another"
            + " folder.");
  }

  /**
   * Does nothing if there is such a folder.
   *
   * @throws CannotOpenStore if there is none
   */
  public static void requireExists(Path folder) {
    if (!Files.isDirectory(folder)) {
      throw new CannotOpenStore(
          "The data folder " + folder + " does not exist: create it, or name another folder.");
    }
  }

  private static boolean isLocked(FileChannel channel) throws IOException {
    try {
      return channel.tryLock() != null;
    } catch (OverlappingFileLockException e) {
      return false; // this process holds it already
    }
  }

  private static FileChannel openLock(Path folder) {
    try {
      Path file = folder.resolve(LOCK);
      createForOwner(file);
      return FileChannel.open(file, StandardOpenOption.WRITE);
    } catch (IOException e) {
      throw new CannotOpenStore(
          "The data folder "
              + folder
              + " cannot be written: give the account that runs this program the right to write"
              + " there, or name another folder.",
          e);
    }
  }

  /** The path of a file in the folder. */
  public Path file(String name) {
    return folder.resolve(name);
  }

  /** Makes an empty file that only its owner can read, unless it is there already. */
  public static void createForOwner(Path file) throws IOException {
    if (Files.notExists(file)) {
      Files.createFile(file, ownerOnly(file));
    }
  }

  /** Owner-only access where the file system knows owners; elsewhere the folder's rules count. */
  private static FileAttribute<?>[] ownerOnly(Path file) {
    boolean isPosix = file.getFileSystem().supportedFileAttributeViews().contains("posix");
    return isPosix
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
        }
        : new FileAttribute<?>[0];
  }

  /** Gives the folder back. */
  @Override
  public void close() {
    try {
      lock.close();
    } catch (IOException e) {
      throw new CannotOpenStore("The lock of " + folder + " cannot be closed.", e);
    }
  }

  @Override
  public String toString() {
    return folder.toString();
  }
}
