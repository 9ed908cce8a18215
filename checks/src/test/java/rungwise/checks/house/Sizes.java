package rungwise.checks.house;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The largest file, method, line and package of the repository. */
public final class Sizes {

  /**
   * A maximum and where it is.
   *
   * @param name "file", "method", "line" or "package"
   */
  public record Largest(String name, int size, String where) {}

  private Sizes() {}

  /** The maxima, in the order of their names. */
  public static List<Largest> present() {
    return List.of(file(), line(), method(), packageOfTypes());
  }

  /** One maximum by its name. */
  public static Largest of(String name) {
    return present().stream().filter(one -> one.name().equals(name)).findFirst().orElseThrow();
  }

  private static Stream<JavaSource> sources() {
    return JavaSources.all().stream();
  }

  private static <T> Largest largest(
      String name, Stream<T> all, ToIntFunction<T> size, Function<T, String> where) {
    T most = all.max(Comparator.comparingInt(size)).orElseThrow();
    return new Largest(name, size.applyAsInt(most), where.apply(most));
  }

  /** Sources, templates, scripts and styles alike. */
  private static Largest file() {
    return largest(
        "file",
        Repository.textFiles().stream()
            .filter(file -> file.path().matches(".*\\.(java|jte|css|js|sql|sh)")),
        file -> file.lines().size(),
        TextFile::path);
  }

  private record Place(int size, String where) {}

  private static Largest method() {
    return largest(
        "method",
        sources()
            .flatMap(
                source ->
                    source.methods().stream()
                        .map(
                            method ->
                                new Place(
                                    method.lines(), source.file().path() + " " + method.name()))),
        Place::size,
        Place::where);
  }

  private static Largest line() {
    return largest(
        "line",
        sources()
            .flatMap(
                source ->
                    source
                        .file()
                        .text()
                        .lines()
                        .map(
                            line ->
                                new Place(
                                    line.codePointCount(0, line.length()), source.file().path()))),
        Place::size,
        Place::where);
  }

  /** Types at the top of a file; a package and its tests are counted apart. */
  private static Largest packageOfTypes() {
    Map<String, Integer> counts =
        sources()
            .collect(
                Collectors.groupingBy(
                    source ->
                        source.module() + (source.isMain() ? " " : " test ") + source.packageName(),
                    Collectors.summingInt(
                        source ->
                            (int) source.types().stream().filter(JavaSource.Type::isTop).count())));
    return largest("package", counts.entrySet().stream(), Map.Entry::getValue, Map.Entry::getKey);
  }
}
