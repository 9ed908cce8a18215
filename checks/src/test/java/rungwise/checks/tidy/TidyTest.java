package rungwise.checks.tidy;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rungwise.checks.house.JavaSource;
import rungwise.checks.house.JavaSources;
import rungwise.checks.house.Repository;
import rungwise.checks.house.TextFile;

/** How files, types and methods are written. Sizes are in {@link SizeTest}. */
final class TidyTest {

  private static final Pattern VAGUE_NAME =
      Pattern.compile(".*(?:Impl|Manager|Helper|Utils?|Data|Info)");

  private static final Pattern FETCHING_NAME = Pattern.compile("get[A-Z].*");

  private static final Pattern PROMISE = Pattern.compile("\\b(?:TO[D]O|FIX[M]E|X{3})\\b");

  private static final Pattern AUTHOR = Pattern.compile("@auth[o]r\\b");

  private static final Set<String> SWITCHED_OFF =
      Set.of("Disabled", "DisabledIf", "DisabledOnOs", "DisabledIfEnvironmentVariable", "Ignore");

  /** A comment that ends as code does, or starts as only code does. */
  private static final Pattern COMMENTED_OUT =
      Pattern.compile(
          "^\\s*//.*(?:[;{]|\\)\\s*\\})\\s*$"
              + "|^\\s*//\\s*(?:import|package|return|private|public|protected)\\s.*[;({]");

  private static final Pattern MACHINE_PATH =
      Pattern.compile("(?<![\\w./>}-])/(?:work|root|home)/[\\w.]");

  private static final Pattern REGISTRY =
      Pattern.compile(
          "(?i)repo1?\\.maven|repo\\.maven\\.apache|registry\\.(?:npmjs|yarnpkg)"
              + "|artifact[o]ry|/nexu[s]/|pypi\\.(?:org|python)|crates\\.(?:io)");

  private static Stream<JavaSource> sources() {
    return JavaSources.all().stream();
  }

  private static Stream<String> findings(Pattern pattern) {
    return Repository.textFiles().stream().flatMap(file -> file.findings(pattern));
  }

  @Test
  void the_sources_of_every_module_are_seen() {
    assertThat(sources().map(JavaSource::module))
        .contains("quantities", "dosing", "clinic", "store", "files", "web", "app", "checks");
  }

  @Test
  void every_package_says_what_it_is_for_and_is_null_marked() {
    Set<String> described =
        sources()
            .filter(JavaSource::isPackageInfo)
            .filter(source -> source.file().text().contains("@NullMarked"))
            .map(source -> source.module() + " " + source.packageName())
            .collect(Collectors.toSet());

    assertThat(sources().filter(source -> !source.packageName().isEmpty()))
        .allSatisfy(
            source ->
                assertThat(described)
                    .as("package-info.java with @NullMarked for %s", source.file().path())
                    .contains(source.module() + " " + source.packageName()));
  }

  @Test
  void no_type_has_a_name_that_says_nothing() {
    assertThat(
            sources()
                .flatMap(source -> source.types().stream())
                .map(JavaSource.Type::name)
                .filter(name -> VAGUE_NAME.matcher(name).matches()))
        .isEmpty();
  }

  @Test
  void no_method_is_called_get_something() {
    assertThat(
            sources()
                .flatMap(
                    source ->
                        source.methods().stream()
                            .filter(method -> FETCHING_NAME.matcher(method.name()).matches())
                            .filter(method -> !method.annotations().contains("Override"))
                            .map(method -> at(source, method))))
        .isEmpty();
  }

  private static String at(JavaSource source, JavaSource.Method method) {
    return source.file().path() + ":" + method.line() + ": " + method.name();
  }

  @Test
  void no_test_is_switched_off() {
    assertThat(
            sources()
                .flatMap(
                    source ->
                        source.methods().stream()
                            .filter(method -> isSwitchedOff(method.annotations()))
                            .map(method -> at(source, method))))
        .isEmpty();
    assertThat(findings(Pattern.compile("^\\s*@(?:" + String.join("|", SWITCHED_OFF) + ")\\b")))
        .isEmpty();
  }

  private static boolean isSwitchedOff(Set<String> annotations) {
    return annotations.stream().anyMatch(SWITCHED_OFF::contains);
  }

  @Test
  void nothing_is_promised_for_later() {
    assertThat(findings(PROMISE)).isEmpty();
  }

  @Test
  void no_file_names_its_author() {
    assertThat(findings(AUTHOR)).isEmpty();
  }

  @Test
  void no_code_is_commented_out() {
    assertThat(sources().map(JavaSource::file).flatMap(file -> file.findings(COMMENTED_OUT)))
        .isEmpty();
  }

  @Test
  void no_file_holds_a_tab_or_a_carriage_return() {
    assertThat(
            Repository.textFiles().stream()
                .filter(file -> file.text().indexOf('\t') >= 0 || file.text().indexOf('\r') >= 0)
                .map(TextFile::path))
        .isEmpty();
  }

  @Test
  void every_file_ends_with_one_line_end() {
    assertThat(
            Repository.textFiles().stream()
                .filter(file -> !file.text().isEmpty())
                .filter(file -> !file.text().endsWith("\n") || file.text().endsWith("\n\n"))
                .map(TextFile::path))
        .isEmpty();
  }

  @Test
  void no_file_names_a_folder_of_a_machine() {
    assertThat(findings(MACHINE_PATH)).isEmpty();
  }

  @Test
  void no_file_names_the_host_of_a_package_registry() {
    assertThat(findings(REGISTRY)).isEmpty();
  }

  @Test
  void every_test_before_a_browser_says_so_by_its_tag() {
    assertThat(
            Repository.textFiles().stream()
                .filter(file -> file.path().toString().endsWith("BrowserTest.java"))
                .filter(file -> !file.text().contains("@Tag(\"browser\")"))
                .filter(file -> !file.text().contains(" extends AtTheDesk"))
                .map(TextFile::path))
        .isEmpty();
  }

  @Test
  void the_patterns_find_what_they_are_for() {
    assertThat(List.of("int x = 1; // TO" + "DO later", "# FIX" + "ME"))
        .allMatch(line -> PROMISE.matcher(line).find());
    assertThat(List.of("  // int x = 1;", "// if (a) {", "// return (b", "// import java.util;"))
        .allMatch(line -> COMMENTED_OUT.matcher(line).find());
    assertThat(List.of("// Why it is so.", "/** Returns nothing; ever. */", "int x = 1; // one"))
        .noneMatch(line -> COMMENTED_OUT.matcher(line).find());
    assertThat(List.of("cd /ro" + "ot/x", "\"/ho" + "me/me\"", "(/wo" + "rk/tree)"))
        .allMatch(line -> MACHINE_PATH.matcher(line).find());
    assertThat(List.of("https://repo.ma" + "ven.apache.org/x", "repo" + "1.maven.org"))
        .allMatch(line -> REGISTRY.matcher(line).find());
    assertThat(List.of("DoseHelper", "DoseUtil", "DoseData"))
        .allMatch(name -> VAGUE_NAME.matcher(name).matches());
  }
}
