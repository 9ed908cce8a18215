package rungwise.checks.docs;

import static java.util.stream.Collectors.toCollection;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rungwise.checks.house.Repository;
import rungwise.checks.house.TextFile;

/** The list of the cryptography in use: every place that uses some is in it, and nothing else. */
final class CryptographyTest {

  private static final Pattern USES =
      Pattern.compile("import (javax\\.crypto\\.|java\\.security\\.MessageDigest)");
  private static final Pattern ASKED =
      Pattern.compile(
          "\\b(?:Mac|Cipher|KDF|MessageDigest|Signature|KeyGenerator|KeyFactory)"
              + "\\s*\\.getInstance\\(([^)]+)\\)");
  private static final Pattern PLACE = Pattern.compile("`([A-Z][A-Za-z]+)`");

  /** What is asked of the JDK, by its own names, and where that may be. */
  private static final Set<String> KNOWN =
      Set.of("SHA-256", "HmacSHA256", "HmacSHA1", "AES/GCM/NoPadding", "HKDF-SHA256");

  private static List<TextFile> program() {
    return Repository.textFiles().stream()
        .filter(TextFile::isMainJava)
        .filter(file -> !file.path().startsWith("bench/"))
        .toList();
  }

  private static String nameOf(TextFile file) {
    return file.path().replaceFirst(".*/", "").replace(".java", "");
  }

  private static String inventory() {
    String page = Repository.file("docs/security.md").text();
    int from = page.indexOf("## Cryptography in use");
    return page.substring(from, page.indexOf("\n## ", from));
  }

  @Test
  void every_place_that_uses_some_is_listed() {
    Set<String> places =
        program().stream()
            .filter(file -> USES.matcher(file.text()).find())
            .map(CryptographyTest::nameOf)
            .collect(toCollection(TreeSet::new));

    assertThat(places).isNotEmpty();
    assertThat(PLACE.matcher(inventory()).results().map(found -> found.group(1)))
        .containsAll(places);
  }

  @Test
  void only_methods_of_the_list_are_asked_for_by_name() {
    Set<String> asked =
        program().stream().flatMap(CryptographyTest::asked).collect(toCollection(TreeSet::new));

    assertThat(asked).isEqualTo(new TreeSet<>(KNOWN));
    assertThat(
            program().stream()
                .filter(file -> file.text().contains("\"HmacSHA1\""))
                .map(CryptographyTest::nameOf))
        .containsExactly("TimeCode");
  }

  /** The names that a file asks for: written there, or by a constant of the same file. */
  private static Stream<String> asked(TextFile file) {
    return ASKED
        .matcher(file.text())
        .results()
        .map(found -> found.group(1).strip())
        .map(name -> name.startsWith("\"") ? name.replace("\"", "") : constant(file, name));
  }

  private static String constant(TextFile file, String name) {
    var found = Pattern.compile("\\b" + name + " = \"([^\"]+)\"").matcher(file.text());
    assertThat(found.find()).as("%s in %s", name, file.path()).isTrue();
    return found.group(1);
  }
}
