package rungwise.checks.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.args.AxeRunOptions;
import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.Rule;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.ConsoleMessage;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Media;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * The system's Chromium with one page open. {@link #inspect} looks at the page as a critical person
 * would: at three widths for targets and overflow, for what ears hear on a telephone in the light
 * and on a wide screen in the dark, and for errors. One Chromium serves all tests of a process;
 * each has a context of its own.
 *
 * <p>{@code -Drungwise.pictures=true} keeps pictures of every page that is inspected.
 */
public final class Browser implements AutoCloseable {

  private static final Path CHROMIUM = Path.of("/usr/bin/chromium");
  private static final Path SCREENSHOTS = Path.of("target", "screenshots");
  private static final boolean KEEPS_PICTURES = Boolean.getBoolean("rungwise.pictures");
  private static final int TELEPHONE = 390;
  private static final List<Integer> WIDTHS = List.of(TELEPHONE, 820, 1440);
  private static final int TALLEST_PICTURE = 14_000;
  private static final int HEIGHT = 900;
  private static final List<String> RULES = List.of("wcag2a", "wcag2aa", "wcag21aa", "wcag22aa");

  /** Words at which a control is smaller than a finger; links inside sentences are exempt. */
  private static final String SMALL_TARGETS =
      """
      [...document.querySelectorAll(
          'button, select, summary, nav a, .button, .faults a, .option,'
          + ' input:not([type=hidden], [type=checkbox], [type=radio])')]
        .filter(e => e.checkVisibility() && e.getBoundingClientRect().height < 43.5)
        .map(e => e.outerHTML.slice(0, 80))
      """;

  private static final String OVERFLOW =
      "document.documentElement.scrollWidth - document.documentElement.clientWidth";

  private static final String SHOWS_FOCUS =
      """
      (() => {
        const style = getComputedStyle(document.activeElement);
        return style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2;
      })()
      """;

  private final BrowserContext context;
  private final Page page;
  private final List<String> errors = new ArrayList<>();

  private Browser(BrowserContext context) {
    this.context = context;
    this.page = context.newPage();
    page.onConsoleMessage(this::note);
    page.onPageError(errors::add);
  }

  /** Opens it. It fails with what to install if there is no Chromium. */
  public static Browser open() {
    return new Browser(Chromium.OF_THIS_PROCESS.newContext());
  }

  /** The same in a browser that runs no script. */
  public static Browser withoutScript() {
    return new Browser(
        Chromium.OF_THIS_PROCESS.newContext(
            new com.microsoft.playwright.Browser.NewContextOptions().setJavaScriptEnabled(false)));
  }

  /** Started with the first test of a process that needs it, and gone with the process. */
  private static final class Chromium {

    private static final com.microsoft.playwright.Browser OF_THIS_PROCESS = launch();

    private static com.microsoft.playwright.Browser launch() {
      assertThat(CHROMIUM)
          .as(
              "Chromium is not at %s: install it, on Debian with apt-get install chromium",
              CHROMIUM)
          .isExecutable();
      Playwright playwright =
          Playwright.create(
              new Playwright.CreateOptions()
                  .setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
      return playwright
          .chromium()
          .launch(
              new BrowserType.LaunchOptions()
                  .setExecutablePath(CHROMIUM)
                  .setArgs(
                      List.of(
                          "--no-sandbox",
                          "--disable-gpu",
                          "--disable-quic",
                          "--no-first-run",
                          "--disable-background-networking",
                          "--disable-component-update",
                          "--disable-sync")));
    }
  }

  /** Notes errors; that the page itself answers 4xx is what some pages are for. */
  private void note(ConsoleMessage message) {
    boolean isOwnStatus =
        message.text().startsWith("Failed to load resource")
            && message.location().startsWith(page.url());
    if (message.type().equals("error") && !isOwnStatus) {
      errors.add(message.text());
    }
  }

  public Page page() {
    return page;
  }

  /** Presses keys one after the other, as Playwright names them. */
  public void press(String... keys) {
    for (String key : keys) {
      page.keyboard().press(key);
    }
  }

  /** Types where the focus is. */
  public void type(String text) {
    page.keyboard().type(text);
  }

  /**
   * Moves on with the tab key until a control with this id has the focus, which must show. Gives
   * the number of keys it took.
   */
  public int tabTo(String id) {
    int most = 60;
    for (int moves = 0; moves < most; moves++) {
      press("Tab");
      assertThat(page.evaluate(SHOWS_FOCUS)).as("focus can be seen before %s", id).isEqualTo(true);
      if (id.equals(page.evaluate("document.activeElement.id"))) {
        return moves + 1;
      }
    }
    throw new AssertionError("the tab key does not lead to " + id);
  }

  /** Moves on with the tab key until the focus is on a button or link with these words. */
  public void tabToWords(String words) {
    int most = 60;
    for (int moves = 0; moves < most; moves++) {
      press("Tab");
      assertThat(page.evaluate(SHOWS_FOCUS)).as("focus before %s", words).isEqualTo(true);
      if (words.equals(page.evaluate("document.activeElement.innerText.trim()"))) {
        return;
      }
    }
    throw new AssertionError("the tab key does not lead to " + words);
  }

  /** Looks at the open page in every way, and keeps pictures of it under the name if asked to. */
  public void inspect(String name) {
    for (int width : WIDTHS) {
      page.setViewportSize(width, HEIGHT);
      keep(name + "-" + width);
      assertThat((Integer) page.evaluate(OVERFLOW)).as("overflow at %d", width).isZero();
      assertThat((List<?>) page.evaluate(SMALL_TARGETS)).as("small targets at %d", width).isEmpty();
      if (width == TELEPHONE) {
        listen(name + " at " + width);
      }
    }
    page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
    keep(name + "-dark");
    listen(name + " in the dark");
    page.emulateMedia(
        new Page.EmulateMediaOptions().setColorScheme(ColorScheme.LIGHT).setMedia(Media.PRINT));
    keep(name + "-print");
    page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.SCREEN));
    assertThat(errors).as("console of %s", name).isEmpty();
  }

  /** Shows the page as in dark surroundings from now on. */
  public void darken() {
    page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
  }

  /** What has less contrast than 7 to 1 within the elements a selector finds. */
  public List<String> tooFaint(String selector) {
    return axe()
        .include(selector)
        .withRules(List.of("color-contrast-enhanced"))
        .analyze()
        .getViolations()
        .stream()
        .map(Browser::describe)
        .toList();
  }

  /** Keeps a picture: of a very long page only the beginning, for which the browser has time. */
  private void keep(String name) {
    if (!KEEPS_PICTURES) {
      return;
    }
    assertThat(Files.exists(SCREENSHOTS) || SCREENSHOTS.toFile().mkdirs()).isTrue();
    boolean isWhole =
        (Integer) page.evaluate("document.documentElement.scrollHeight") < TALLEST_PICTURE;
    page.screenshot(
        new Page.ScreenshotOptions()
            .setFullPage(isWhole)
            .setPath(SCREENSHOTS.resolve(name + ".png")));
  }

  /**
   * Without a second page for the sum over frames, as no page of this program has a frame, and
   * without the nodes of what is in order, which nobody reads.
   */
  private AxeBuilder axe() {
    var violationsOnly = new AxeRunOptions();
    violationsOnly.setResultTypes(List.of("violations"));
    return new AxeBuilder(page).setLegacyMode(true).options(violationsOnly);
  }

  private void listen(String where) {
    List<String> findings =
        axe().withTags(RULES).analyze().getViolations().stream()
            .filter(rule -> List.of("serious", "critical").contains(rule.getImpact()))
            .map(Browser::describe)
            .toList();
    assertThat(findings).as("accessibility of %s", where).isEmpty();
  }

  private static String describe(Rule rule) {
    return rule.getId() + ": " + rule.getHelp() + " " + rule.getNodes().getFirst().getHtml();
  }

  @Override
  public void close() {
    context.close();
  }
}
