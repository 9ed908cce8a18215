package rungwise.checks.house;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

/** The folder that holds all modules. */
public final class Repository {

  /** Folders that are made by the build, by tools or by running the program. */
  private static final Set<String> NOT_OURS =
      Set.of("target", ".git", ".idea", ".vscode", "node_modules", "data", "results");

  private static final Pattern TEXT =
      Pattern.compile(
          ".*\\.(java|xml|md|sh|yaml|yml|jte|css|js|mjs|sql|csv|txt|json|properties|html|svg)"
              + "|[^.]+|\\.git[a-z]+");

  private static final Path ROOT = findRoot();

  private Repository() {}

  private static Path findRoot() {
    Path folder = Path.of("").toAbsolutePath();
    while (!Files.exists(folder.resolve("tools").resolve("mvn"))) {
      Path above = folder.getParent();
      if (above == null) {
        throw new IllegalStateException("bug: the tests run outside of the repository");
      }
      folder = above;
    }
    return folder;
  }

  /** A file by its path from the root, with slashes. */
  public static TextFile file(String path) {
    return read(ROOT.resolve(path));
  }

  /** Whether such a file or folder is there. */
  public static boolean has(String path) {
    return Files.exists(ROOT.resolve(path));
  }

  /** Every text file that somebody wrote, in the order of their paths. */
  public static List<TextFile> textFiles() {
    return textFilesBelow("");
  }

  /** Every text file below a folder. */
  public static List<TextFile> textFilesBelow(String folder) {
    var found = new ArrayList<Path>();
    try {
      Files.walkFileTree(ROOT.resolve(folder), new Walk(found));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return found.stream().sorted().map(Repository::read).toList();
  }

  private static TextFile read(Path file) {
    try {
      String path = ROOT.relativize(file).toString().replace('\\', '/');
      return new TextFile(path, Files.readString(file, StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(file + " cannot be read as text", e);
    }
  }

  private static final class Walk extends SimpleFileVisitor<Path> {
    private final List<Path> found;

    Walk(List<Path> found) {
      this.found = found;
    }

    @Override
    public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
      return NOT_OURS.contains(nameOf(folder))
          ? FileVisitResult.SKIP_SUBTREE
          : FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
      if (attributes.isRegularFile() && TEXT.matcher(nameOf(file)).matches()) {
        found.add(file);
      }
      return FileVisitResult.CONTINUE;
    }

    private static String nameOf(Path path) {
      Path name = path.getFileName();
      return name == null ? "" : name.toString();
    }
  }
}
