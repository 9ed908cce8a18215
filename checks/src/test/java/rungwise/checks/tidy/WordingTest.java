package rungwise.checks.tidy;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rungwise.checks.house.JavaSource;
import rungwise.checks.house.JavaSources;
import rungwise.checks.house.Repository;
import rungwise.checks.house.TextFile;
import rungwise.quantities.DoseTextLint;

/**
 * Every text that a person may read is written so that no dose in it can be misread: texts in the
 * product's sources, templates and documents.
 */
final class WordingTest {

  private static final String ALLOWED = "checks/src/test/resources/wording-allowed.txt";

  /** A number of bare units is no amount: a unit is a mark, and says so. */
  private static final Pattern BARE_UNITS =
      Pattern.compile("(?<![\\w.,-])[0-9][0-9.,]*[ \\u00A0]units?(?![ -]marks?)(?![A-Za-z])");

  /** Some text and the place where it stands. */
  private record Passage(String path, int line, String text) {
    String at(String fault) {
      return path + ":" + line + ": " + fault;
    }
  }

  /**
   * A place that must quote what is refused.
   *
   * @param part of the text; "*" for the whole file
   */
  private record Allowed(String path, String part, String reason) {
    boolean covers(Passage passage) {
      return passage.path().endsWith(path) && (part.equals("*") || passage.text().contains(part));
    }
  }

  private static List<Allowed> allowed() {
    return Repository.file(ALLOWED).lines().stream()
        .filter(line -> !line.isBlank() && !line.startsWith("#"))
        .map(line -> line.split("\\s+\\|\\s+", -1))
        .map(parts -> new Allowed(parts[0], parts[1], parts[2]))
        .toList();
  }

  private static Stream<Passage> passages() {
    Stream<Passage> literals =
        JavaSources.all().stream().filter(JavaSource::isMain).flatMap(WordingTest::literalsOf);
    Stream<Passage> lines =
        Repository.textFiles().stream()
            .filter(file -> file.path().endsWith(".jte") || file.path().endsWith(".md"))
            .flatMap(WordingTest::linesOf);
    return Stream.concat(literals, lines);
  }

  private static Stream<Passage> literalsOf(JavaSource source) {
    return source.literals().stream()
        .map(literal -> new Passage(source.file().path(), literal.line(), literal.text()));
  }

  private static Stream<Passage> linesOf(TextFile file) {
    List<String> lines = file.lines();
    var passages = new ArrayList<Passage>();
    for (int i = 0; i < lines.size(); i++) {
      passages.add(new Passage(file.path(), i + 1, lines.get(i)));
    }
    return passages.stream();
  }

  private static List<String> faults(String text) {
    var faults = new ArrayList<>(DoseTextLint.faultsInProse(text));
    var bare = BARE_UNITS.matcher(text);
    if (bare.find()) {
      faults.add("\"" + bare.group() + "\" in \"" + text + "\": units are marks, not an amount");
    }
    return faults;
  }

  @Test
  void no_text_holds_a_dose_that_can_be_misread() {
    List<Allowed> allowed = allowed();

    assertThat(
            passages()
                .filter(passage -> allowed.stream().noneMatch(one -> one.covers(passage)))
                .flatMap(passage -> faults(passage.text()).stream().map(passage::at)))
        .isEmpty();
  }

  @Test
  void every_exception_is_needed_and_has_a_reason() {
    assertThat(allowed())
        .allSatisfy(
            one -> {
              assertThat(one.reason()).isNotBlank();
              assertThat(
                      passages()
                          .filter(one::covers)
                          .filter(passage -> !faults(passage.text()).isEmpty()))
                  .as("texts for which %s is needed", one)
                  .isNotEmpty();
            });
  }

  @ParameterizedTest
  @ValueSource(strings = {"inject 20 units", "20 units of it", "1 unit", "12.5 units."})
  void a_number_of_bare_units_is_found(String text) {
    assertThat(faults(text)).isNotEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "the 20-unit mark",
        "20 unit marks",
        "0.2 mL (20-unit mark on a U-100 syringe)",
        "U-100 syringe",
        "two unitary parts"
      })
  void a_mark_is_not_an_amount(String text) {
    assertThat(faults(text)).isEmpty();
  }
}
