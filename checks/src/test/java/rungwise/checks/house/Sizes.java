package rungwise.checks.house;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** How large the files, methods, lines and packages of the repository are. */
public enum Sizes {
  FILE,
  LINE,
  METHOD,
  PACKAGE;

  /** The size of one thing, and where it is. */
  public record Size(int count, String where) {}

  /** Every size of this kind. */
  public List<Size> all() {
    return switch (this) {
      case FILE -> files().toList();
      case LINE -> sources().flatMap(source -> lines(source.file())).toList();
      case METHOD -> sources().flatMap(Sizes::methods).toList();
      case PACKAGE -> packages();
    };
  }

  /** The largest of this kind. */
  public Size largest() {
    return all().stream().max(Comparator.comparingInt(Size::count)).orElseThrow();
  }

  private static Stream<JavaSource> sources() {
    return JavaSources.all().stream();
  }

  /** Sources, templates and scripts alike. A style sheet is one table and is not counted. */
  private static Stream<Size> files() {
    return Repository.textFiles().stream()
        .filter(file -> file.path().matches(".*\\.(java|jte|js|sql|sh)"))
        .map(file -> new Size(file.lines().size(), file.path()));
  }

  /** An import cannot be broken, so it is not counted. */
  private static Stream<Size> lines(TextFile file) {
    return file.lines().stream()
        .filter(line -> !line.startsWith("import "))
        .map(line -> new Size(line.codePointCount(0, line.length()), file.path()));
  }

  private static Stream<Size> methods(JavaSource source) {
    return source.methods().stream()
        .map(method -> new Size(method.lines(), source.file().path() + " " + method.name()));
  }

  /** Types at the top of a file; a package and its tests are counted apart. */
  private static List<Size> packages() {
    Map<String, Integer> counts =
        sources()
            .collect(
                Collectors.groupingBy(
                    source ->
                        source.module() + (source.isMain() ? " " : " test ") + source.packageName(),
                    Collectors.summingInt(Sizes::typesAtTheTop)));
    return counts.entrySet().stream()
        .map(entry -> new Size(entry.getValue(), entry.getKey()))
        .toList();
  }

  private static int typesAtTheTop(JavaSource source) {
    return Math.toIntExact(source.types().stream().filter(JavaSource.Type::isTop).count());
  }
}
