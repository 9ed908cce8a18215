package rungwise.checks.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rungwise.checks.house.JavaSources;
import rungwise.checks.house.Repository;
import rungwise.checks.house.TextFile;

/** Every command line that a document shows is one that the launchers know. */
final class CommandLinesTest {

  private static final Pattern VERB = Pattern.compile("@Command\\(\\s*name = \"([a-z-]+)\"");
  private static final Pattern OPTION = Pattern.compile("names = (\\{[^}]*}|\"[^\"]+\")");
  private static final Pattern QUOTED = Pattern.compile("\"([^\"]+)\"");
  private static final Set<String> WORDS_OF_CHECK =
      Set.of(
          "", "quick", "rows", "adversary", "bytes", "kills", "forms", "fuzz", "long", "pictures");

  /** A command line and where it stands. */
  private record Shown(String path, String command) {
    List<String> words() {
      return List.of(command.replaceFirst("\\s+#.*$", "").strip().split("\\s+", -1));
    }

    String verb() {
      return words().size() > 1 ? words().get(1) : "";
    }

    Stream<String> options() {
      return words().stream().filter(word -> word.startsWith("--")).map(Shown::nameOf);
    }

    private static String nameOf(String option) {
      return option.replaceFirst("=.*$", "");
    }
  }

  private static List<Shown> shown() {
    return Stream.concat(
            Stream.of(Repository.file("README.md"), Repository.file("CONTRIBUTING.md")),
            Repository.textFilesBelow("docs/guide").stream())
        .flatMap(file -> commandsOf(file).stream())
        .toList();
  }

  /** The lines in fenced blocks; a backslash at the end joins the next line. */
  private static List<Shown> commandsOf(TextFile file) {
    var commands = new ArrayList<Shown>();
    boolean isFenced = false;
    for (String line : file.text().replace("\\\n", " ").lines().toList()) {
      if (line.strip().startsWith("```")) {
        isFenced = !isFenced;
      } else if (isFenced && line.strip().startsWith("./")) {
        commands.add(new Shown(file.path(), line.strip()));
      }
    }
    return commands;
  }

  private static List<Shown> shownFor(String launcher) {
    return shown().stream().filter(one -> one.words().getFirst().equals(launcher)).toList();
  }

  private static String sourcesOfTheApp() {
    return JavaSources.all().stream()
        .filter(source -> source.module().equals("app") && source.isMain())
        .map(source -> source.file().text())
        .collect(Collectors.joining());
  }

  @Test
  void every_verb_that_is_shown_is_known() {
    Set<String> verbs =
        VERB.matcher(sourcesOfTheApp())
            .results()
            .map(found -> found.group(1))
            .collect(Collectors.toSet());

    assertThat(shownFor("./rungwise")).isNotEmpty().allMatch(one -> verbs.contains(one.verb()));
  }

  @Test
  void every_option_that_is_shown_is_known() {
    Set<String> options =
        OPTION
            .matcher(sourcesOfTheApp())
            .results()
            .flatMap(found -> QUOTED.matcher(found.group(1)).results())
            .map(found -> found.group(1))
            .collect(Collectors.toSet());

    assertThat(shownFor("./rungwise").stream().flatMap(Shown::options))
        .isNotEmpty()
        .isSubsetOf(options);
  }

  @Test
  void every_use_of_check_that_is_shown_is_known() {
    assertThat(shownFor("./check"))
        .isNotEmpty()
        .allMatch(one -> WORDS_OF_CHECK.contains(one.verb()));
  }
}
