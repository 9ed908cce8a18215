package rungwise.store.journal;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import rungwise.clinic.soundness.Flaw;
import rungwise.store.database.DataFolder;

/**
 * The last number and seal of the journal in a file beside the database, written and forced to the
 * disk after each commit. A database that lost its last entries, as by a write-ahead log that was
 * cut, is whole in itself; by this file it is told.
 *
 * <p>Two lines of one length take turns, so that one that is torn by a kill leaves the one before.
 * The file may be one commit behind, never ahead: it is written when the entries are on the disk.
 */
public final class EndFile {

  /** The name of the file in a data folder. */
  public static final String NAME = "journal.end";

  private static final Pattern LINE =
      Pattern.compile("(00\\d{18}) ([0-9a-f]{64}) ([0-9a-f]{64})\n");
  private static final int LINE_LENGTH = 20 + 1 + 64 + 1 + 64 + 1;
  private static final int LINES = 2;

  private final Path file;
  private final Seals seals;
  private long written = -1;
  private int next = 0;

  private EndFile(Path file, Seals seals) {
    this.file = file;
    this.seals = seals;
  }

  /**
   * Where the record ended when it was last written.
   *
   * @param seq the number of the last entry; 0 if there was none
   */
  public record End(long seq, String seal) {}

  /** The file of a folder, which may not be there yet. */
  public static EndFile in(Path folder, JournalKey key) {
    return new EndFile(folder.resolve(NAME), new Seals(key));
  }

  public boolean isThere() {
    return Files.exists(file);
  }

  /**
   * Reads it now, to be compared with a journal that is looked at later: that one may have gone on
   * meanwhile, and must still reach as far.
   */
  public Function<Journal, Optional<Flaw>> readToCompare() {
    if (!isThere()) {
      return journal -> Optional.empty();
    }
    Optional<End> said = read();
    return journal -> journal.missing(said);
  }

  /** What it says; empty if it is missing, or damaged in both lines. */
  public synchronized Optional<End> read() {
    try {
      byte[] bytes = Files.exists(file) ? Files.readAllBytes(file) : new byte[0];
      Optional<Found> last =
          IntStream.range(0, LINES)
              .mapToObj(line -> found(bytes, line))
              .flatMap(Optional::stream)
              .max(Comparator.comparingLong(one -> one.end().seq()));
      last.ifPresent(
          one -> {
            written = one.end().seq();
            next = (one.line() + 1) % LINES;
          });
      return last.map(Found::end);
    } catch (IOException unreadable) {
      return Optional.empty();
    }
  }

  private record Found(int line, End end) {}

  private Optional<Found> found(byte[] bytes, int line) {
    if (bytes.length < (line + 1) * LINE_LENGTH) {
      return Optional.empty();
    }
    var text = new String(bytes, line * LINE_LENGTH, LINE_LENGTH, StandardCharsets.ISO_8859_1);
    Matcher parts = LINE.matcher(text);
    if (!parts.matches()) {
      return Optional.empty();
    }
    var end = new End(Long.parseLong(parts.group(1)), parts.group(2));
    return seals.ofKept(end).equals(parts.group(3))
        ? Optional.of(new Found(line, end))
        : Optional.empty();
  }

  private byte[] line(End end) {
    return "%020d %s %s\n"
        .formatted(end.seq(), end.seal(), seals.ofKept(end))
        .getBytes(StandardCharsets.US_ASCII);
  }

  /**
   * Writes an end that is on the disk in the database, unless a later one is written already.
   *
   * @throws IOException if it cannot be written; then it is behind, and the next one is tried
   */
  public synchronized void write(End end) throws IOException {
    if (end.seq() <= written) {
      return;
    }
    if (!isThere()) {
      make(end);
      return;
    }
    // Not a channel: an interrupt would close it in the middle of a line.
    try (var out = new RandomAccessFile(file.toFile(), "rw")) {
      out.seek((long) next * LINE_LENGTH);
      out.write(line(end));
      out.getFD().sync();
    }
    written = end.seq();
    next = (next + 1) % LINES;
  }

  /** Makes the file anew, whatever it said. */
  public synchronized void make(End end) throws IOException {
    Path draft = file.resolveSibling(NAME + ".new");
    Files.deleteIfExists(draft);
    DataFolder.createForOwner(draft);
    try (var out = new RandomAccessFile(draft.toFile(), "rw")) {
      out.write(line(end));
      out.write(line(end));
      out.getFD().sync();
    }
    Files.move(draft, file, StandardCopyOption.ATOMIC_MOVE);
    written = end.seq();
    next = 0;
  }
}
