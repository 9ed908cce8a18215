package rungwise.app.server;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * A folder that only its owner can read and that is gone once it is closed. Closing it twice, even
 * at the same time, does no harm.
 */
public record TemporaryFolder(Path path) implements AutoCloseable {

  public static TemporaryFolder make() {
    try {
      return new TemporaryFolder(Files.createTempDirectory("rungwise-"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Makes one with copies of the files of a folder that nobody writes to. */
  public static TemporaryFolder copyOf(Path folder) {
    TemporaryFolder copy = make();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.toList()) {
        Files.copy(file, copy.path.resolve(file.getFileName()), StandardCopyOption.COPY_ATTRIBUTES);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return copy;
  }

  @Override
  public synchronized void close() {
    if (Files.notExists(path)) {
      return;
    }
    try (Stream<Path> found = Files.walk(path)) {
      List<Path> insideFirst = found.sorted(Comparator.reverseOrder()).toList();
      for (Path file : insideFirst) {
        Files.deleteIfExists(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
