package rungwise.checks.bytes;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.StoryClock;
import rungwise.app.server.TemporaryFolder;
import rungwise.store.SqliteStore;
import rungwise.web.secrets.Argon2Hashing;

/**
 * The files of a record that nobody has changed: of one that was closed, and of one whose process
 * ended without closing it, so that its newest entries are in the log alone.
 */
final class WholeRecord {

  static final Instant NOW = Instant.parse("2026-03-02T08:00:00Z");

  private static final String DATABASE = "rungwise.db";
  private static final String LOG = "rungwise.db-wal";
  private static final int LEAST_MEMORY_KIB = 8;
  private static final int KINDS = 3;

  private final Map<String, byte[]> closed;
  private final Map<String, byte[]> open;
  private final Served written;

  private WholeRecord(Map<String, byte[]> closed, Map<String, byte[]> open) {
    this.closed = closed;
    this.open = open;
    this.written = written(closed);
  }

  /** The invented clinic with its past. */
  static WholeRecord told() {
    try (TemporaryFolder folder = TemporaryFolder.make()) {
      var clock = new StoryClock(InstantSource.fixed(NOW));
      Map<String, byte[]> open;
      try (OpenClinic clinic = open(folder.path(), clock)) {
        DemoClinic.fill(clinic, clock, ZoneOffset.UTC);
        open = files(folder.path());
      }
      return new WholeRecord(files(folder.path()), open);
    }
  }

  static OpenClinic open(Path folder, InstantSource clock) {
    return OpenClinic.in(folder, clock, new Argon2Hashing(LEAST_MEMORY_KIB, /* passes= */ 1));
  }

  private static Served written(Map<String, byte[]> files) {
    try (TemporaryFolder folder = TemporaryFolder.make()) {
      write(files, folder.path());
      try (SqliteStore store = SqliteStore.open(folder.path())) {
        return Served.by(store, store.courses().all());
      }
    }
  }

  /** What is served of it. */
  Served written() {
    return written;
  }

  /**
   * A byte that is changed.
   *
   * @param at its place in the file
   * @param by what is changed in it: 1 to 255
   */
  record Change(boolean isClosed, String file, int at, int by) {}

  /** A change by chance: one of three is in the log; half of all meet a byte that is not 0. */
  Change change(Random random) {
    boolean isClosed = random.nextInt(KINDS) > 0;
    String file = isClosed ? DATABASE : LOG;
    byte[] content = Objects.requireNonNull(files(isClosed).get(file));
    boolean isWritten = random.nextBoolean();
    int at = random.nextInt(content.length);
    while (isWritten && content[at] == 0) {
      at = random.nextInt(content.length);
    }
    return new Change(isClosed, file, at, 1 + random.nextInt(0xff));
  }

  private Map<String, byte[]> files(boolean isClosed) {
    return isClosed ? closed : open;
  }

  /** Writes the files into an empty folder, one byte of them changed. */
  void write(Change change, Path folder) {
    var files = new TreeMap<>(files(change.isClosed()));
    byte[] content = Objects.requireNonNull(files.get(change.file())).clone();
    content[change.at()] ^= (byte) change.by();
    files.put(change.file(), content);
    write(files, folder);
  }

  /** Writes the files as they are into an empty folder. */
  void write(Path folder) {
    write(closed, folder);
  }

  private static void write(Map<String, byte[]> files, Path folder) {
    try {
      for (Path old : list(folder)) {
        Files.delete(old);
      }
      for (var file : files.entrySet()) {
        Files.write(folder.resolve(file.getKey()), file.getValue());
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Map<String, byte[]> files(Path folder) {
    var files = new TreeMap<String, byte[]>();
    try {
      for (Path file : list(folder)) {
        String name = file.getFileName().toString();
        if (!name.endsWith("-shm")) { // an index of the log, made anew from it
          files.put(name, Files.readAllBytes(file));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return files;
  }

  private static List<Path> list(Path folder) throws IOException {
    try (Stream<Path> found = Files.list(folder)) {
      return new ArrayList<>(found.toList());
    }
  }
}
