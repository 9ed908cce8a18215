package rungwise.checks.docs;

import static org.assertj.core.api.Assertions.as;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.Test;
import rungwise.checks.house.Repository;
import rungwise.checks.house.TextFile;

/** What scripts, templates and styles do not do in anybody's browser. */
final class BrowserSideTest {

  private static final String ASSETS = "web/src/main/resources/rungwise/web/assets";
  private static final String TEMPLATES = "web/src/main/jte";

  private static final Pattern MARKUP =
      Pattern.compile(
          "innerHTML|outerHTML|insertAdjacentHTML|document\\.write|\\beval\\(|new Function"
              + "|set(?:Timeout|Interval)\\(\\s*[\"'`]|createContextualFragment");

  /** A page of ours that takes the place of an older one; no script in it runs. */
  private static final Pattern WHOLE_PAGE = Pattern.compile("DOMParser");

  private static final Pattern PROTOTYPE =
      Pattern.compile("__proto__|\\.prototype|\\.constructor\\b|Object\\.(assign|setPrototypeOf)");
  private static final Pattern STORAGE =
      Pattern.compile("localStorage|indexedDB|document\\.cookie|\\bcaches\\b|serviceWorker");
  private static final Pattern TAB_STORAGE = Pattern.compile("sessionStorage");
  private static final Pattern PASTE =
      Pattern.compile("[\"'](?:paste|copy|beforeinput)[\"']|on(?:copy|paste)\\b");
  private static final Pattern ELSEWHERE =
      Pattern.compile(
          "(?:src|href|action|formaction|poster|data)=\"(?:https?:)?//"
              + "|url\\(\\s*[\"']?(?:https?:)?//|@import\\s+(?:url|[\"'])"
              + "|(?:fetch|import|WebSocket|EventSource|sendBeacon)\\(\\s*[\"'`](?:\\w+:)?//");
  private static final Pattern OLD_KINDS =
      Pattern.compile("(?i)<(?:object|embed|applet|frame|frameset|iframe|marquee)\\b");
  private static final Pattern UNESCAPED = Pattern.compile("\\$unsafe\\{");
  private static final Pattern OWN_DRAWING =
      Pattern.compile(
          "<figure class=\"drawn\"[^>]*>\\$unsafe\\{(?:page\\.drawings\\(\\)\\.[a-zA-Z]+\\(\\)"
              + "(?:\\.get\\(\\))?|[a-zA-Z.()]+"
              + "(?:picture\\(\\)(?:\\.get\\(\\))?|svg\\(\\)))}</figure>");
  private static final Pattern KEPT_IN_THE_TAB =
      Pattern.compile("doses\\.push\\(\\{\\s*at,\\s*mcg:[^,]+,\\s*side,\\s*pressure,\\s*second:");

  private static List<TextFile> scripts() {
    return Repository.textFilesBelow(ASSETS).stream()
        .filter(file -> file.path().endsWith(".js"))
        .toList();
  }

  private static List<TextFile> templates() {
    return Repository.textFilesBelow(TEMPLATES);
  }

  private static Stream<TextFile> all() {
    return Stream.concat(Repository.textFilesBelow(ASSETS).stream(), templates().stream());
  }

  private static Stream<String> found(Stream<TextFile> files, Pattern pattern) {
    return files.flatMap(file -> file.findings(pattern));
  }

  @Test
  void scripts_write_text_as_text_and_run_none() {
    assertThat(scripts()).isNotEmpty();
    assertThat(found(scripts().stream(), MARKUP)).isEmpty();
    assertThat(found(scripts().stream(), WHOLE_PAGE))
        .singleElement(as(InstanceOfAssertFactories.STRING))
        .startsWith(ASSETS + "/refresh.js");
  }

  @Test
  void scripts_lend_no_object_what_came_from_outside() {
    assertThat(found(scripts().stream(), PROTOTYPE)).isEmpty();
  }

  @Test
  void a_browser_keeps_nothing_but_the_log_of_one_rescue_without_a_name_in_its_tab() {
    assertThat(found(all(), STORAGE)).isEmpty();
    assertThat(scripts())
        .filteredOn(script -> TAB_STORAGE.matcher(script.text()).find())
        .singleElement()
        .satisfies(
            script -> {
              assertThat(script.path()).endsWith("/rescue.js");
              assertThat(KEPT_IN_THE_TAB.matcher(script.text()).find()).isTrue();
              assertThat(script.text().split("doses\\.push", -1)).hasSize(2);
            });
  }

  @Test
  void nothing_stands_in_the_way_of_a_password_that_is_pasted() {
    assertThat(found(all(), PASTE)).isEmpty();
  }

  @Test
  void no_page_fetches_anything_from_elsewhere() {
    assertThat(found(all(), ELSEWHERE)).isEmpty();
  }

  @Test
  void pages_are_made_of_what_browsers_still_support() {
    assertThat(found(templates().stream(), OLD_KINDS)).isEmpty();
  }

  @Test
  void only_our_own_drawings_are_written_without_being_escaped() {
    assertThat(found(templates().stream(), UNESCAPED))
        .isNotEmpty()
        .allMatch(line -> OWN_DRAWING.matcher(line).find());
  }

  @Test
  void the_patterns_find_what_they_are_for() {
    assertThat(MARKUP.matcher("part.innerHTML = text").find()).isTrue();
    assertThat(PROTOTYPE.matcher("Object.assign(one, JSON.parse(text))").find()).isTrue();
    assertThat(ELSEWHERE.matcher("<script src=\"//cdn.example/a.js\">").find()).isTrue();
    assertThat(ELSEWHERE.matcher("fetch('https://elsewhere.example')").find()).isTrue();
    assertThat(OWN_DRAWING.matcher("<p>$unsafe{page.name()}</p>").find()).isFalse();
  }
}
