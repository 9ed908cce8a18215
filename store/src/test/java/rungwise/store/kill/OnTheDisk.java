package rungwise.store.kill;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.extension.AnnotatedElementContext;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.io.TempDirFactory;

/** A folder in the build's own, where a commit has to wait for the disk as in a clinic. */
final class OnTheDisk implements TempDirFactory {

  @Override
  public Path createTempDirectory(AnnotatedElementContext element, ExtensionContext test)
      throws IOException {
    Path build = Files.createDirectories(Path.of("target").toAbsolutePath());
    return Files.createTempDirectory(build, "on-the-disk-");
  }
}
