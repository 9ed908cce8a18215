package rungwise.checks.rows;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** The committed reference rows. */
final class ReferenceFiles {

  private ReferenceFiles() {}

  static List<RowFile> all() {
    return List.of(read("clinical"), read("supply"));
  }

  private static RowFile read(String name) {
    String resource = "/reference/" + name + "-checks.csv";
    try (InputStream in = ReferenceFiles.class.getResourceAsStream(resource)) {
      String text = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
      return RowFile.parse(name, text).orThrow();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
