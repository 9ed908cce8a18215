package rungwise.checks.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.springframework.http.HttpMethod;
import rungwise.checks.house.Repository;
import rungwise.checks.house.TextFile;
import rungwise.clinic.factor.FactorRule;
import rungwise.web.access.Access;
import rungwise.web.access.Route;
import rungwise.web.access.Routes;
import rungwise.web.fault.FaultPages;
import rungwise.web.session.SessionLimits;

/** What the page about security says in words and numbers is what the program does. */
final class SecurityWordsTest {

  private static final String PAGE = Repository.file("docs/security.md").text();
  private static final String SECRETS = "web/src/main/java/rungwise/web/secrets/";

  private static final Pattern REFILLED =
      Pattern.compile(
          "this\\.(\\w+) = table\\(time, refilled\\((\\d+), Duration\\.ofSeconds\\((\\d+)\\)");
  private static final Pattern PATTERN_OF_A_TEXT =
      Pattern.compile(
          "(?:Pattern\\.compile|(?<![A-Z])\\.(?:split|replaceFirst)|\\.replaceAll)"
              + "\\(\\s*+(?!\"|[A-Z_]+\\b|Pattern\\.quote\\(|\\(?\\w+(?:, \\w+\\))? ->)");
  private static final Pattern FORMAT_OF_A_TEXT =
      Pattern.compile("String\\.format\\(\\s*+(?:Locale\\.ROOT,\\s*+)?+(?!\"|[A-Z_]+,)");

  private static String section(String heading) {
    int from = PAGE.indexOf("## " + heading);
    assertThat(from).as(heading).isNotNegative();
    return PAGE.substring(from, PAGE.indexOf("\n## ", from));
  }

  private static List<TextFile> program() {
    return Repository.textFiles().stream()
        .filter(TextFile::isMainJava)
        .filter(file -> !file.path().matches("(bench|checks)/.*"))
        .toList();
  }

  private static String limit(String table) {
    return REFILLED
        .matcher(Repository.file(SECRETS + "TryLimiter.java").text())
        .results()
        .filter(found -> found.group(1).equals(table))
        .map(SecurityWordsTest::inWords)
        .findFirst()
        .orElseThrow();
  }

  private static String inWords(MatchResult found) {
    return found.group(2) + " %s, then one in " + found.group(3) + " s";
  }

  private static long constant(String path, String name) {
    var found =
        Pattern.compile("\\b" + name + " = ([0-9_]+);").matcher(Repository.file(path).text());
    assertThat(found.find()).as(name).isTrue();
    return Long.parseLong(found.group(1).replace("_", ""));
  }

  @Test
  void tries_are_limited_as_the_page_says() {
    String codes = SECRETS + "CodeLimiter.java";

    assertThat(section("Ways in"))
        .contains(limit("addresses").formatted("for an address"))
        .contains(limit("pairs").formatted("for a name from one address"))
        .contains(limit("names").formatted("for a name from everywhere"))
        .contains(limit("devices").formatted("tries"))
        .contains(limit("passkeys").formatted("for an address, by a count of their own"))
        .contains(
            "at most %d wrong passwords in a row"
                .formatted(constant(SECRETS + "TryLimiter.java", "MOST_IN_A_ROW")))
        .contains(
            "%d tries for an account, then one in %d minutes"
                .formatted(constant(codes, "TRIES"), constant(codes, "MINUTES_EACH")));
  }

  @Test
  void sessions_and_shifts_last_as_the_page_says() {
    assertThat(section("Ways in"))
        .contains(
            "after %d minutes without a request and after %d hours in all"
                .formatted(
                    SessionLimits.USUAL.idle().toMinutes(), SessionLimits.USUAL.whole().toHours()))
        .contains("once in %d hours".formatted(FactorRule.SAMPLE_SHIFT.toHours()));
  }

  @Test
  void every_way_in_that_is_open_to_anyone_is_described() {
    Set<String> ways =
        Routes.TABLE.stream()
            .filter(route -> route.access() instanceof Access.Anyone)
            .filter(route -> route.method().equals(HttpMethod.POST))
            .map(Route::path)
            .filter(path -> !path.equals("/sign-out"))
            .collect(Collectors.toSet());

    assertThat(ways).contains("/sign-in");
    assertThat(section("Ways in")).contains(ways.stream().map("`%s`"::formatted).toList());
  }

  @Test
  void limits_of_what_is_sent_and_handed_out_are_as_the_page_says() {
    assertThat(section("Limits"))
        .contains(FaultPages.MOST_KIB_OF_A_FORM + " KiB")
        .contains(FaultPages.MOST_KIB_READ + " KiB")
        .contains(
            "%,d lines"
                .formatted(
                    constant(
                        "web/src/main/java/rungwise/web/audit/TrailController.java",
                        "MOST_IN_A_FILE")));
  }

  @Test
  void logs_go_to_one_place() {
    String settings = Repository.file("app/src/main/resources/logback.xml").text();

    assertThat(settings.split("<appender ", -1)).hasSize(2);
    assertThat(settings).contains("<target>System.err</target>");
    assertThat(section("What talks to whom")).contains("The log on standard error");
  }

  @Test
  void no_pattern_and_no_format_is_made_of_what_was_typed() {
    // Each of these takes one of two written patterns, a function, or cuts what is no text.
    Set<String> looked =
        Set.of("VolumeList", "DoseTextLint", "Screenings", "TimeGuards", "PlainCourses");

    assertThat(
            program().stream()
                .filter(file -> looked.stream().noneMatch(file.path()::contains))
                .flatMap(SecurityWordsTest::madeOfTexts))
        .isEmpty();
    assertThat(PATTERN_OF_A_TEXT.matcher("Pattern.compile(typed)").find()).isTrue();
    assertThat(FORMAT_OF_A_TEXT.matcher("String.format(typed, one)").find()).isTrue();
  }

  private static Stream<String> madeOfTexts(TextFile file) {
    return Stream.of(PATTERN_OF_A_TEXT, FORMAT_OF_A_TEXT)
        .flatMap(pattern -> pattern.matcher(file.text()).results())
        .map(found -> file.path() + ": " + lineAt(file.text(), found.start()));
  }

  private static String lineAt(String text, int at) {
    int end = text.indexOf('\n', text.indexOf('(', at));
    return text.substring(at, end < 0 ? text.length() : end);
  }
}
